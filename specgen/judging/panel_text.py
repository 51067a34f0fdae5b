"""Panels of a layout in the words of a finding: the figure that counts, then the marks of the first few."""

from collections.abc import Callable
from fractions import Fraction

from specgen.judging.rule import Violations, violation
from specgen.model.layout import Panel
from specgen.model.typed_views import Elevation
from specgen.model.value_text import value_text
from specgen.quantities.quantity import Quantity

# So many are named in one finding, the others counted.
NAMED = 6

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
        figure = value_text(quantity_like(limit, size(panel)), None, project.system, project.both_units)
        of_figure.setdefault(figure, []).append(panel.mark)
    more = f" and {len(found) - NAMED} more" if len(found) > NAMED else ""
    return ", ".join(f"{figure} at {', '.join(marks)}" for figure, marks in of_figure.items()) + more


def quantity_like(limit: Quantity, amount: Fraction) -> Quantity:
    """A figure of a layout in the unit of what it is held against."""
    return Quantity(amount, limit.dimension, limit.unit)
