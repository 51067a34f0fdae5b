"""Layouts as data for others: the object of `layout.json`, and the rows of the panel list and the joint list."""

from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from specgen.model.layout import ElevationLayout, JointRun, Panel, Point
from specgen.quantities.units import UNITS

FORMAT = 1
PANEL_COLUMNS = ("elevation", "panel", "x", "y", "width", "height", "least_side", "net_area")
JOINT_COLUMNS = ("elevation", "joint", "kind", "x1", "y1", "x2", "y2", "length")
# Numbers are written to this many decimals of an inch or a millimeter, far below what can be snapped or cut.
DECIMALS = 6


def list_unit(system: str) -> str:
    """The unit of all lengths in the lists of a project: in or mm."""
    return "in" if system == "ip" else "mm"


def layout_data(layouts: Iterable[ElevationLayout], system: str) -> dict[str, Any]:
    """The object of `layout.json`: lengths as numbers in its `unit`, net areas in the square of it."""
    unit = list_unit(system)
    return {"format": FORMAT, "unit": unit, "elevations": {one.elevation: _elevation(one, unit) for one in layouts}}


def _elevation(layout: ElevationLayout, unit: str) -> dict[str, Any]:
    return {
        "width": _number(layout.width, unit),
        "height": _number(layout.height, unit),
        "panels": [_panel(panel, unit) for panel in layout.panels],
        "joints": [_joint(joint, unit) for joint in layout.joints],
        "proposal": layout.proposal,
        "notes": list(layout.notes),
    }


def _panel(panel: Panel, unit: str) -> dict[str, Any]:
    sides = ("x", "y", "width", "height", "least_side")
    return {
        "mark": panel.mark,
        **{side: _number(getattr(panel, side), unit) for side in sides},
        "net_area": _number(panel.net_area, unit, 2),
        "outline": [_corner(point, unit) for point in panel.outline],
    }


def _joint(joint: JointRun, unit: str) -> dict[str, Any]:
    sides = ("x1", "y1", "x2", "y2", "length")
    return {"mark": joint.mark, "kind": joint.kind} | {side: _number(getattr(joint, side), unit) for side in sides}


def _corner(point: Point, unit: str) -> list[float | int]:
    return [_number(side, unit) for side in point]


def _number(meters: Fraction, unit: str, power: int = 1) -> float | int:
    """A length, or an area by a power of 2, as a number in a unit of length; whole where it is whole."""
    exact = round(meters / UNITS[unit].factor ** power, DECIMALS)
    return exact.numerator if exact.denominator == 1 else float(exact)


def panel_rows(layouts: Iterable[ElevationLayout], system: str) -> list[list[str | float | int]]:
    """The rows of the panel list below PANEL_COLUMNS, lengths in the unit of the lists."""
    data = layout_data(layouts, system)["elevations"]
    keys = ("mark", *PANEL_COLUMNS[2:])
    return [[mark, *(panel[key] for key in keys)] for mark, one in data.items() for panel in one["panels"]]


def joint_rows(layouts: Iterable[ElevationLayout], system: str) -> list[list[str | float | int]]:
    """The rows of the joint list below JOINT_COLUMNS, lengths in the unit of the lists."""
    data = layout_data(layouts, system)["elevations"]
    keys = ("mark", *JOINT_COLUMNS[2:])
    return [[mark, *(joint[key] for key in keys)] for mark, one in data.items() for joint in one["joints"]]
