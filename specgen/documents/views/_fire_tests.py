"""Fire tests that the walls owe under the code, why, and the reports that show them."""

from collections.abc import Callable
from functools import partial
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.judging.fire_tests import PROPAGATION, RADIANT, may_not_burn, names_standard
from specgen.model.absence import Absent
from specgen.model.project import Project
from specgen.model.typed_views import root_of
from specgen.quantities.comparison import less, more


def rows(context: DocumentContext) -> list[tuple[Any, ...]]:
    """A row for the fire propagation test of each wall; one for all elevations of the same answer on radiant heat."""
    project = context.project
    walls = [
        (f"Fire propagation, {wall}", PROPAGATION, *_answer(context, PROPAGATION, wall, partial(_propagation, context)))
        for wall in project.members[("walls",)]
    ]
    told: dict[str, tuple[list[str], tuple[Any, Any]]] = {}
    for mark in project.members.get(("elevations",), ()):
        wall = str(project.get(("elevations", mark, "wall")) or "")
        answer = _answer(context, RADIANT, wall, partial(_radiant, context, mark))
        told.setdefault("".join(map(str, answer[1])), ([], answer))[0].append(mark)
    return walls + [(f"Radiant heat, {', '.join(marks)}", RADIANT, *answer) for marks, answer in told.values()]


def _answer(
    context: DocumentContext, test: str, wall: str, due: Callable[[], tuple[bool, list[Any]]]
) -> tuple[Any, Any]:
    """Due or not, and why; the reports of the wall where there are some."""
    if context.project.get(("code", "model")) == "other":
        return "not read here", "Ask the building official."
    try:
        answer, why = due()
    except Absent as absent:
        return context.waiting(absent)
    reports = _reports(context.project, test, wall)
    shown = f"; report {', '.join(reports)}" if reports else "; no report is listed" if answer else ""
    return "yes" if answer else "no", [*why, shown]


def _propagation(context: DocumentContext) -> tuple[bool, list[Any]]:
    """Whether fire must be shown not to climb the wall, and why."""
    root = root_of(context.project.root())
    if not may_not_burn(root):
        return False, ["construction of type ", context.display(("code", "construction_type"))]
    stories, top = context.limit("fire.stories"), context.limit("fire.top")
    if more(root.building.stories, stories.raw):
        return True, [context.display(("building", "stories")), " stories, and not of type V"]
    if more(root.building.eifs_top, top.raw):
        return True, ["EIFS above ", top, ", and not of type V"]
    return False, ["one story, and no EIFS above ", top]


def _radiant(context: DocumentContext, mark: str) -> tuple[bool, list[Any]]:
    """Whether the next building is so near that its fire could light the wall."""
    limit = context.limit("fire.separation")
    near = less(context.project.value(("elevations", mark, "fire_separation")), limit.raw)
    return near, ["fire separation", " under " if near else " not under ", limit]


def _reports(project: Project, test: str, wall: str) -> list[str]:
    """The papers by a standard that are of a wall."""
    return [
        mark
        for mark in project.members.get(("attachments",), ())
        if names_standard(str(project.get(("attachments", mark, "standard")) or ""), test)
        and str(project.get(("attachments", mark, "assembly")) or "") == wall
    ]
