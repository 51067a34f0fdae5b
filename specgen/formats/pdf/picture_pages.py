"""A scanned paper that is a picture, as a page to bind in."""

import base64
import struct
from io import BytesIO
from pathlib import Path
from typing import Any

import pikepdf

from specgen.model.problem import Refused, refuse

MOST_PIXELS = 40_000_000
_PNG, _JPEG = b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff"
# Of a JPEG: the marks of a segment that tells its size, and those of segments without a length.
_TELLS_SIZE = frozenset({*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC})
_BARE = frozenset({0x01, *range(0xD0, 0xD9)})
_JPEG_END = b"\xff\xd9"
_TAIL = 1024  # within its last bytes a whole JPEG says that it ends
_PAGE = """#set document(date: none)
#set page("us-letter", flipped: FLIPPED, margin: 0.5in)
#image("picture.svg", width: 100%, height: 100%, fit: "contain", alt: "Scanned document")
"""
# The library takes no files but texts.
_FRAME = """<svg xmlns="http://www.w3.org/2000/svg" width="{0}" height="{1}" viewBox="0 0 {0} {1}">
<image width="{0}" height="{1}" href="data:image/{2};base64,{3}"/></svg>"""


def is_picture(content: bytes) -> bool:
    """Whether a file is a picture that can be bound in."""
    return content.startswith((_PNG, _JPEG))


def write_picture_page(content: bytes, name: str, templates: Path) -> bytes:
    """A letter page with a picture, upright or across as that is; raises Refused for one that cannot be shown."""
    width, height = _read_size(content, name)
    if width * height > MOST_PIXELS:
        size = f"{width * height / 1e6:.0f} megapixels"
        raise refuse(
            f"{name!r} has {size}, at most {MOST_PIXELS // 10**6} are bound in", "scan it at 300 dots per inch"
        )
    kind = "png" if content.startswith(_PNG) else "jpeg"
    frame = _FRAME.format(width, height, kind, base64.b64encode(content).decode())
    page = _PAGE.replace("FLIPPED", "true" if width > height else "false")
    made = _compile({"main.typ": page.encode(), "picture.svg": frame.encode()}, templates)
    if (kind == "jpeg" and _JPEG_END not in content[-_TAIL:]) or not _shows_picture(made):
        raise _refuse_damaged(name)
    return made


def _compile(files: dict[str, bytes], templates: Path) -> bytes:
    import typst

    fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(templates / "fonts")])
    compile_files: Any = typst.compile  # the stubs of the library lack files by their names
    return bytes(compile_files(files, font_paths=fonts))


def _shows_picture(made: bytes) -> bool:
    """Whether a page shows a picture: one that cannot be read is left out without a word."""
    with pikepdf.open(BytesIO(made)) as page:
        streams = (found for found in page.objects if isinstance(found, pikepdf.Stream))
        return any(stream.get("/Subtype") == "/Image" for stream in streams)


def _refuse_damaged(name: str) -> Refused:
    return refuse(f"{name!r} is a damaged picture", "scan or export it again")


def _read_size(content: bytes, name: str) -> tuple[int, int]:
    """The width and height of a picture in pixels; raises Refused where it does not say them."""
    try:
        width, height = struct.unpack(">II", content[16:24]) if content.startswith(_PNG) else _read_jpeg_size(content)
    except (struct.error, IndexError):
        raise _refuse_damaged(name) from None
    if not width or not height:
        raise _refuse_damaged(name)
    return width, height


def _read_jpeg_size(content: bytes) -> tuple[int, int]:
    at = 2
    while content[at] == 0xFF:
        mark = content[at + 1]
        if mark in _TELLS_SIZE:
            height, width = struct.unpack(">HH", content[at + 5 : at + 9])
            return width, height
        at += 1 if mark == 0xFF else 2 if mark in _BARE else 2 + struct.unpack(">H", content[at + 2 : at + 4])[0]
    return 0, 0
