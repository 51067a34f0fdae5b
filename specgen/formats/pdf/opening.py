"""Opens the file of an attachment as a PDF of whole pages; a picture becomes a page of its own."""

import zlib
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any, NamedTuple

import pikepdf
from pikepdf import Pdf

from specgen.formats.pdf.active_content import disarm, list_active
from specgen.formats.pdf.picture_pages import is_picture, write_picture_page
from specgen.formats.pdf.stamping import read_shown
from specgen.model.problem import Refused, refuse

_HEAD = 1024  # within its first bytes a PDF says that it is one
_LONGEST_SIDE = 200 * 72  # the longest side that readers of PDF show, 200 in
# What the library and we ourselves raise where a PDF is not built as it should be.
UNREADABLE = (ValueError, TypeError, KeyError, AttributeError, IndexError, RuntimeError)
_MOST_UNPACKED = 20_000_000  # of the content of a page: what unpacks to more is not looked into


class OpenedPaper(NamedTuple):
    """The PDF of an attachment, and in words what acted in it and is taken out."""

    document: Pdf
    left_out: tuple[str, ...]


def open_paper(content: bytes, name: str, templates: Path) -> OpenedPaper:
    """The PDF of an attachment named `name`; raises Refused where it is none, locked, damaged, or empty."""

    if is_picture(content):
        content = write_picture_page(content, name, templates)
    elif not content:
        raise refuse(f"{name!r} is empty", "export it again")
    elif b"%PDF-" not in content[:_HEAD]:
        raise refuse(f"{name!r} is not a PDF, JPEG, or PNG file", "export it as PDF")
    return _open(content, name)


def _open(content: bytes, name: str) -> OpenedPaper:
    try:
        paper = pikepdf.open(BytesIO(content))
        if paper.is_encrypted:
            raise _refuse_locked(name)
        _check_whole(paper, name)
        left_out = list_active(paper)
        disarm(paper)
    except pikepdf.PasswordError:
        raise _refuse_locked(name) from None
    except (pikepdf.PdfError, *UNREADABLE):
        raise refuse_damaged(name) from None
    return OpenedPaper(paper, left_out)


def _refuse_locked(name: str) -> Refused:
    return refuse(f"{name!r} is encrypted", "ask whoever issued it for a copy that is not")


def refuse_damaged(name: str) -> Refused:
    """The refusal of a file that cannot be read to its end."""
    return refuse(f"{name!r} is damaged or cut short", "export it again, or ask whoever issued it for a whole copy")


def _check_whole(paper: Pdf, name: str) -> None:
    """Raise Refused for a PDF without pages, and where the library had to mend anything or a page cannot be read."""
    pages = list(paper.pages)
    if not pages:
        raise refuse(f"{name!r} has no pages", "export it again")
    if not all(_has_size(page) and all(map(_is_whole, _contents(page.obj))) for page in pages):
        raise refuse_damaged(name)
    if paper.get_warnings():
        raise refuse_damaged(name)


def _has_size(page: Any) -> bool:
    """Whether a page has a box that can be shown."""
    left, low, right, high = map(float, page.mediabox)
    read_shown(page.obj)
    return 0 < abs(right - left) <= _LONGEST_SIDE and 0 < abs(high - low) <= _LONGEST_SIDE


def _contents(page: Any) -> Iterator[Any]:
    """The streams that a page is drawn by."""
    contents = page.get("/Contents")
    yield from contents if isinstance(contents, pikepdf.Array) else () if contents is None else (contents,)


def _is_whole(stream: Any) -> bool:
    """Whether what a stream packs comes out again; of one packed in another way than the usual it is taken to."""
    if stream.get("/Filter") != "/FlateDecode":
        return True
    unpack = zlib.decompressobj()
    try:
        unpack.decompress(stream.read_raw_bytes(), _MOST_UNPACKED)
    except zlib.error:
        return False
    return unpack.eof or bool(unpack.unconsumed_tail)
