"""A sheet that is drawn on: strokes by the kind of their line, labels that keep apart, and the view of a wall."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from specgen.documents.figures.labels import Box, Label, LabelSpace

Segment = tuple[float, float, float, float]


class View(NamedTuple):
    """How a part of a wall, in meters, lies on the paper, in millimeters."""

    left: float
    bottom: float
    right: float
    top: float
    x0: float  # of its lower left corner
    y0: float
    per_meter: float

    def x(self, meters: float) -> float:
        """The place across, from the left of the paper."""
        return self.x0 + (meters - self.left) * self.per_meter

    def y(self, meters: float) -> float:
        """The place down, from the top of the paper."""
        return self.y0 - (meters - self.bottom) * self.per_meter

    @property
    def box(self) -> Box:
        """The part of the wall on paper."""
        return Box(self.x0, self.y(self.top), self.x(self.right), self.y0)

    def clip(self, x1: float, y1: float, x2: float, y2: float) -> Segment | None:
        """The piece of a line that the view shows, in meters; None if there is none.

        A line along the edge of the view is shown.
        """
        left, bottom, right, top = self[:4]
        if left <= x1 <= right and left <= x2 <= right and bottom <= y1 <= top and bottom <= y2 <= top:
            return x1, y1, x2, y2
        start, end = 0.0, 1.0
        for at, to, low, high in ((x1, x2, left, right), (y1, y2, bottom, top)):
            step = to - at
            if not step:
                if not low - 1e-9 <= at <= high + 1e-9:
                    return None
                continue
            first, last = sorted(((low - at) / step, (high - at) / step))
            start, end = max(start, first), min(end, last)
        if start >= end:
            return None
        return x1 + start * (x2 - x1), y1 + start * (y2 - y1), x1 + end * (x2 - x1), y1 + end * (y2 - y1)


class Canvas:
    """What is drawn on one sheet; the template gives each kind of stroke its line."""

    def __init__(self, within: Box) -> None:
        self.within = within
        self.space = LabelSpace(within)
        self.strokes: dict[str, list[str]] = {}
        self.labels: list[Label] = []
        self.key: list[str] = []  # what the numbers stand for whose words found no place
        self.lost: list[str] = []  # what has no number either

    def line(self, kind: str, x1: float, y1: float, x2: float, y2: float) -> None:
        """Draw a straight line."""
        self.strokes.setdefault(kind, []).append(f"M{x1:.6g} {y1:.6g}L{x2:.6g} {y2:.6g}")

    def area(self, kind: str, points: Iterable[tuple[float, float]]) -> None:
        """Draw a closed outline."""
        path = "L".join(f"{x:.6g} {y:.6g}" for x, y in points)
        self.strokes.setdefault(kind, []).append(f"M{path}Z")

    def box(self, kind: str, box: Box) -> None:
        """Draw a rectangle."""
        path = f"M{box.left:.6g} {box.top:.6g}H{box.right:.6g}V{box.bottom:.6g}H{box.left:.6g}Z"
        self.strokes.setdefault(kind, []).append(path)

    def wall_line(self, kind: str, view: View, x1: float, y1: float, x2: float, y2: float) -> None:
        """Draw what the view shows of a line of the wall."""
        shown = view.clip(x1, y1, x2, y2)
        if shown:
            self.line(kind, view.x(shown[0]), view.y(shown[1]), view.x(shown[2]), view.y(shown[3]))

    def put(self, label: Label) -> None:
        """Write a label at a place that is its own."""
        self.labels.append(label)
        self.space.take(label.box)

    def place(self, choices: Iterable[Label], blank: bool = False) -> Label | None:
        """Write the first of some labels that finds a place; with `blank` no line shows behind it."""
        label = self.space.place(choices)
        if label is not None:
            self.labels.append(label)
            if blank:
                self.box("blank", label.box.grow(0.3))
        return label

    @property
    def remarks(self) -> list[str]:
        """The key, and what stands on no place of the sheet."""
        return [f"{number} = {text}" for number, text in enumerate(self.key, 1)] + [
            f"{text}: no room on the drawing" for text in self.lost
        ]

    def values(self) -> dict[str, Any]:
        """The strokes by kind and the labels by their type, for the template."""
        groups: dict[tuple[Any, ...], list[tuple[str, str, str]]] = {}
        for label in self.labels:
            kind = (f"{label.size:g}", label.anchor, label.bold, label.turned)
            groups.setdefault(kind, []).append((f"{label.x:.6g}", f"{label.y:.6g}", label.text))
        names = ("size", "anchor", "bold", "turned")
        labels = [dict(zip(names, kind, strict=True)) | {"lines": lines} for kind, lines in groups.items()]
        return {"strokes": {kind: "".join(paths) for kind, paths in self.strokes.items()}, "labels": labels}
