"""Reads the text of one file: bounded in size, UTF-8, and without characters that cannot be printed."""

import re
from pathlib import Path as FilePath
from typing import NamedTuple

from specgen.model.digest import digest
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.problem import Problem, Refused
from specgen.reading.given_file import FileUse, read_given_file

MOST_BYTES = 20_000_000
_USE = FileUse("the file", "name a YAML file", MOST_BYTES, "split it")
_LINE_END = re.compile("\r\n|\r|\n")


class FileText(NamedTuple):
    """The text of a file, and the digest of the bytes it was read from."""

    text: str
    digest: str


def read_source(path: FilePath, shown: str) -> FileText:
    """The text of the file at `path`, named `shown` in messages; a UTF-8 byte order mark is skipped."""
    return decode_source(read_content(path, shown), shown)


def read_content(path: FilePath, shown: str) -> bytes:
    """The bytes of the file at `path`, named `shown` in messages; raises Refused where it cannot be read."""
    return read_given_file(path, _USE, shown)


def decode_source(content: bytes, shown: str) -> FileText:
    """The text of these bytes of a file, named `shown` in messages; raises Refused as `read_source` does."""
    try:
        source = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Refused(_locate_bad_byte(content, error.start, shown)) from None
    fault = find_forbidden(source)
    if fault:
        start, message, hint = fault
        lines = _LINE_END.split(source[:start])
        raise Refused(Problem(message, hint, "", shown, len(lines), len(lines[-1]) + 1))
    return FileText(source, digest(content))


# How files of other programs begin. A workbook and a text of a word processor are both packed folders.
_OTHER_FILES = (
    (b"%PDF", "a PDF"),
    (b"\xd0\xcf\x11\xe0", "a file of a word processor or spreadsheet program"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
)
_PACKED = ((b"word/", "a Word file"), (b"xl/", "a workbook"))


def _name_other_file(content: bytes) -> str:
    """What a file of another program is; empty for what may be a text."""
    if content.startswith(b"PK"):
        return next((name for part, name in _PACKED if part in content), "a packed folder")
    return next((name for start, name in _OTHER_FILES if content.startswith(start)), "")


def _locate_bad_byte(content: bytes, start: int, shown: str) -> Problem:
    """The problem at the first byte that is not UTF-8."""
    other = _name_other_file(content)
    if other:
        return Problem(f"this is {other}, not a project file", "name the project file, a YAML file", "", shown, 1, 1)
    if content[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return Problem("the file is UTF-16", "save it as UTF-8", "", shown, 1, 1)
    start += 3 if content.startswith(b"\xef\xbb\xbf") else 0  # the decoder counts from behind the byte order mark
    lines = _LINE_END.split(content[:start].decode("utf-8-sig"))
    message = f"the file is not UTF-8 (byte {content[start]:#04x})"
    return Problem(message, "save it as UTF-8", "", shown, len(lines), len(lines[-1]) + 1)
