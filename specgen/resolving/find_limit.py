"""A limit in force by the name of its row."""

from fractions import Fraction

from specgen.model.project import Project
from specgen.model.source import InForce
from specgen.quantities.format import format_decimal, format_quantity
from specgen.quantities.quantity import Quantity


def find_limit(name: str, project: Project | None = None, system: str = "ip") -> InForce:
    """The figure in force of a row of the limits, or that of the row in a unit system without a project.

    Raises RowError.
    """
    # Loaded here, so that a sum that rests on no limit reads no rows.
    from specgen.resolving.limits_in_force import limit_in_force
    from specgen.standards import find_row, load_limits, load_standards

    limits = load_limits() if project is None else load_standards().limits
    return limit_in_force(project, find_row("limits", name, limits), system)


def format_limit(value: Quantity | Fraction | int) -> str:
    """The figure of a limit within a sentence; one without a unit is percent."""
    return format_quantity(value, value.unit) if isinstance(value, Quantity) else f"{format_decimal(value, 6)} %"
