"""Pictures of a letterhead: known by their first bytes, whatever their name and their declared type say."""

import hashlib
import re

from specgen.formats.docx.letterhead.opc import NewPackage

# First bytes by the standards of each kind: PNG (ISO/IEC 15948), JPEG (ISO/IEC 10918-1), GIF 87a and 89a, TIFF 6.0;
# BMP with the length of its head, EMF with its signature, WMF with and without a placeable head ([MS-EMF], [MS-WMF]).
_KINDS = (
    ("png", "image/png", rb"\x89PNG\r\n\x1a\n"),
    ("jpeg", "image/jpeg", rb"\xff\xd8\xff"),
    ("gif", "image/gif", rb"GIF8[79]a"),
    ("tiff", "image/tiff", rb"II\*\0|MM\0\*"),
    ("bmp", "image/bmp", rb"BM.{12}[\x0c\x28\x34\x38\x40\x6c\x7c]\0\0\0"),
    ("emf", "image/x-emf", rb"\x01\0\0\0.{36} EMF"),
    ("wmf", "image/x-wmf", rb"\xd7\xcd\xc6\x9a\0\0|[\x01\x02]\0\t\0\0[\x01\x03]"),
)


def find_picture_kind(content: bytes) -> tuple[str, str] | None:
    """The file extension and content type of a picture; None for what is none of the known kinds."""
    matches = (row[:2] for row in _KINDS if re.match(row[2], content[:64], re.DOTALL))
    return next(matches, None)


def add_picture(content: bytes, to: NewPackage, source: str) -> str:
    """The id by which a part links to a picture, which is added once; empty where it is of no known kind."""
    kind = find_picture_kind(content)
    if kind is None:
        return ""
    ending, type_ = kind
    name = f"word/media/{hashlib.sha256(content).hexdigest()[:16]}.{ending}"
    to.add(name, type_, content)
    return to.link(source, "image", name)
