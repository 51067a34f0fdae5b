"""Fire tests that the walls owe under the code, why, and the reports that show them."""

from collections.abc import Callable
from functools import partial
from typing import Any

from specgen.documents.context import Desk
from specgen.judging.fire_tests import PROPAGATION, RADIANT, may_not_burn, names_standard
from specgen.model.absence import Absent
from specgen.model.project import Project
from specgen.model.typed_views import root_of
from specgen.quantities.comparison import less, more


def rows(desk: Desk) -> list[tuple[Any, ...]]:
    """A row for the fire propagation test of each wall; one for all elevations of the same answer on radiant heat."""
    project = desk.sight.project
    walls = [
        (f"Fire propagation, {wall}", PROPAGATION, *_answer(desk, PROPAGATION, wall, partial(_propagation, desk)))
        for wall in project.members[("walls",)]
    ]
    told: dict[str, tuple[list[str], tuple[Any, Any]]] = {}
    for mark in project.members.get(("elevations",), ()):
        wall = str(project.get(("elevations", mark, "wall")) or "")
        answer = _answer(desk, RADIANT, wall, partial(_radiant, desk, mark))
        told.setdefault("".join(map(str, answer[1])), ([], answer))[0].append(mark)
    return walls + [(f"Radiant heat, {', '.join(marks)}", RADIANT, *answer) for marks, answer in told.values()]


def _answer(desk: Desk, test: str, wall: str, due: Callable[[], tuple[bool, list[Any]]]) -> tuple[Any, Any]:
    """Due or not, and why; the reports of the wall where there are some."""
    if desk.sight.project.get(("code", "model")) == "other":
        return "not read here", "Ask the building official."
    try:
        answer, why = due()
    except Absent as absent:
        return desk.sight.waiting(absent)
    reports = _reports(desk.sight.project, test, wall)
    shown = f"; report {', '.join(reports)}" if reports else "; no report is listed" if answer else ""
    return "yes" if answer else "no", [*why, shown]


def _propagation(desk: Desk) -> tuple[bool, list[Any]]:
    """Whether fire must be shown not to climb the wall, and why."""
    root, sight = root_of(desk.sight.project.root()), desk.sight
    if not may_not_burn(root):
        return False, ["construction of type ", sight.shown(("code", "construction_type"))]
    stories, top = sight.limit("fire.stories"), sight.limit("fire.top")
    if more(root.building.stories, stories.raw):
        return True, [sight.shown(("building", "stories")), " stories, and not of type V"]
    if more(root.building.eifs_top, top.raw):
        return True, ["EIFS above ", top, ", and not of type V"]
    return False, ["one story, and no EIFS above ", top]


def _radiant(desk: Desk, mark: str) -> tuple[bool, list[Any]]:
    """Whether the next building is so near that its fire could light the wall."""
    limit = desk.sight.limit("fire.separation")
    near = less(desk.sight.project.value(("elevations", mark, "fire_separation")), limit.raw)
    return near, ["fire separation", " under " if near else " not under ", limit]


def _reports(project: Project, test: str, wall: str) -> list[str]:
    """The papers by a standard that are of a wall."""
    return [
        mark
        for mark in project.members.get(("attachments",), ())
        if names_standard(str(project.get(("attachments", mark, "standard")) or ""), test)
        and str(project.get(("attachments", mark, "assembly")) or "") == wall
    ]
