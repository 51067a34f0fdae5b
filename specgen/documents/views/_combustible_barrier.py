"""Where a water-resistive barrier that burns makes the wall of a high building one that is tested for propagation."""

from typing import Any

from specgen.documents.code_edition import name_propagation_section
from specgen.documents.context import DocumentContext
from specgen.documents.contract_first import name_settler
from specgen.documents.fire_reports import list_reports
from specgen.documents.foam_reports import is_restricted
from specgen.documents.members import span_marks
from specgen.documents.views._cells import cite_section
from specgen.judging.fire_tests import PROPAGATION
from specgen.quantities.comparison import more
from specgen.standards import find_source

_TOP = ("building", "eifs_top")
_ROW = "wrb.building_height"


def rows(context: DocumentContext) -> list[tuple[Any, ...]]:
    """One row for the walls with a barrier, where the building is higher than the code leaves it, or may be.

    None for types of construction that the section is not about, and for a building whose EIFS ends lower.
    """
    project, most = context.project, context.limit(_ROW)
    highest = context.standards.limits[_ROW].value
    covered = [
        mark
        for mark in project.members[("walls",)]
        if project.get(("walls", mark, "wrb", "kind")) not in (None, "none") and is_restricted(context)
    ]
    top = project.get(_TOP)
    if not covered or (top is not None and not more(top, highest)):
        return []
    section = name_propagation_section(context)
    number = cite_section(section, find_source("ibc_combustible_walls_memory"), "combustible water-resistive barrier")
    reports = dict.fromkeys(mark for wall in covered for mark in list_reports(project, PROPAGATION, wall))
    shown = f"report {', '.join(reports)}" if reports else "the NFPA 285 report of this wall, which names the WRB"
    said: list[Any] = [
        "building higher than ",
        most,
        f" above grade plane: NFPA 285 with this WRB; {'' if reports else 'to be '}met by ",
        shown,
    ]
    known = "height above grade plane to be confirmed, D19; " if context.is_marked else ""
    unknown = [f"building height: {name_settler(context)} to confirm; "]
    why = unknown if top is None else ["EIFS top ", context.display(_TOP), f"; {known}"]
    subject = f"Combustible water-resistive barrier, {span_marks(covered)}"
    return [(subject, number, "pending" if top is None or context.is_marked else "yes", [*why, *said])]
