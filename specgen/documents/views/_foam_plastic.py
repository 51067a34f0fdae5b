"""What the code requires of foam plastic in exterior walls besides fire tests of the wall, and how each is met."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.computing.foam_plastic import FOAM, RESTRICTED
from specgen.computing.substrates import MASONRY
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.fire_reports import list_reports
from specgen.documents.views._cells import cite_section, join_cells
from specgen.documents.views.reports import find_reports
from specgen.standards import find_source

_BURNING, _HEAT, _RESISTANCE = "ASTM E84", "NFPA 259", ("ASTM E119", "UL 263")
# By the model code: where the indexes of foam plastic stand, and its thermal barrier.
_SECTIONS = {"ibc": ("2603.3", "2603.4"), "irc": ("R316.3", "R316.4")}
_OWED = "report required from the EIFS manufacturer"
Cells = tuple[Any, ...]


def rows(context: DocumentContext) -> list[Cells]:
    """One row for each requirement, with the walls it holds for."""
    if context.project.get(("code", "model")) not in _SECTIONS:
        return []
    walls = [wall for wall in context.project.members[("walls",)] if _kind_of(context, wall) in FOAM]
    asked: list[tuple[str, Callable[[DocumentContext, str], Cells]]] = [
        ("Foam plastic, surface burning", _tell_burning),
        ("Foam plastic, thermal barrier", _tell_barrier),
    ]
    if _is_restricted(context):
        asked += [
            ("Foam plastic, fire-resistance-rated wall", _tell_rating),
            ("Foam plastic, potential heat", _tell_heat),
        ]
    return [(f"{subject}, {', '.join(walls)}", *_join(context, walls, tell)) for subject, tell in asked if walls]


def _join(context: DocumentContext, walls: list[str], tell: Callable[[DocumentContext, str], Cells]) -> Cells:
    """The cells of a requirement; walls that meet it in different ways each with its own."""
    told: dict[str, tuple[list[str], Cells]] = {}
    for wall in walls:
        cells = tell(context, wall)
        told.setdefault(repr(cells), ([], cells))[0].append(wall)
    (_, first), *more = told.values()
    if not more:
        return first
    return *first[:2], join_cells([f"{', '.join(marks)}: ", *cells[-1]] for marks, cells in told.values())


def _kind_of(context: DocumentContext, wall: str) -> Any:
    return context.project.get(("walls", wall, "insulation", "kind"))


def _is_restricted(context: DocumentContext) -> bool:
    """Whether the walls are of a type of construction that section 2603.5 is about."""
    project = context.project
    return project.get(("code", "model")) == "ibc" and project.get(("code", "construction_type")) in RESTRICTED


def _cite(context: DocumentContext, number: str, row: str) -> DisplayValue:
    source = "irc_fire_memory" if context.project.get(("code", "model")) == "irc" else row
    return cite_section(number, find_source(source), "foam plastic")


def _section(context: DocumentContext, place: int) -> str:
    return _SECTIONS[str(context.project.get(("code", "model")))][place]


def _tell_burning(context: DocumentContext, wall: str) -> Cells:
    """The indexes that the code allows, those of the board, and the reports; of walls of types I to IV the stricter."""
    strict = _is_restricted(context)
    section = "2603.5.4" if strict else _section(context, 0)
    row = "board" if strict else "foam"
    cell: list[Any] = ["flame spread index maximum ", context.limit(f"{row}.flame_spread").text]
    cell += [
        ", smoke-developed index maximum ",
        context.limit(f"{row}.smoke_developed").text,
        "; board ",
        *_indexes(context, wall),
    ]
    reports = find_reports(context, _BURNING)
    cell.append(f"; report {', '.join(reports)}" if reports else f"; {_BURNING} {_OWED}")
    if strict:
        cell.append("; exterior coatings and facings tested separately")
    return _cite(context, section, "ibc_foam_indexes" if strict else "ibc_foam_burning"), "yes", cell


def _indexes(context: DocumentContext, wall: str) -> Iterator[Any]:
    """`20 and 300`; what is not given is asked for."""
    for part, name in (("", "flame_spread"), (" and ", "smoke_developed")):
        path = ("walls", wall, "insulation", name)
        if part:
            yield part
        yield context.display(path)


def _tell_barrier(context: DocumentContext, wall: str) -> Cells:
    """What parts the board from the interior; where nothing the project gives does, the architect is asked."""
    number = _cite(context, _section(context, 1), "ibc_foam_barrier")
    at = ("walls", wall, "substrate")
    kind, base = (context.project.get((*at, name)) for name in ("kind", "base"))
    if kind in MASONRY and kind != "icf":
        return number, "yes", [context.display((*at, "kind")), " between board and interior"]
    if kind == "existing_coated" and base in ("concrete", "masonry"):
        return number, "yes", [context.display((*at, "base")), " between board and interior"]
    least = context.limit("foam.thermal_barrier").text
    inside = _find_wallboard(context, wall)
    if inside:
        return number, "yes", [inside, f" at the interior, minimum {least}"]
    return number, "yes", [least, " gypsum wallboard or equal at the interior: architect to confirm in writing"]


def _find_wallboard(context: DocumentContext, wall: str) -> str:
    """The interior gypsum board among the layers of a wall; sheathing outside the studs is no wallboard."""
    path = ("walls", wall, "layers")
    names = (str(context.project.get((*path, at, "name")) or "") for at in context.project.members.get(path, ()))
    return next((name for name in names if "gypsum" in name and "board" in name), "")


def _tell_rating(context: DocumentContext, wall: str) -> Cells:
    """Whether the rating of a rated wall is proved with its foam plastic."""
    reports = [mark for standard in _RESISTANCE for mark in list_reports(context.project, standard, wall)]
    number = _cite(context, "2603.5.1", "ibc_foam_rated")
    if reports:
        return number, "yes", [f"report {', '.join(reports)}"]
    tests = " or ".join(_RESISTANCE)
    return number, "pending", [f"architect to confirm the rating, if any; where rated, {tests} {_OWED}"]


def _tell_heat(context: DocumentContext, wall: str) -> Cells:
    """The potential heat of the board, not above that of the wall that was tested."""
    reports = list_reports(context.project, _HEAT, wall) or find_reports(context, _HEAT)
    shown = f"report {', '.join(reports)}" if reports else f"{_HEAT} {_OWED}"
    return (
        _cite(context, "2603.5.3", "ibc_foam_heat"),
        "yes",
        f"not above that of the wall tested per NFPA 285; {shown}",
    )
