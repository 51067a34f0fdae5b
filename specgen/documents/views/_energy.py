"""What the energy code asks of the boards, where the project gives the figure, and whether they give it."""

from collections.abc import Iterator
from typing import Any, cast

from specgen.computing.board.board_thickness import rasped_r_value, required_r_value, tell_basis
from specgen.documents.context import DocumentContext
from specgen.documents.contract_first import name_settler
from specgen.documents.deciding import is_undecided
from specgen.documents.members import span_marks
from specgen.documents.page_figures import measure
from specgen.documents.views._cells import join_cells
from specgen.documents.views._fire_tests import answer_open
from specgen.model.absence import Absent
from specgen.quantities.comparison import less

# What the architect states of the energy code.
_REQUIRED = "R-value of continuous insulation required, or none"


def rows(context: DocumentContext) -> list[tuple[Any, ...]]:
    """One row of the walls with a figure, each with that of its rasped board; a draft without any tells who gives it.

    A package without a figure has no row.
    """
    walls = [cast(Any, context.project.view(("walls", mark))) for mark in context.project.members[("walls",)]]
    asked = [wall for wall in walls if required_r_value(wall) is not None]
    if not asked:
        return [_ask(context)] if asks_requirement(context) else []
    marks = span_marks(wall.mark for wall in asked)
    told = [[tell_basis(asked[0])], *(list(_tell(context, wall)) for wall in asked)]
    return [(f"Continuous insulation, {marks}", "energy code", "yes", join_cells(told))]


def asks_requirement(context: DocumentContext) -> bool:
    """Whether nobody has told yet what the energy code requires of walls that are still to be decided on."""
    project = context.project
    paths = [
        ("code", "required_r_value"),
        *(("walls", wall, "required_r_value") for wall in project.members[("walls",)]),
    ]
    return context.is_marked and is_undecided(context) and not any(map(project.is_given, paths))


def _ask(context: DocumentContext) -> tuple[Any, ...]:
    """What the board has, where it is not known yet what it must have."""
    walls = context.project.members[("walls",)]
    boards = [[f"{mark} ", context.display(("walls", mark, "insulation", "r_value"))] for mark in walls]
    met = [f"{_REQUIRED}: {name_settler(context)} to state; board: ", *join_cells(boards)]
    return f"Continuous insulation, {span_marks(walls)}", "energy code", "pending", met


def _tell(context: DocumentContext, wall: Any) -> Iterator[Any]:
    """`W1: minimum R-7.5, metal framed; board R-7.9 after rasping, met`."""
    required: Any = required_r_value(wall)
    kind = wall.get("required_r_value_basis")
    asked = f"{wall.mark}: minimum {context.text(required, None)}{f', {kind}' if kind else ''}, board"
    try:
        given = rasped_r_value(wall)
    except Absent as absent:
        yield from (f"{asked} R-value pending: ", *answer_open(context, absent)[1])
        return
    unit = "R" if context.first == "ip" else "RSI"
    status = "not met" if less(given, required) else "met"
    yield f"{asked} {measure(given.number(unit), unit, context.first, 3)} after rasping, {status}"
