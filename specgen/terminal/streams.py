"""Standard output and error as they come: any encoding, a full disk, a reader that has left, a closed stream."""

import codecs
import errno
import io
import json
import os
import re
import sys
from collections.abc import Iterable
from contextlib import suppress
from typing import Any, TextIO

from specgen.model.forbidden_characters import show_unseen
from specgen.model.problem import Problem, Refused

_PLAIN = "specgen-plain"
# What the trade's signs are in plain letters; a reader on an old terminal still gets the figure right.
_SIGNS = {"°": "deg ", "µ": "u", "μ": "u", "·": "*", "×": "x", "−": "-", "‐": "-", "‑": "-", "–": "-", "—": "-"} | {
    "’": "'", "‘": "'", "′": "'", "“": '"', "”": '"', "″": '"', "Δ": "Delta ", "α": "alpha ", "⁻": "-"
}  # fmt: skip
_POWER = re.compile("[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+")
_MOST_PRINTED = 1_000  # characters of one message
_MOST_TYPED = 10_000  # characters of one answer
_USUAL_WIDTH, _LEAST_WIDTH, _WIDEST = 80, 30, 80  # no line of a dialogue is wider, as it is read like a letter
# A reader that has left: the second is what Windows says of it.
_LEFT = (errno.EPIPE, errno.EINVAL)


def prepare_streams() -> None:
    """Make both streams fit to be written to: no stream is closed, and each shows what its encoding lacks plainly."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:  # else the next file that is opened would take its number
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: PTH123, SIM115
    if isinstance(sys.stdin, io.TextIOWrapper):
        sys.stdin.reconfigure(errors="surrogateescape")  # a byte that is no letter is told as one by who reads it
    codecs.register_error(_PLAIN, _replace)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors=_PLAIN)


def write_result(text: str, painted: bool = False) -> None:
    """Write to standard output and through it; raises Refused where that fails, save where the reader has left.

    What was painted keeps the signs for it; what the user wrote was shown without any before.
    """
    try:
        sys.stdout.write(show_unseen(text, kept="\n\x1b" if painted else "\n"))
        sys.stdout.flush()
    except OSError as error:
        _discard(sys.stdout)
        if error.errno not in _LEFT:
            message = f"the output cannot be written: {error.strerror}"
            raise Refused(Problem(message, "make room on the disk, or send it elsewhere")) from None


def write_data(data: Any) -> None:
    """Write data as JSON to standard output; letters that its encoding lacks are escaped as JSON does."""
    text = show_unseen(json.dumps(data, ensure_ascii=False, indent=1), kept="\n")
    try:
        text.encode(sys.stdout.encoding or "utf-8")
    except UnicodeEncodeError:
        text = json.dumps(data, indent=1)
    write_result(text + "\n")


def write_message(text: object) -> None:
    """Write one message to standard error; one that cannot be written is dropped, as nothing is left to say so."""
    with suppress(OSError):
        sys.stderr.write(f"specgen: {show_as_line(text)}\n")
        sys.stderr.flush()


def show_as_line(text: object) -> str:
    """A message as one line of bounded length, in which no word of the user steers the terminal."""
    line, half = show_unseen(str(text)), _MOST_PRINTED // 2
    return line if len(line) <= _MOST_PRINTED else f"{line[:half]} ... {line[-half:]}"


def write_aside(lines: Iterable[str]) -> None:
    """Write lines to standard error as they are, as part of a dialogue; what cannot be written is dropped."""
    with suppress(OSError):
        sys.stderr.write("".join(f"{show_unseen(line)}\n" for line in lines))
        sys.stderr.flush()


def write_prompt(sign: str) -> None:
    """Write to standard error what stands before an answer that is typed."""
    with suppress(OSError):
        sys.stderr.write(sign)
        sys.stderr.flush()


def is_typed() -> bool:
    """Whether standard input is a person at a terminal."""
    return sys.stdin.isatty()


def read_typed_line() -> str | None:
    """A line of standard input without its end, or None where the input has ended; raises Refused."""
    line = sys.stdin.readline(_MOST_TYPED)
    if len(line) == _MOST_TYPED:
        message = f"a line of the input has {_MOST_TYPED:,} characters or more; nothing was written"
        raise Refused(Problem(message, "write one answer a line"))
    return line.strip("\ufeff\r\n") if line else None


def find_width() -> int:
    """The width of the terminal that standard error is, in characters; 80 where it is none or does not say."""
    try:
        width = os.get_terminal_size(sys.stderr.fileno()).columns
    except (OSError, ValueError):
        return _USUAL_WIDTH
    return min(max(width, _LEAST_WIDTH), _WIDEST) if width else _USUAL_WIDTH


def find_table_width() -> int | None:
    """The width of the terminal that standard output is; None where it is none, which takes lines of any length."""
    try:
        return os.get_terminal_size(sys.stdout.fileno()).columns or None
    except (OSError, ValueError):
        return None


def _discard(stream: TextIO) -> None:
    """Let what still waits in a stream go nowhere, so that it does not fail again at the end."""
    with suppress(OSError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)


def _replace(error: UnicodeError) -> tuple[str, int]:
    """What stands in place of characters that the encoding of a stream lacks."""
    if not isinstance(error, UnicodeEncodeError):
        raise error
    return write_plainly(error.object[error.start : error.end]), error.end


def write_plainly(text: str) -> str:
    """The text in ASCII: signs of the trade in plain letters, any other character as its code."""
    text = _POWER.sub(lambda power: f"^{power[0]}", text)
    return "".join(_spell(sign) for sign in text)


def _spell(sign: str) -> str:
    if sign.isascii():
        return sign
    if sign in _SIGNS:
        return _SIGNS[sign]
    import unicodedata  # imported here: hardly any terminal asks for it

    if unicodedata.category(sign) == "No":  # a raised digit, or a fraction in one sign
        number = unicodedata.normalize("NFKD", sign).replace("\N{FRACTION SLASH}", "/")
        if number.isascii():
            return f" {number}" if "/" in number else number
    return sign.encode("ascii", "backslashreplace").decode()
