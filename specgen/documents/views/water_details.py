"""How water is led off at openings, roofs, ledges, and what else breaks the face, and where that is pending."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks, name_linked, name_member
from specgen.documents.members import span_marks
from specgen.documents.views._cells import join_cells
from specgen.documents.views._represented import GROUND
from specgen.documents.views._water_pending import Entry, list_untold, tell_pending
from specgen.model.field import Path
from specgen.model.value_text import words

# What a detail of each kind is asked for, with the word that stands before its answer.
_ASKED = {
    "roof_end": {"diverter": "kick-out flashing"},
    "parapet": {"cap": "metal cap"},
    "eave": {"sealed": "sealed joint at the soffit"},
    "ledge": {"slope": "slope", "depth": "depth", "cap": "metal cap"},
    "penetration": {"sealed": "sealed joint"},
    "deck_ledger": {"flashing": "flashing"},
    "roof_below": {"clearance": "board end above the roofing", "thickness": "board end under the roofing"},
}
_OPENING, _OPENINGS = "opening", "openings"
_OF_OPENINGS = {"sill_pan": "sill pan", "head_flashing": "head flashing", "landing": "landing"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each answer, by elevation: the places and elevations that share it, each place by its elevation."""
    order = {mark: number for number, mark in enumerate(list_marks(context, "elevations"))}
    found = (*_bases(context), *_openings(context), *_floor_lines(context), *_details(context), *list_untold(context))
    found = tuple(sorted(found, key=lambda entry: order.get(entry[0], len(order))))
    shared: dict[str, tuple[dict[str, Any], list[Entry], Any]] = {}
    for entry in found:
        alike = str([(str(part), getattr(part, "source", None)) for part in entry[1][-1]])
        elevations, entries, _ = shared.setdefault(alike, ({}, [], entry[1][-1]))
        elevations.setdefault(entry[0], entry[1][0])
        entries.append(entry)
    lines = tuple(
        (_name_elevations(elevations), _join_places(entries, len(elevations) > 1), answers)
        for elevations, entries, answers in shared.values()
    )
    return TableView(("Elevation", "Place", "Detail"), lines, (15, 34, 51))


def _name_elevations(elevations: dict[str, Any]) -> Any:
    """One elevation by mark and name; of several the marks, as each place names its own."""
    return ", ".join(elevations) if len(elevations) > 1 else next(iter(elevations.values()))


def _join_places(entries: list[Entry], several: bool) -> list[Any]:
    """`PA1 (E1), PA2 (E2): parapet, full length`: places of which the same is said together.

    An elevation that is its own place has its mark in the column before.
    """
    alike: dict[str, tuple[list[str], list[Any]]] = {}
    single = sum(len(marks) for _, (_, marks, _, _) in entries) == 1
    for elevation, (_, marks, said, _) in entries:
        told = [_OPENING] if single and said == [_OPENINGS] and elevation not in marks else said
        named = alike.setdefault(str(told), ([], told))[0]
        if elevation not in marks:
            named.append(f"{span_marks(marks)} ({elevation})" if several and elevation else span_marks(marks))
    return join_cells([f"{', '.join(named)}: " if named else "", *said] for named, said in alike.values())


def _bases(context: DocumentContext) -> Iterator[Entry]:
    """The lower edge of the board: its height over the ground, what ends it, and whether water leaves there."""
    project = context.project
    listed = project.members.get(("accessories",), ())
    starter = any(project.get(("accessories", one, "kind")) == "starter" for one in listed)
    for mark in project.members.get(("elevations",), ()):
        clearance = ("elevations", mark, "grade_clearance")
        if project.get(clearance) is None:
            continue
        wall = project.get(("elevations", mark, "wall"))
        drained = wall and "base" in map(str, project.get(("walls", wall.mark, "drainage", "outlets")) or ())
        ground = f" above {GROUND[project.get(('elevations', mark, 'grade_is_soil'))]}"
        answers = [context.display(clearance), ground, ", starter" if starter else "", ", drained" if drained else ""]
        yield mark, (name_member(context, "elevations", mark), [mark], ["base of the wall"], answers)


def _openings(context: DocumentContext) -> Iterator[Entry]:
    project = context.project
    for elevation in project.members.get(("elevations",), ()):
        path = ("elevations", elevation, "openings")
        alike: dict[str, tuple[list[str], list[Any]]] = {}
        for mark in project.members.get(path, ()):
            answers = _answers(context, (*path, mark), _OF_OPENINGS)
            if answers:
                alike.setdefault("".join(map(str, answers)), ([], answers))[0].append(mark)
        for marks, answers in alike.values():
            yield elevation, (name_member(context, "elevations", elevation), marks, [_OPENINGS], answers)


def _floor_lines(context: DocumentContext) -> Iterator[Entry]:
    """The floor line joints, at which water behind the board of a drained wall is led out."""
    project = context.project
    for mark in project.members.get(("joints",), ()):
        elevation = project.get(("joints", mark, "elevation"))
        wall = elevation and project.get(("elevations", elevation.mark, "wall"))
        drainage = wall and project.get(("walls", wall.mark, "drainage", "kind"))
        if project.get(("joints", mark, "kind")) == "floor_line" and drainage is not None:
            said = ["floor line, ", context.display(("joints", mark, "at")), " above the base of the elevation"]
            named = name_member(context, "elevations", elevation.mark)
            yield elevation.mark, (named, [mark], said, _tell_floor_line(context, wall.mark, drainage))


def _tell_floor_line(context: DocumentContext, wall: str, drainage: str) -> list[Any]:
    """The flashing of a floor line; a proposal where the project does not say that water leaves there."""
    if drainage == "none":
        return ["sealed joint; no drainage behind the board"]
    path = ("walls", wall, "drainage", "outlets")
    outlets = context.project.get(path)
    if "joints" in map(str, outlets or ()):
        return ["flashing with weeps"]
    if outlets is None:
        return [*tell_pending(context, [path]), "; proposed: flashing with weeps"]
    return ["flashing with weeps, proposed by the applicator"]


def _details(context: DocumentContext) -> Iterator[Entry]:
    project = context.project
    for mark in project.members.get(("details",), ()):
        path = ("details", mark)
        kind = project.get((*path, "kind"))
        named = words(kind) if kind else context.display((*path, "kind"))
        said = [named, ", ", context.display((*path, "at"))]
        elevation = name_linked(context, (*path, "elevation"), "elevations")
        answers = _answers(context, path, _ASKED.get(str(kind), {}))
        yield str(project.get((*path, "elevation")) or ""), (elevation, [mark], said, answers)


def _answers(context: DocumentContext, path: Path, asked: dict[str, str]) -> list[Any]:
    """`sill pan: yes, head flashing: no`: what is given, and what is owed and still open."""
    parts: list[Any] = []
    for name, word in asked.items():
        place = (*path, name)
        field = context.project.schema.field_at(place)
        owed = field is not None and field.ring != "optional" and context.project.applies(place)
        if owed or context.project.is_given(place):
            parts += [", " if parts else "", f"{word}: ", context.display(place)]
    return parts
