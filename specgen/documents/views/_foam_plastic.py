"""What the code requires of foam plastic in exterior walls besides fire tests of the wall, and how each is met."""

import re
from collections.abc import Callable, Iterable, Iterator
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.contract_first import name_settler
from specgen.documents.display_values import DisplayValue
from specgen.documents.foam_reports import (
    BURNING,
    HEAT,
    RESISTANCE,
    SECTIONS,
    FoamReport,
    ThickLedge,
    find_barrier,
    is_restricted,
    list_foam_walls,
    list_heat,
    list_missing_coat_reports,
    list_resistance,
    list_thick_ledges,
    list_unknown,
)
from specgen.documents.members import span_marks
from specgen.documents.standing_walls import list_solid
from specgen.documents.views._cells import cite_section, join_cells
from specgen.documents.views.reports import find_reports
from specgen.model.field import Path
from specgen.model.value_text import words
from specgen.standards import find_source

_OWED = "report required from the EIFS manufacturer"
_INDEXES = {"flame_spread": "flame spread index", "smoke_developed": "smoke-developed index"}
Cells = tuple[Any, ...]


def rows(context: DocumentContext) -> list[Cells]:
    """One row for each requirement, with the walls it holds for."""
    walls = list_foam_walls(context)
    asked: list[tuple[str, Callable[[DocumentContext, str], Cells]]] = [
        ("Foam plastic, surface burning", _tell_burning),
        ("Foam plastic, thermal barrier", _tell_barrier),
    ]
    if is_restricted(context):
        asked += [
            ("Foam plastic, fire-resistance-rated wall", _tell_rating),
            ("Foam plastic, potential heat", _tell_heat),
            ("Foam plastic, label", _tell_label),
        ]
    return [(f"{subject}, {span_marks(walls)}", *_join(context, walls, tell)) for subject, tell in asked if walls]


def _join(context: DocumentContext, walls: list[str], tell: Callable[[DocumentContext, str], Cells]) -> Cells:
    """The cells of a requirement; walls that meet it in different ways each with its own."""
    told: dict[str, tuple[list[str], Cells]] = {}
    for wall in walls:
        cells = tell(context, wall)
        told.setdefault("".join(map(str, cells[-1])), ([], cells))[0].append(wall)
    (_, first), *more = told.values()
    if not more:
        return first
    return *first[:2], join_cells([f"{span_marks(marks)}: ", *cells[-1]] for marks, cells in told.values())


def _cite(context: DocumentContext, number: str, row: str) -> DisplayValue:
    source = "irc_fire_memory" if context.project.get(("code", "model")) == "irc" else row
    return cite_section(number, find_source(source), "foam plastic")


def _figure(context: DocumentContext, row: str) -> Any:
    """A figure of the building code with its section; under the residential one the section of the row is its own."""
    limit = context.limit(row)
    return limit.text if context.project.get(("code", "model")) == "irc" else limit


def _section(context: DocumentContext, place: int) -> str:
    return SECTIONS[str(context.project.get(("code", "model")))][place]


def _tell_burning(context: DocumentContext, wall: str) -> Cells:
    """The indexes that the code allows, those of the board, and the reports; of walls of types I to IV the stricter."""
    strict = is_restricted(context)
    section = "2603.5.4" if strict else _section(context, 0)
    row = "board" if strict else "foam"
    cell: list[Any] = ["flame spread index maximum ", _figure(context, f"{row}.flame_spread")]
    cell += [", smoke-developed index maximum ", _figure(context, f"{row}.smoke_developed")]
    cell += ["; board", *_tell_thickness(context, wall), ": "]
    cell += [*_tell_index(context, wall, f"{row}.flame_spread"), "; "]
    cell += _tell_index(context, wall, f"{row}.smoke_developed")
    reports = find_reports(context, BURNING)
    cell.append(f"; report {', '.join(reports)}" if reports else f"; {BURNING} {_OWED}")
    cell += [_tell_ledge(context, ledge, reports) for ledge in list_thick_ledges(context)]
    if strict:
        cell.append("; exterior coatings and facings tested separately, same limits")
        owed = [f"; {one.name} required from the {words(one.owed_by)}" for one in _list_coats(context)]
        cell.append("".join(owed))
    return _cite(context, section, "ibc_foam_indexes" if strict else "ibc_foam_burning"), "yes", cell


def _list_coats(context: DocumentContext) -> list[FoamReport]:
    """The reports on the coatings that nobody has listed."""
    return list_missing_coat_reports(context, list_foam_walls(context))


def _tell_index(context: DocumentContext, wall: str, row: str) -> Iterator[Any]:
    """`flame spread index 20, met`; what is not given is asked for."""
    name = row.rpartition(".")[2]
    path: Path = ("walls", wall, "insulation", name)
    yield from (f"{_INDEXES[name]} ", context.display(path))
    given = context.project.get(path)
    if given is not None:
        yield ", not met" if given > context.limit(row).raw else ", met"


def _tell_ledge(context: DocumentContext, ledge: ThickLedge, reports: Iterable[str]) -> str:
    """`; ledge LG1, W2, 9 in of board in all: report of this thickness required`; a title tells what was tested."""
    thickness = context.text(ledge.thickness, None)
    titles = {mark: str(context.project.get(("attachments", mark, "title")) or "") for mark in reports}
    at_this = re.compile(rf"(?<![\d/.-]){re.escape(thickness)}(?!\w)")
    tested = [mark for mark, title in titles.items() if at_this.search(title)]
    owed = f": tested at this thickness, {', '.join(tested)}" if tested else ": report of this thickness required"
    return f"; ledge {ledge.mark}, {ledge.wall}, {thickness} of board in all{owed}"


def _tell_thickness(context: DocumentContext, wall: str) -> list[Any]:
    """` at 3 in`, as the indexes hold for a thickness; nothing while it is not given."""
    path = ("walls", wall, "insulation", "thickness")
    return [" at ", context.display(path)] if context.project.is_given(path) else []


def _tell_barrier(context: DocumentContext, wall: str) -> Cells:
    """What parts the board from the interior; where nothing the project gives does, the architect is asked."""
    number = _cite(context, _section(context, 1), "ibc_foam_barrier")
    parts, least = find_barrier(context, wall), _figure(context, "foam.thermal_barrier")
    if parts:
        shown = [part for path in parts for part in (context.display(path), " ")]
        wallboard = [", minimum ", least] if "layers" in parts[0] else []
        confirmed = (
            f": {name_settler(context)} to confirm that it covers the board"
            if wall in context.remember(list_solid)
            else ""
        )
        return number, "yes", [*shown, "between board and interior", *wallboard, confirmed]
    wallboard = [least, " gypsum wallboard or equal at the interior"]
    if wall in context.remember(list_unknown):
        base = context.display(("walls", wall, "substrate", "base"))
        return number, "pending", [base, " of concrete or masonry, or ", *wallboard, "; from the architect"]
    return number, "yes", [*wallboard, f": {name_settler(context)} to confirm in writing"]


def _tell_rating(context: DocumentContext, wall: str) -> Cells:
    """Whether the rating of a rated wall is proved with its foam plastic; a face near a lot line is rated as well."""
    reports = list_resistance(context, wall)
    number = _cite(context, "2603.5.1", "ibc_foam_rated")
    if reports:
        return number, "yes", [f"report {', '.join(reports)}"]
    tests, kind = " or ".join(RESISTANCE), context.project.get(("code", "construction_type"))
    rating = f"bearing_wall.{kind}"
    bearing: list[Any] = []
    asked = "the rating, if any,"
    if rating in context.standards.limits:  # the other types ask for none
        bearing = [f"type {kind}: exterior bearing walls minimum ", context.limit(rating), " (Table 601); "]
        asked = "whether the wall is bearing, and its rating"
    asked += " at the fire separation distance of each face"
    return number, "pending", [*bearing, f"{name_settler(context)} to confirm {asked}; where rated, {tests} {_OWED}"]


def _tell_heat(context: DocumentContext, wall: str) -> Cells:
    """The potential heat of the board, not above that of the wall that was tested."""
    reports = list_heat(context, wall)
    shown = f"report {', '.join(reports)}" if reports else f"{HEAT} {_OWED}"
    return (
        _cite(context, "2603.5.3", "ibc_foam_heat"),
        "yes",
        f"not above that of the wall tested per NFPA 285; {shown}",
    )


def _tell_label(context: DocumentContext, wall: str) -> Cells:
    """The label of an approved agency that the board bears."""
    return (
        _cite(context, "2603.5.6", "ibc_foam_label_memory"),
        "yes",
        "label of an approved agency on the board or package",
    )
