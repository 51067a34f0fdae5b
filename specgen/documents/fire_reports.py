"""The fire reports that the code requires of the walls, and those that are listed."""

from specgen.documents.context import DocumentContext
from specgen.judging.fire_tests import PROPAGATION, RADIANT, names_standard
from specgen.model.absence import Absent
from specgen.model.project import Project

# Each test with its section of the International Building Code and the look-up that says where it is due.
TESTS = (
    ("Fire propagation", "2603.5.5", PROPAGATION, "fire-propagation-due"),
    ("Radiant heat", "2603.5.7", RADIANT, "radiant-heat-due"),
)

# The standard of the whole system, and how a barrier wall that the code wants with a WRB is shown to keep water out.
SYSTEM, RAIN = "ASTM E2568", "ASTM E331"


def list_missing_reports(context: DocumentContext) -> dict[str, list[str]]:
    """The standards of tests that are due and have no report, each with the walls that lack it."""
    missing: dict[str, list[str]] = {}
    for _, _, standard, name in TESTS:
        for wall in context.project.members[("walls",)]:
            try:
                due = context.resolve(("walls", wall), name).result
            except Absent:
                continue
            if due and not list_reports(context.project, standard, wall):
                missing.setdefault(standard, []).append(wall)
    return missing


def list_reports(project: Project, test: str, wall: str) -> list[str]:
    """Marks of the documents to a test standard that cover the assembly of a wall."""
    return [
        mark
        for mark in project.members.get(("attachments",), ())
        if names_standard(str(project.get(("attachments", mark, "standard")) or ""), test)
        and str(project.get(("attachments", mark, "assembly")) or "") == wall
    ]
