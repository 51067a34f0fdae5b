"""Where vapor condenses between the layers of a wall, and how much: the tangents of ISO 13788."""

from collections.abc import Sequence

from specgen.computing.working_builder import WorkingBuilder


def find_wet_planes(resistances: Sequence[float], bounds: Sequence[float]) -> list[int]:
    """The interfaces at which vapor condenses, counted from the inner face as 0.

    `resistances` are those of the layers to vapor; `bounds` are the pressures at their faces: of the inner air first,
    saturation between, of the outer air last. The pressure runs as a string drawn taut below saturation: the planes
    are where it touches, which are the corners of the lower hull of the bounds.
    """
    depth = [0.0]
    for resistance in resistances:
        depth.append(depth[-1] + resistance)
    hull: list[int] = []
    for at, bound in enumerate(bounds):
        while len(hull) > 1 and not _bends(depth, bounds, hull[-2], hull[-1], at, bound):
            hull.pop()
        hull.append(at)
    return hull[1:-1]


def _bends(depth: Sequence[float], bounds: Sequence[float], first: int, middle: int, last: int, end: float) -> bool:
    """Whether the middle face lies below the line from the first to the last, by more than the last bit of a float."""
    share = (depth[middle] - depth[first]) / (depth[last] - depth[first])
    return bounds[middle] < bounds[first] + (end - bounds[first]) * share - 1e-9


def add_condensate(working: WorkingBuilder, wet: Sequence[int], places: Sequence[str], layers: int, unit: str) -> None:
    """Adds the vapor that condenses in a day at each plane: what comes in less what goes on."""
    ends = [0, *wet, layers]
    for before, at, after in zip(ends, wet, ends[2:], strict=False):
        comes = f"({_pressure(before, layers)} - s_{at}) / ({_resistance(before, at)})"
        goes = f"(s_{at} - {_pressure(after, layers)}) / ({_resistance(at, after)})"
        working.step(f"q_{at}", f"vapor that condenses in a day, {places[at]}", f"v * ({comes} - {goes})", unit)


def _pressure(at: int, layers: int) -> str:
    return "p_0" if at == 0 else "p_e" if at == layers else f"s_{at}"


def _resistance(first: int, last: int) -> str:
    return " + ".join(f"Z_{n}" for n in range(first + 1, last + 1))
