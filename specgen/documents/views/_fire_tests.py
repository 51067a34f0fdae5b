"""Fire tests that the code requires of the walls, why, and the reports that cover them."""

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
    """One row per wall for fire propagation, then one row per answer on radiant heat with its elevations."""
    project = context.project
    walls = [
        (f"Fire propagation, {wall}", PROPAGATION, *_answer(context, PROPAGATION, wall, partial(_propagation, context)))
        for wall in project.members[("walls",)]
    ]
    by_answer: dict[str, tuple[list[str], tuple[Any, Any]]] = {}
    for mark in project.members.get(("elevations",), ()):
        wall = str(project.get(("elevations", mark, "wall")) or "")
        answer = _answer(context, RADIANT, wall, partial(_radiant, context, mark))
        by_answer.setdefault("".join(map(str, answer[1])), ([], answer))[0].append(mark)
    return walls + [(f"Radiant heat, {', '.join(marks)}", RADIANT, *answer) for marks, answer in by_answer.values()]


def _answer(
    context: DocumentContext, test: str, wall: str, due: Callable[[], tuple[bool, list[Any]]]
) -> tuple[Any, Any]:
    """Whether the test is due and why, with the reports listed for the wall."""
    if context.project.get(("code", "model")) == "other":
        return "not read here", "Ask the building official."
    try:
        answer, why = due()
    except Absent as absent:
        return context.describe_absence(absent)
    reports = _reports(context.project, test, wall)
    shown = f"; report {', '.join(reports)}" if reports else "; no report is listed" if answer else ""
    return "yes" if answer else "no", [*why, shown]


def _propagation(context: DocumentContext) -> tuple[bool, list[Any]]:
    """Whether a fire propagation test is due, and why."""
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
    """Whether the fire separation is small enough that a radiant heat test is due, and why."""
    limit = context.limit("fire.separation")
    near = less(context.project.value(("elevations", mark, "fire_separation")), limit.raw)
    return near, ["fire separation", " under " if near else " not under ", limit]


def _reports(project: Project, test: str, wall: str) -> list[str]:
    """Marks of the documents to a test standard that cover the assembly of a wall."""
    return [
        mark
        for mark in project.members.get(("attachments",), ())
        if names_standard(str(project.get(("attachments", mark, "standard")) or ""), test)
        and str(project.get(("attachments", mark, "assembly")) or "") == wall
    ]
