"""Hatching of cut materials: thin lines at an angle, as ISO 128-50 has them, told apart by angle and distance."""

from collections.abc import Iterator, Sequence
from math import ceil, cos, radians, sin

Point = tuple[float, float]
# Angle in degrees and distance in millimeters of each run of lines; an area too narrow for lines is filled.
_LINES: dict[str, tuple[tuple[float, float], ...]] = {
    "masonry": ((45, 2.4),),
    "sheathing": ((135, 1.3),),
    "adhesive": ((60, 0.8),),
    "board": ((45, 4.2), (135, 4.2)),
    "sealant": ((45, 0.7),),
    "rod": ((45, 1.6), (135, 1.6)),
    "frame": ((30, 2.8),),
    "mat": ((90, 0.9),),
    "plain": (),
    "film": (),
    "coat": (),
    "lamina": (),
}
_FILLS = {"film": "#000", "lamina": "#777"}


def hatch(kind: str, outline: Sequence[Point]) -> tuple[str, str]:
    """The path of the lines over an area, and the tone that fills it."""
    runs = (run for angle, apart in _LINES[kind] for run in _cross(outline, angle, apart))
    path = "".join(f"M{x1:.2f} {y1:.2f}L{x2:.2f} {y2:.2f}" for (x1, y1), (x2, y2) in runs)
    return path, _FILLS.get(kind, "#fff")


def _cross(outline: Sequence[Point], angle: float, apart: float) -> Iterator[tuple[Point, Point]]:
    """The pieces of parallel lines that lie within an outline."""
    across, up = cos(radians(angle)), sin(radians(angle))
    turned = [(x * across - y * up, x * up + y * across) for x, y in outline]
    sides = list(zip(turned, [*turned[1:], turned[0]], strict=True))
    low, high = min(y for _, y in turned), max(y for _, y in turned)
    for step in range(ceil(low / apart), ceil(high / apart)):
        level = step * apart
        places = sorted(
            x1 + (level - y1) * (x2 - x1) / (y2 - y1) for (x1, y1), (x2, y2) in sides if (y1 <= level) != (y2 <= level)
        )
        for left, right in zip(places[::2], places[1::2], strict=True):
            yield (
                (left * across + level * up, level * across - left * up),
                (right * across + level * up, level * across - right * up),
            )
