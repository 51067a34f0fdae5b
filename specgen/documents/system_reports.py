"""The test reports behind the figures that are asked for of a wall: of its wind load, its drainage, and its barrier."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.model.field import Path

_TESTED_LOAD, _MAKER = ("attachment", "ultimate_strength"), "eifs_source"
WIND_LOAD = "Wind load calculation of the adhered wall, signed"
# The field that a report proves, the clause that reads it, the report, and whose it is. A figure that is given names
# its own test.
_PROVED: tuple[tuple[Path, str, str, str], ...] = (
    (_TESTED_LOAD, "ATT-09", "ASTM E330 report, wind load of the adhered wall", _MAKER),
    (_TESTED_LOAD, "ATT-09", WIND_LOAD, "engineer"),
    (("drainage", "efficiency"), "ATT-08c", "ASTM E2273 report, drainage of this wall", _MAKER),
    (("wrb", "standard"), "ATT-07", "Test report of the water-resistive barrier, to its standard", _MAKER),
)
# What a wall may do without.
_OPTIONAL, _LEFT_OUT = ("drainage", "wrb"), (None, "none")


def list_unproved(context: DocumentContext) -> Iterator[tuple[str, str, str, tuple[str, ...]]]:
    """Each report with the role that owes it, its clause, and the walls whose figure is still to come."""
    for field, code, name, owed_by in _PROVED:
        walls = tuple(mark for mark in context.project.members[("walls",)] if _is_open(context, mark, field))
        if walls:
            yield owed_by, name, code, walls


def _is_open(context: DocumentContext, mark: str, field: Path) -> bool:
    """Whether a figure applies to a wall and is not given; a wall says itself whether it drains or has a barrier."""
    project, path = context.project, ("walls", mark, *field)
    there = field[0] not in _OPTIONAL or project.get(("walls", mark, field[0], "kind")) not in _LEFT_OUT
    return there and project.get(path) is None and project.applies(path)
