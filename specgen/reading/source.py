"""The bytes of one file to its text: bounded, UTF-8, and without characters that cannot be seen on paper."""

import os
import re
import stat
from pathlib import Path as FilePath

from ..vocabulary.problem import Problem, Refused

MOST_BYTES = 20_000_000
# Unseen characters that change how text reads, line ends that editors do not count, and the private-use ones, some of
# which the writing room marks values with. Tab, line feed and carriage return are white space.
_UNSEEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\uf8ff\ufdd0-\ufdef\ufeff\ufffe\uffff\U000f0000-\U0010ffff"
    + "".join(f"{chr(plane + 0xFFFE)}{chr(plane + 0xFFFF)}" for plane in range(0x10000, 0xF0000, 0x10000))
    + "]"
)
_LINE_END = re.compile("\r\n|\r|\n")


def read_source(path: FilePath, shown: str) -> str:
    """The text of the file at `path`, named `shown` in messages; a byte order mark of UTF-8 is read over."""
    content = _content(path, shown)
    try:
        source = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Refused(_not_utf8(content, error.start, shown)) from None
    found = _UNSEEN.search(source)
    if found:
        lines = _LINE_END.split(source[: found.start()])
        raise Refused(Problem(*_told(found[0]), "", shown, len(lines), len(lines[-1]) + 1))
    return source


def unseen(text: str) -> tuple[str, str] | None:
    """Message and hint on the first character of a text that cannot be seen on paper, or None."""
    found = _UNSEEN.search(text)
    return _told(found[0]) if found else None


def _told(character: str) -> tuple[str, str]:
    return f"character U+{ord(character):04X} is not allowed: it cannot be seen on paper", "delete it"


def _not_utf8(content: bytes, start: int, shown: str) -> Problem:
    """Where the first byte stands that is no UTF-8."""
    if content[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return Problem("the file is UTF-16", "save it as UTF-8", "", shown, 1, 1)
    start += 3 if content.startswith(b"\xef\xbb\xbf") else 0  # the decoder counts behind the byte order mark
    lines = _LINE_END.split(content[:start].decode("utf-8-sig"))
    message = f"the file is not UTF-8 (byte {content[start]:#04x})"
    return Problem(message, "save it as UTF-8", "", shown, len(lines), len(lines[-1]) + 1)


def _content(path: FilePath, shown: str) -> bytes:
    try:
        opened = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
        try:
            content = _bounded(opened)
        finally:
            os.close(opened)
    except (OSError, ValueError) as error:
        told = getattr(error, "strerror", None) or "its name is not allowed"
        raise Refused(Problem(f"the file cannot be read: {told}", "check name and folder", file=shown)) from None
    if content is None:
        raise Refused(Problem("this is no regular file", "name a YAML file", file=shown))
    if len(content) > MOST_BYTES:
        raise Refused(Problem(f"the file is larger than {MOST_BYTES // 10**6} MB", "split it", file=shown))
    return content


def _bounded(opened: int) -> bytes | None:
    """One byte more than is allowed, whatever size the file claims; None for what is none or has nothing to give."""
    if not stat.S_ISREG(os.fstat(opened).st_mode):
        return None
    with os.fdopen(opened, "rb", closefd=False) as file:
        content: bytes | None = file.read(MOST_BYTES + 1)
    return content
