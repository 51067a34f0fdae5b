"""Fields of a PDF form in the place of links: text, dates, and boxes to tick, each with the look of its states."""

from pathlib import Path
from typing import Any

from pikepdf import Array, Dictionary, Name, Pdf, Stream, String

from specgen.formats.pdf.embedded_font import embed_font

_FONT = "/Sheet"
_SIZE, _SMALL, _NARROW = 9, 7, 40.0  # the size of what is filled in, that in a blank narrower than the third, in points
_PRINTED = 4  # of an annotation: it prints
_MULTILINE = 1 << 12
_TALL = 30.0  # a blank from this height on takes lines, in points
_DATE = ", as 2027-03-01"
ON = "/Yes"


class FieldWriter:
    """Makes the fields of one form; they are listed in it once it is finished."""

    def __init__(self, form: Pdf, templates: Path) -> None:
        self._form = form
        self._resources = Dictionary(Font=Dictionary({_FONT: embed_font(form, templates)}))
        self._roots: list[Any] = []
        self._nodes: dict[tuple[str, ...], Any] = {}
        self._made: set[tuple[int, int]] = set()
        form.Root.AcroForm = Dictionary(Fields=Array(), DA=_look(_SIZE), DR=self._resources)

    def make_field(self, link: Any, page: Any, name: str, label: str, kind: str) -> None:
        """Turn a link on a page into the field of this name; `kind` is text, date, or tick."""
        for key in ("/A", "/Border", "/Contents", "/QuadPoints", "/H"):
            if key in link:
                del link[key]
        link["/Subtype"], link["/F"], link["/P"] = Name.Widget, _PRINTED, page
        link["/TU"] = _text(label + (_DATE if kind == "date" else ""))
        link["/MK"] = Dictionary()
        *above, own = name.split(".")
        link["/T"] = _text(own)
        self._hang(link, tuple(above), own)
        self._made.add(link.objgen)
        left, low, right, high = map(float, link.Rect)
        if kind == "tick":
            self._make_tick(link, right - left, high - low)
        else:
            self._make_text(link, right - left, high - low)

    def finish(self) -> None:
        """List the fields in the form, and name them as such in its structure."""
        self._form.Root.AcroForm["/Fields"] = Array(self._roots)
        self._name_structure()

    def _hang(self, field: Any, above: tuple[str, ...], own: str) -> None:
        """Put a field below those that the parts of its name stand for; two of one full name are a defect."""
        if (*above, own) in self._nodes:
            raise ValueError(f"two fields of a form are named {'.'.join((*above, own))}")
        self._nodes[*above, own] = field
        parent = self._find_node(above)
        if parent is None:
            self._roots.append(field)
        else:
            field["/Parent"] = parent
            parent.Kids.append(field)

    def _find_node(self, path: tuple[str, ...]) -> Any:
        """The field that holds those whose names begin with these parts; None for no parts."""
        if not path:
            return None
        if path not in self._nodes:
            self._hang(self._form.make_indirect(Dictionary(T=_text(path[-1]), Kids=Array())), path[:-1], path[-1])
        if "/Kids" not in self._nodes[path]:
            raise ValueError(f"a field of a form is named {'.'.join(path)}, and others within it")
        return self._nodes[path]

    def _make_text(self, field: Any, width: float, height: float) -> None:
        field["/FT"], field["/DA"] = Name.Tx, _look(_SMALL if width < _NARROW else _SIZE)
        if height > _TALL:
            field["/Ff"] = _MULTILINE
        field["/AP"] = Dictionary(N=self._draw(b"/Tx BMC EMC", width, height))

    def _make_tick(self, field: Any, width: float, height: float) -> None:
        field["/FT"], field["/V"], field["/AS"] = Name.Btn, Name.Off, Name.Off
        lines = ((0.15, 0.5), (0.4, 0.2), (0.85, 0.85))
        points = [f"{x * width:.2f} {y * height:.2f}" for x, y in lines]
        drawn = f"q 1.2 w 1 J 1 j {points[0]} m {points[1]} l {points[2]} l S Q".encode()
        states = {ON: self._draw(drawn, width, height), "/Off": self._draw(b"", width, height)}
        field["/AP"] = Dictionary(N=Dictionary(states))

    def _draw(self, content: bytes, width: float, height: float) -> Any:
        about = Dictionary(
            Type=Name.XObject, Subtype=Name.Form, BBox=Array([0, 0, width, height]), Resources=self._resources
        )
        return self._form.make_indirect(Stream(self._form, content, about))

    def _name_structure(self) -> None:
        """Name the parts of the structure that hold a field: forms, as they were links."""
        waiting = [self._form.Root.StructTreeRoot]
        while waiting:
            part = waiting.pop()
            below = part.get("/K")
            kids = list(below) if isinstance(below, Array) else [below]
            dictionaries = [kid for kid in kids if isinstance(kid, Dictionary)]
            if any("/Obj" in kid and kid.Obj.objgen in self._made for kid in dictionaries):
                part.S = Name.Form
            waiting += [kid for kid in dictionaries if "/Obj" not in kid]


def _look(size: int) -> Any:
    """How what is filled in looks, as a field says it."""
    return _text(f"{_FONT} {size} Tf 0 g")


def _text(words: str) -> Any:
    return String(words)
