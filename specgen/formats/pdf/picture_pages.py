"""A scanned paper that is a picture, as a page to bind in."""

import struct
from pathlib import Path
from typing import Any

from specgen.model.problem import Refused, refuse

MOST_PIXELS = 40_000_000
_PNG, _JPEG = b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff"
# Of a JPEG: the marks of a segment that tells its size, and those of segments without a length.
_TELLS_SIZE = frozenset({*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC})
_BARE = frozenset({0x01, *range(0xD0, 0xD9)})
_PAGE = """#set document(date: none)
#set page("us-letter", flipped: FLIPPED, margin: 0.5in)
#set image(width: 100%, height: 100%, fit: "contain")
#image("picture.KIND", alt: "Scanned document")
"""


def is_picture(content: bytes) -> bool:
    """Whether a file is a picture that can be bound in."""
    return content.startswith((_PNG, _JPEG))


def write_picture_page(content: bytes, name: str, templates: Path) -> bytes:
    """A letter page with a picture, upright or across as that is; raises Refused for one that cannot be shown."""
    import typst

    width, height = _read_size(content, name)
    if width * height > MOST_PIXELS:
        size = f"{width * height / 1e6:.0f} megapixels"
        raise refuse(
            f"{name!r} has {size}, at most {MOST_PIXELS // 10**6} are bound in", "scan it at 300 dots per inch"
        )
    kind = "png" if content.startswith(_PNG) else "jpg"
    page = _PAGE.replace("FLIPPED", "true" if width > height else "false").replace("KIND", kind)
    fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(templates / "fonts")])
    files: Any = {"main.typ": page.encode(), f"picture.{kind}": content}
    try:
        made: bytes = typst.compile(files, font_paths=fonts)
    except typst.TypstError:
        raise _refuse_damaged(name) from None
    return made


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
