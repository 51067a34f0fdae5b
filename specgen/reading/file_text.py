"""Reads the text of one file: bounded in size, UTF-8, and without characters that cannot be printed."""

import os
import re
import stat
from pathlib import Path as FilePath

from specgen.model.forbidden_characters import find_forbidden
from specgen.model.problem import Problem, Refused

MOST_BYTES = 20_000_000
_LINE_END = re.compile("\r\n|\r|\n")


def read_source(path: FilePath, shown: str) -> str:
    """The text of the file at `path`, named `shown` in messages; a UTF-8 byte order mark is skipped."""
    content = _read_bytes(path, shown)
    try:
        source = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Refused(_locate_bad_byte(content, error.start, shown)) from None
    fault = find_forbidden(source)
    if fault:
        start, message, hint = fault
        lines = _LINE_END.split(source[:start])
        raise Refused(Problem(message, hint, "", shown, len(lines), len(lines[-1]) + 1))
    return source


def _locate_bad_byte(content: bytes, start: int, shown: str) -> Problem:
    """The problem at the first byte that is not UTF-8."""
    if content[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return Problem("the file is UTF-16", "save it as UTF-8", "", shown, 1, 1)
    start += 3 if content.startswith(b"\xef\xbb\xbf") else 0  # the decoder counts from behind the byte order mark
    lines = _LINE_END.split(content[:start].decode("utf-8-sig"))
    message = f"the file is not UTF-8 (byte {content[start]:#04x})"
    return Problem(message, "save it as UTF-8", "", shown, len(lines), len(lines[-1]) + 1)


def _read_bytes(path: FilePath, shown: str) -> bytes:
    try:
        opened = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
        try:
            content = _read_bounded(opened)
        finally:
            os.close(opened)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is not allowed"
        raise Refused(Problem(f"the file cannot be read: {reason}", "check name and folder", file=shown)) from None
    if content is None:
        raise Refused(Problem("this is no regular file", "name a YAML file", file=shown))
    if len(content) > MOST_BYTES:
        raise Refused(Problem(f"the file is larger than {MOST_BYTES // 10**6} MB", "split it", file=shown))
    return content


def _read_bounded(opened: int) -> bytes | None:
    """At most one byte more than is allowed, whatever size the file claims; None if it is no regular file."""
    if not stat.S_ISREG(os.fstat(opened).st_mode):
        return None
    with os.fdopen(opened, "rb", closefd=False) as file:
        content: bytes | None = file.read(MOST_BYTES + 1)
    return content
