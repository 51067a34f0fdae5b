"""The pictures of a letterhead: read once, made no larger than a printer shows, placed as in the Word file."""

import base64
import io
import re
import warnings
from collections.abc import Iterator
from typing import Any

from docx.opc.part import Part
from docx.oxml.ns import qn
from lxml import etree

from specgen.formats.docx.elements import Element
from specgen.formats.docx.letterhead import vocabulary as known
from specgen.formats.pdf.paper import Paper

# A printer shows no more dots in an inch.
_DOTS = 600
_EMU = 36_000  # English Metric Units in a millimeter (ECMA-376 part 1, 20.1.2.1)
_KEPT = {"PNG": "png", "JPEG": "jpeg"}
_WP, _A, _V = known.WP, known.A, known.V
_LENGTH = re.compile(r"([\d.]+)(pt|in|mm|cm|px|)")
_MM = {"pt": 25.4 / 72, "in": 25.4, "mm": 1.0, "cm": 10.0, "px": 25.4 / 96, "": 25.4 / 72}
Data = dict[str, Any]


class FacePictures:
    """The pictures met so far, as files of the template, and what is told of those that cannot be shown."""

    def __init__(self) -> None:
        self.files: dict[str, bytes] = {}
        self.told: dict[str, None] = {}

    def read(self, drawing: Element, part: Part, paper: Paper) -> Iterator[Data]:
        """The picture of a drawing with its size in millimeters, and its place where it does not stand in a line."""
        blip = next(drawing.iter(f"{{{_A}}}blip", f"{{{_V}}}imagedata"), None)
        if blip is None:
            return
        id_ = blip.get(qn("r:embed")) or blip.get(qn("r:id")) or ""
        size = _read_size(drawing, blip)
        if id_ not in part.rels or size is None:
            return
        name = self.add(part.rels[id_].target_part.blob, size)
        if name:
            yield {"picture": name, "width": size[0], "height": size[1], **_read_place(drawing, size, paper)}

    def add(self, content: bytes, size: tuple[float, float]) -> str:
        """The name of the file of a picture shown at a size; empty where it cannot be shown."""
        from PIL import Image

        try:
            with warnings.catch_warnings():
                # One of so many dots that the library warns of it.
                warnings.simplefilter("error", Image.DecompressionBombWarning)
                with Image.open(io.BytesIO(content)) as picture:
                    shown, kind = _shrink(picture, content, size)
        except (Image.DecompressionBombWarning, Image.DecompressionBombError):
            self.told["a picture of the letterhead has too many dots for the PDF: make it smaller"] = None
            return ""
        except (OSError, ValueError, SyntaxError):
            self.told["a picture of the letterhead is of a kind that the PDF cannot show: save it as PNG"] = None
            return ""
        name = f"picture{len(self.files)}.svg"
        self.files[name] = _wrap(shown, kind, size)
        return name


def _wrap(content: bytes, kind: str, size: tuple[float, float]) -> bytes:
    """The picture within a drawing, as the library takes texts alone beside its template."""
    told = f'viewBox="0 0 {size[0]} {size[1]}" width="{size[0]}mm" height="{size[1]}mm"'
    data = f"data:image/{kind};base64,{base64.b64encode(content).decode()}"
    inner = f'<image width="{size[0]}" height="{size[1]}" preserveAspectRatio="none" href="{data}"/>'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {told}>{inner}</svg>'.encode()


def _shrink(picture: Any, content: bytes, size: tuple[float, float]) -> tuple[bytes, str]:
    """The picture as PNG or JPEG with no more dots than a printer shows at this size, and its kind."""
    most = tuple(max(1, round(side / 25.4 * _DOTS)) for side in size)
    large = picture.width > 1.5 * most[0] and picture.height > 1.5 * most[1]
    kind = picture.format if picture.format in _KEPT else "PNG"
    if large:
        picture.draft(picture.mode, most)
        picture = picture if picture.mode in ("RGB", "RGBA", "L") else picture.convert("RGBA")
        picture = picture.resize(most, reducing_gap=2.0)
    elif picture.format in _KEPT:
        picture.load()  # a damaged one is noticed here
        return content, _KEPT[picture.format]
    made = io.BytesIO()
    picture.convert("RGB" if kind == "JPEG" else "RGBA").save(made, kind)
    return made.getvalue(), _KEPT[kind]


def _read_size(drawing: Element, blip: Element) -> tuple[float, float] | None:
    """Width and height in millimeters; None where it has none that a page could hold."""
    extent = next(drawing.iter(f"{{{_WP}}}extent"), None)
    if extent is not None:
        sides = [_read_emu(extent.get(side)) for side in ("cx", "cy")]
    else:
        shape = blip.getparent()
        style = dict(
            entry.strip().split(":", 1)
            for entry in (shape.get("style", "") if shape is not None else "").split(";")
            if ":" in entry
        )
        sides = [_read_length(style.get(side, "")) for side in ("width", "height")]
    return (sides[0], sides[1]) if all(0 < side < 600 for side in sides) else None


def _read_length(text: str) -> float:
    found = _LENGTH.fullmatch(text.strip())
    return round(float(found[1]) * _MM[found[2]], 3) if found else 0.0


def _read_emu(text: str | None) -> float:
    try:
        return round(int(text or 0) / _EMU, 3)
    except ValueError:
        return 0.0


def _read_place(drawing: Element, size: tuple[float, float], paper: Paper) -> dict[str, float]:
    """The place of a picture in millimeters from the left edge of the page, and from its upper edge or its line."""
    anchor = next(drawing.iter(f"{{{_WP}}}anchor"), None)
    if anchor is None:
        return {}
    across = _read_axis(anchor, "H", size[0], (paper.width, paper.left, paper.right))
    down = _read_axis(anchor, "V", size[1], (paper.height, paper.top, paper.bottom))
    upright = anchor.find(f"{{{_WP}}}positionV")
    of_line = upright is not None and upright.get("relativeFrom") in ("paragraph", "line")
    return {"x": across, "below": down - paper.top} if of_line else {"x": across, "y": down}


def _read_axis(anchor: Element, axis: str, side: float, page: tuple[float, float, float]) -> float:
    """Where a picture begins on one axis of the page, of which its length and its two margins are given."""
    position = anchor.find(f"{{{_WP}}}position{axis}")
    length, near, far = page
    if position is None:
        return near
    start, room = (0.0, length) if position.get("relativeFrom") == "page" else (near, length - near - far)
    if position.get("relativeFrom") in ("topMargin", "leftMargin"):
        start, room = 0.0, near
    if position.get("relativeFrom") in ("bottomMargin", "rightMargin"):
        start, room = length - far, far
    offset, aligned = (next(position.iter(f"{{{_WP}}}{word}"), None) for word in ("posOffset", "align"))
    if offset is not None:
        return round(start + _read_emu(etree.tostring(offset, method="text", encoding="unicode").strip()), 3)
    share = {"center": 0.5, "right": 1.0, "bottom": 1.0, "outside": 1.0}.get(
        (aligned.text or "") if aligned is not None else "", 0.0
    )
    return round(start + (room - side) * share, 3)
