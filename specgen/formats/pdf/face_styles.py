"""The looks of the words of a letterhead: what a run says, else its paragraph's style, else the defaults."""

from typing import Any

from docx.oxml.ns import qn

from specgen.formats.docx.elements import Element
from specgen.formats.docx.letterhead.styles import find_tab_stops

_OFF = {"0", "false", "off", "none"}
_ALIGNED = {"center": "center", "right": "right", "end": "right"}
_PLAIN_SIZE = 10.0  # points, where nothing says one


class FaceStyles:
    """The styles of a letterhead, each chain of them resolved once."""

    def __init__(self, root: Element) -> None:
        self.root = root
        self.by_id = {style.get(qn("w:styleId"), ""): style for style in root.iterchildren(qn("w:style"))}
        self.usual = next(
            (name for name, style in self.by_id.items() if style.get(qn("w:default")) and _is_paragraph(style)), ""
        )
        self.defaults = root.find(f"{qn('w:docDefaults')}/{qn('w:rPrDefault')}/{qn('w:rPr')}")

    def list_chain(self, paragraph: Element) -> list[Element]:
        """The styles of a paragraph, its own first."""
        named = paragraph.find(f"{qn('w:pPr')}/{qn('w:pStyle')}")
        name = named.get(qn("w:val"), "") if named is not None else self.usual
        chain: list[Element] = []
        while name in self.by_id and self.by_id[name] not in chain:  # each is taken once, so that a circle ends
            chain.append(self.by_id[name])
            base = chain[-1].find(qn("w:basedOn"))
            name = base.get(qn("w:val"), "") if base is not None else ""
        return chain

    def describe_look(self, run: Element, chain: list[Element]) -> dict[str, Any]:
        """Weight, slant, size in points, color and capitals of a run."""
        found = [run.find(qn("w:rPr")), *(style.find(qn("w:rPr")) for style in chain), self.defaults]
        layers = [layer for layer in found if layer is not None]
        size, color = (_find_value(layers, name) for name in ("sz", "color"))
        look: dict[str, Any] = {"size": _read_number(size) / 2 or _PLAIN_SIZE}
        look |= {
            word: True for word, name in (("bold", "b"), ("italic", "i"), ("caps", "caps")) if _is_set(layers, name)
        }
        if color is not None and len(color) == 6 and all(digit in "0123456789abcdefABCDEF" for digit in color):
            look["color"] = f"#{color}"
        return look

    def describe_paragraph(self, paragraph: Element, chain: list[Element]) -> dict[str, Any]:
        """The side a paragraph stands to, the room around it in points, and its tab stops in points by place."""
        found = [paragraph.find(qn("w:pPr")), *(style.find(qn("w:pPr")) for style in chain)]
        layers = [layer for layer in found if layer is not None]
        named = chain[0].get(qn("w:styleId"), "") if chain else ""
        stops = find_tab_stops(self.root, named)
        for tab in layers[0].iterfind(f"{qn('w:tabs')}/{qn('w:tab')}") if layers else ():
            place, kind = int(_read_number(tab.get(qn("w:pos")))), tab.get(qn("w:val"), "left")
            stops.pop(place, None)
            if kind != "clear":
                stops[place] = kind
        return {
            "side": _ALIGNED.get(_find_value(layers, "jc") or "", "left"),
            "before": _find_length(layers, "spacing", "before"),
            "after": _find_length(layers, "spacing", "after"),
            "left": _find_length(layers, "ind", "left"),
            "stops": [[place / 20, kind] for place, kind in sorted(stops.items())],
        }


def _is_paragraph(style: Element) -> bool:
    return style.get(qn("w:type")) == "paragraph"


def _find_value(layers: list[Element], name: str) -> str | None:
    """The value of a property where it is said first."""
    found = (layer.find(qn(f"w:{name}")) for layer in layers)
    return next((element.get(qn("w:val"), "") for element in found if element is not None), None)


def _is_set(layers: list[Element], name: str) -> bool:
    value = _find_value(layers, name)
    return value is not None and value not in _OFF


def _find_length(layers: list[Element], name: str, side: str) -> float:
    """A length in points where it is said first."""
    found = (layer.find(qn(f"w:{name}")) for layer in layers)
    said = (element.get(qn(f"w:{side}")) for element in found if element is not None)
    return max(0.0, _read_number(next((text for text in said if text is not None), None)) / 20)


def _read_number(text: str | None) -> float:
    """The number in an attribute; 0 where there is none, or none that a page could have."""
    try:
        number = float(text or 0)
    except ValueError:
        return 0.0
    return number if -32_000 < number < 32_000 else 0.0
