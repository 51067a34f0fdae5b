"""Recognizes a workbook before a library opens it: what the file is, how much it unpacks to, whether it can act."""

import re
import struct
import zipfile
import zlib
from io import BytesIO
from typing import NamedTuple

from specgen.model.problem import Problem, Refused
from specgen.reading.given_file import FileUse

MOST_UNPACKED = 16_000_000
_MOST_PARTS = 2_000
USE = FileUse("the workbook", "name an XLSX file", 20_000_000, "take pictures and unused sheets out of it")

# What the module for zip files raises where one is not built as it should be.
_UNREADABLE = (zipfile.BadZipFile, zlib.error, struct.error, ValueError, KeyError, EOFError, RuntimeError, OSError)
_ZIP, _OLE, _PDF = b"PK", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", b"%PDF-"
_SAVE = "open it in a spreadsheet program and save it as .xlsx"
_ASKED = "name the workbook that came back"
# Parts that tell what a zip file is, and what is told of it.
_OF_ZIP = (
    ("xl/workbook.xml", "", ""),
    ("xl/workbook.bin", "this is a binary workbook (.xlsb)", _SAVE),
    ("word/document.xml", "this is a word-processing document, not a workbook", _ASKED),
    ("ppt/presentation.xml", "this is a presentation, not a workbook", _ASKED),
)
_OPEN_DOCUMENT = b"application/vnd.oasis.opendocument."
_DAMAGED = ("the workbook is damaged or cut short", "ask for it again, or open it and save it anew")
_FORMULA = re.compile(rb"<(?:\w+:)?f[ />]")
_DOCTYPE = "<!DOCTYPE"
_DOCTYPES = tuple(_DOCTYPE.encode(code) for code in ("utf-8", "utf-16-le", "utf-16-be"))


class WorkbookBytes(NamedTuple):
    """The bytes of a workbook that may be opened, and whether a cell of it holds a formula."""

    content: bytes
    has_formulas: bool


def check_workbook(content: bytes, shown: str) -> WorkbookBytes:
    """The bytes of a file named `shown`; raises Refused where it is no workbook without macros, whole and of bounds."""
    if not content:
        raise _refuse(shown, "the file is empty", "ask for it again")
    if not content.startswith(_ZIP):
        raise _refuse(shown, *_tell_other(content))
    try:
        with zipfile.ZipFile(BytesIO(content)) as archive:
            return WorkbookBytes(content, _look_through(archive, shown))
    except _UNREADABLE:
        raise refuse_damaged(shown) from None


def refuse_damaged(shown: str) -> Refused:
    """The refusal of a workbook that cannot be read to its end."""
    return _refuse(shown, *_DAMAGED)


def _refuse(shown: str, message: str, hint: str) -> Refused:
    return Refused(Problem(message, hint, file=shown))


def _tell_other(content: bytes) -> tuple[str, str]:
    """What a file is that is no zip file, and what is to be done with it."""
    if content.startswith(_OLE):
        if "EncryptedPackage".encode("utf-16-le") in content:
            return "the workbook is encrypted", "save it without a password"
        if "WordDocument".encode("utf-16-le") in content:
            return "this is a word-processing document, not a workbook", _ASKED
        return "this is a workbook in the old format (.xls)", _SAVE
    if content.startswith(_PDF):
        return "this is a PDF, not a workbook", _ASKED
    return "this is not a workbook", f"{_ASKED}; a table may be a CSV file whose name ends in .csv"


def _look_through(archive: zipfile.ZipFile, shown: str) -> bool:
    """Read every part once: whether there are formulas; raises Refused for what is not to be opened."""
    parts = archive.infolist()
    names = [part.filename for part in parts]
    if sum(part.file_size for part in parts) > MOST_UNPACKED or len(parts) > _MOST_PARTS:
        raise _refuse(shown, f"the workbook unpacks to more than {MOST_UNPACKED // 10**6} MB", USE.smaller)
    if any(part.flag_bits & 1 for part in parts):
        raise _refuse(shown, "the workbook is encrypted", "save it without a password")
    _check_kind(archive, names, shown)
    if len(set(names)) < len(names):
        raise refuse_damaged(shown)
    has_formulas = False
    for name in names:
        content = archive.read(name)
        if not name.startswith("xl/media/") and any(word in content for word in _DOCTYPES):
            raise refuse_damaged(shown)
        has_formulas = has_formulas or bool(_FORMULA.search(content))
    return has_formulas


def _check_kind(archive: zipfile.ZipFile, names: list[str], shown: str) -> None:
    """Raise Refused for a zip file that is something else, and for a workbook with macros."""
    if "mimetype" in names and archive.read("mimetype").startswith(_OPEN_DOCUMENT):
        raise _refuse(shown, "this is an OpenDocument file (.ods or .odt)", _SAVE)
    found = next(((message, hint) for part, message, hint in _OF_ZIP if part in names), None)
    if found is None:
        raise _refuse(shown, "this is a zip file, not a workbook", _ASKED)
    if found[0]:
        raise _refuse(shown, *found)
    if any(name.lower().endswith("vbaproject.bin") for name in names) or _says_macros(archive, names):
        raise _refuse(shown, "the workbook holds macros", "save it as a workbook without macros (.xlsx)")


def _says_macros(archive: zipfile.ZipFile, names: list[str]) -> bool:
    types = "[Content_Types].xml"
    return types in names and b"macroenabled" in archive.read(types).lower()
