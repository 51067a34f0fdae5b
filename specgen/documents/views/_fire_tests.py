"""Fire tests that the code requires of the walls, why, and the reports that cover them."""

from collections.abc import Iterable
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.judging.fire_tests import PROPAGATION, RADIANT, names_standard
from specgen.model.absence import Absent
from specgen.model.project import Project

_TESTS = (
    ("Fire propagation", PROPAGATION, "fire-propagation-due"),
    ("Radiant heat", RADIANT, "radiant-heat-due"),
)


def rows(context: DocumentContext) -> list[tuple[Any, ...]]:
    """One row for each test and wall; a single row under a local code, which is not evaluated."""
    if context.project.get(("code", "model")) == "other":
        ask = "Confirm the fire class of the walls with the building official."
        return [("Fire class of the walls", "Local code", "not evaluated", ask)]
    return join_walls(
        (title, wall, (standard, *_answer(context, name, standard, wall)))
        for title, standard, name in _TESTS
        for wall in context.project.members[("walls",)]
    )


def join_walls(answers: Iterable[tuple[str, str, tuple[Any, ...]]]) -> list[tuple[Any, ...]]:
    """One row for each subject and answer, with the walls it holds for: `Radiant heat, W1, W2`."""
    joined: dict[tuple[str, str], tuple[list[str], tuple[Any, ...]]] = {}
    for subject, wall, cells in answers:
        joined.setdefault((subject, repr(cells)), ([], cells))[0].append(wall)
    return [(f"{subject}, {', '.join(walls)}", *cells) for (subject, _), (walls, cells) in joined.items()]


def _answer(context: DocumentContext, name: str, standard: str, wall: str) -> tuple[Any, Any]:
    """Whether the test is due and why, with the reports listed for the wall."""
    try:
        found = context.resolve(("walls", wall), name)
    except Absent as absent:
        return context.describe_absence(absent)
    why = DisplayValue(found.why, found.why, found.source[0])
    reports = _reports(context.project, standard, wall)
    shown = f"; report {', '.join(reports)}" if reports else "; no report listed" if found.result else ""
    distance = _separation(context, wall) if found.result and standard == RADIANT else []
    return "yes" if found.result else "no", [why, *distance, shown]


def _separation(context: DocumentContext, wall: str) -> list[Any]:
    """The fire separation distances of a wall, which the official reads the report against."""
    project = context.project
    given = {
        mark: project.get(("elevations", mark, "fire_separation")).number("ft")
        for mark in project.members.get(("elevations",), ())
        if str(project.get(("elevations", mark, "wall")) or "") == wall
        and project.get(("elevations", mark, "fire_separation")) is not None
    }
    if not given:
        return []
    ends = dict.fromkeys((min(given.values()), max(given.values())))
    at = [next(mark for mark, feet in given.items() if feet == end) for end in ends]
    shown = [context.display(("elevations", mark, "fire_separation")) for mark in at]
    return ["; fire separation distance ", shown[0], *(part for value in shown[1:] for part in (" to ", value))]


def _reports(project: Project, test: str, wall: str) -> list[str]:
    """Marks of the documents to a test standard that cover the assembly of a wall."""
    return [
        mark
        for mark in project.members.get(("attachments",), ())
        if names_standard(str(project.get(("attachments", mark, "standard")) or ""), test)
        and str(project.get(("attachments", mark, "assembly")) or "") == wall
    ]
