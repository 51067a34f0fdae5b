"""Fire tests that the code requires of the walls, why, and the reports that cover them."""

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
        ask = "Confirm the required fire class with the building official."
        return [("Fire class of the walls", "Local code", "not evaluated", ask)]
    return [
        (f"{title}, {wall}", standard, *_answer(context, name, standard, wall))
        for title, standard, name in _TESTS
        for wall in context.project.members[("walls",)]
    ]


def _answer(context: DocumentContext, name: str, standard: str, wall: str) -> tuple[Any, Any]:
    """Whether the test is due and why, with the reports listed for the wall."""
    try:
        found = context.resolve(("walls", wall), name)
    except Absent as absent:
        return context.describe_absence(absent)
    why = DisplayValue(found.why, found.why, found.source[0])
    reports = _reports(context.project, standard, wall)
    shown = f"; report {', '.join(reports)}" if reports else "; no report is listed" if found.result else ""
    nearest = _nearest(context, wall) if found.result and standard == RADIANT else []
    return "yes" if found.result else "no", [why, *nearest, shown]


def _nearest(context: DocumentContext, wall: str) -> list[Any]:
    """The least fire separation of a wall, which the official reads the report against."""
    project = context.project
    given = {
        mark: project.get(("elevations", mark, "fire_separation")).number("ft")
        for mark in project.members.get(("elevations",), ())
        if str(project.get(("elevations", mark, "wall")) or "") == wall
        and project.get(("elevations", mark, "fire_separation")) is not None
    }
    if not given:
        return []
    nearest = min(given, key=given.__getitem__)
    return ["; minimum fire separation ", context.display(("elevations", nearest, "fire_separation"))]


def _reports(project: Project, test: str, wall: str) -> list[str]:
    """Marks of the documents to a test standard that cover the assembly of a wall."""
    return [
        mark
        for mark in project.members.get(("attachments",), ())
        if names_standard(str(project.get(("attachments", mark, "standard")) or ""), test)
        and str(project.get(("attachments", mark, "assembly")) or "") == wall
    ]
