"""Panels of a layout in the words of a finding: the figure that counts, then the marks of the first few."""

from collections.abc import Callable
from fractions import Fraction

from specgen.judging.rule import Violations, violation
from specgen.model.layout import Panel
from specgen.model.project import Project
from specgen.model.typed_views import Elevation
from specgen.model.value_text import value_text
from specgen.quantities.quantity import Quantity, round_quantity

# So many are named in one finding, the others counted.
NAMED = 6
# What a length is told to, by the unit system of the project.
_STEPS = {"ip": Quantity.of(Fraction(1, 16), "in"), "si": Quantity.of(1, "mm")}

Measure = Callable[[Panel], Fraction]


def report_panels(
    elevation: Elevation, panels: list[Panel], size: Measure, limit: Quantity, *, least: bool = False
) -> Violations:
    """One violation for all panels past a limit; none where there are none."""
    if panels:
        yield violation(name_panels(elevation, panels, size, limit, least=least), wanted=limit)


def name_panels(elevation: Elevation, panels: list[Panel], size: Measure, limit: Quantity, *, least: bool) -> str:
    """`6 ft at E1-A1, 5 ft 6 in at E1-A2 and 3 more`: each with its own figure, the farthest past a limit first."""
    found, project = sorted(panels, key=size, reverse=not least), elevation.project
    of_figure: dict[str, list[str]] = {}
    for panel in found[:NAMED]:
        figure = _tell_figure(project, quantity_like(limit, size(panel)))
        of_figure.setdefault(figure, []).append(panel.mark)
    more = f" and {len(found) - NAMED} more" if len(found) > NAMED else ""
    return ", ".join(f"{figure} at {', '.join(marks)}" for figure, marks in of_figure.items()) + more


def name_each(elevation: Elevation, panels: list[Panel], limit: Quantity) -> str:
    """`1 ft 2 in (8 in at its low end) at E1-B3a, 1 ft 3 in at E1-A3b and 3 more`: the least side of each."""
    found = sorted(panels, key=lambda panel: panel.least_side)
    alike: dict[str, list[str]] = {}
    for panel in found[:NAMED]:
        alike.setdefault(_tell_least(elevation, panel, limit), []).append(panel.mark)
    more = f" and {len(found) - NAMED} more" if len(found) > NAMED else ""
    return ", ".join(f"{size} at {', '.join(marks)}" for size, marks in alike.items()) + more


def _tell_least(elevation: Elevation, panel: Panel, limit: Quantity) -> str:
    """The least side of a panel, and the plumb side at the low end of a slope where that is less."""
    project, sides = elevation.project, list(zip(panel.outline, panel.outline[1:] + panel.outline[:1], strict=True))
    sloped = any(x != x0 and y != y0 for (x0, y0), (x, y) in sides)
    plumb = min((abs(y - y0) for (x0, y0), (x, y) in sides if x == x0), default=panel.least_side)
    least, low = (_tell_figure(project, quantity_like(limit, size)) for size in (panel.least_side, plumb))
    return f"{least} ({low} at its low end)" if sloped and plumb < panel.least_side else least


def _tell_figure(project: Project, figure: Quantity) -> str:
    """A figure as a tape tells it, each length in feet and inches or whole millimeters; an area to three digits."""
    if figure.dimension == "length":
        step = _STEPS[project.system].amount
        figure = Quantity(round(figure.amount / step) * step, figure.dimension, figure.unit)
    else:
        figure = round_quantity(figure, 3)
    return value_text(figure, None, project.system, project.both_units)


def quantity_like(limit: Quantity, amount: Fraction) -> Quantity:
    """A figure of a layout in the unit of what it is held against."""
    return Quantity(amount, limit.dimension, limit.unit)
