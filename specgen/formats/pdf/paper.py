"""The papers of a set: the page of its documents by its letterhead, and the sheets of drawings that need more room."""

from dataclasses import dataclass, replace
from typing import Any

# Sheets lying on their side, in millimeters: letter and tabloid (ANSI/ASME Y14.1), A4 and A3 (ISO 216).
_AMERICAN, _ISO = ((279.4, 215.9), (431.8, 279.4)), ((297.0, 210.0), (420.0, 297.0))
# What a caption below a drawing takes, in millimeters.
_CAPTION = 10.0
_MM_OF_TWENTIETH = 25.4 / 1440


@dataclass(frozen=True, slots=True)
class Paper:
    """A page in millimeters: its sides, its margins, and how far its running lines stand from its edges."""

    width: float
    height: float
    top: float
    right: float
    bottom: float
    left: float
    head: float
    foot: float

    @property
    def text(self) -> tuple[float, float]:
        """The room for text: width and height."""
        return self.width - self.left - self.right, self.height - self.top - self.bottom

    def turn(self) -> "Paper":
        """The page lying on its side."""
        return replace(self, width=self.height, height=self.width) if self.width < self.height else self

    def describe(self) -> dict[str, float]:
        """The data of the page."""
        names = ("width", "height", "top", "right", "bottom", "left", "head", "foot")
        return {name: round(getattr(self, name), 3) for name in names}


def make_paper(size: tuple[int, int], margins: dict[str, int]) -> Paper:
    """The page of a Word section; lengths in twentieths of a point."""
    width, height = (side * _MM_OF_TWENTIETH for side in size)
    around = {name: margins[name] * _MM_OF_TWENTIETH for name in ("top", "right", "bottom", "left")}
    head, foot = margins["header"] * _MM_OF_TWENTIETH, margins["footer"] * _MM_OF_TWENTIETH
    return Paper(width=width, height=height, head=head, foot=foot, **around)


def choose_sheet(width: float, height: float, paper: Paper) -> dict[str, Any] | None:
    """The sheet that a drawing stands on by itself, at its true size; None where the page has room for it."""
    room = paper.text
    if width <= room[0] and height + _CAPTION <= room[1]:
        return None
    wide, high = width + paper.left + paper.right, height + _CAPTION + paper.top + paper.bottom
    iso = min(abs(side - 210) for side in (paper.width, paper.height)) < 2
    for sides in _ISO if iso else _AMERICAN:
        for sheet in (sides, sides[::-1]):
            if wide <= sheet[0] and high <= sheet[1]:
                return {"width": sheet[0], "height": sheet[1]}
    edges = _narrow(width, height, _ISO if iso else _AMERICAN)
    return edges or {"width": round(wide, 3), "height": round(high, 3)}


def _narrow(width: float, height: float, sheets: tuple[tuple[float, float], ...]) -> dict[str, Any] | None:
    """The sheet whose whole size a drawing has, such as one with its own border: it stands there without margins."""
    for sheet in sheets:
        if abs(width - sheet[0]) < 1 and abs(height - sheet[1]) < 1:
            return {"width": sheet[0], "height": sheet[1], "bare": True}
    return None
