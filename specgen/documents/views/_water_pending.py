"""The places of each elevation where water is led off and of which nobody has told how: base, openings, floors, top."""

from collections import defaultdict
from collections.abc import Iterator
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.contract_first import name_giver
from specgen.documents.marks import name_member
from specgen.documents.views._asked import tell_stage
from specgen.documents.views._cells import join_cells
from specgen.documents.views._stages import PULLS, SUBMITTAL
from specgen.model.field import Path

# The mark of an elevation, and the row: its name, the marks of the places, what is said of them, and the answers.
Entry = tuple[str, tuple[Any, list[str], list[Any], Any]]
_BASE, _OPENINGS = "base of the wall", "openings"
# Stages that take no article.
_BARE = (PULLS[1], SUBMITTAL[1])
_FLOORS = "floor lines with no joint"
_TOP, _TOPS = "top of the wall", ("parapet", "eave")


def list_untold(context: DocumentContext) -> Iterator[Entry]:
    """The entries of all places that are pending, of a barrier wall too; of all walls while no elevation is given."""
    elevations: Path = ("elevations",)
    marks = context.project.members.get(elevations, ())
    if not marks:
        said = [f"{_BASE}; {_OPENINGS}; floor lines; {_TOP}"]
        yield "", (context.ask(elevations), [""], said, tell_pending(context, [elevations]))
    topped = set(_list_topped(context))
    for mark in marks:
        named = name_member(context, "elevations", mark)
        for place, paths in _list_places(context, mark, mark in topped):
            yield mark, (named, [mark], [place], tell_pending(context, paths))


def tell_pending(context: DocumentContext, paths: list[Path]) -> list[Any]:
    """`pending: [Openings], from the architect, before the mockup`; what one party owes at one stage together."""
    owed: dict[tuple[str, str], list[Any]] = defaultdict(list)
    for path in paths:
        asked = owed[tell_stage(context, path)]
        asked += [*([", "] if asked else []), context.ask(path)]
    told = [
        [*asked, f", from the {name_giver(context, party, '')}, before {'' if before in _BARE else 'the '}{before}"]
        for (party, before), asked in owed.items()
    ]
    return ["pending: ", *join_cells(told)]


def _list_places(context: DocumentContext, mark: str, topped: bool) -> Iterator[tuple[str, list[Path]]]:
    """Each place of an elevation that is not told of, with what is asked for it."""
    project, at = context.project, ("elevations", mark)
    if project.get((*at, "grade_clearance")) is None:
        yield _BASE, [(*at, "grade_clearance"), *_list_outlets(context, mark)]
    if (*at, "openings") not in project.members:
        yield _OPENINGS, [(*at, "openings")]
    if (*at, "floor_lines") not in project.members and project.get(("building", "stories")) != 1:
        yield _FLOORS, [(*at, "floor_lines")]
    if not topped:
        yield _TOP, [("details",)]


def _list_outlets(context: DocumentContext, mark: str) -> list[Path]:
    """The outlets of a drained wall whose water is not told to leave anywhere."""
    wall = context.project.get(("elevations", mark, "wall"))
    outlets = ("walls", wall.mark, "drainage", "outlets") if wall else ()
    return [outlets] if outlets and context.project.get(outlets) is None and context.project.applies(outlets) else []


def _list_topped(context: DocumentContext) -> Iterator[str]:
    """The marks of the elevations whose top is told of."""
    for mark in context.project.members.get(("details",), ()):
        kind, elevation = (context.project.get(("details", mark, name)) for name in ("kind", "elevation"))
        if kind in _TOPS and elevation:
            yield elevation.mark
