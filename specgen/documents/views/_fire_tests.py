"""Fire tests that the code requires of the walls, why, and the reports that cover them."""

from collections.abc import Iterable
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.fire_reports import TESTS, list_reports
from specgen.documents.members import span_marks
from specgen.documents.views._cells import cite_section
from specgen.judging.fire_tests import RADIANT
from specgen.model.absence import Absent
from specgen.model.value_text import words

# The walls of buildings of these types are outside the section itself, not outside one of its tests.
_TYPE_V = ("VA", "VB")
_CHARGE = "2603.5"


def rows(context: DocumentContext) -> list[tuple[Any, ...]]:
    """One row for each answer and reason, with the tests and the walls it holds for."""
    tests: dict[str, tuple[str, str, tuple[Any, ...]]] = {}
    for wall in context.project.members[("walls",)]:
        for title, section, standard, name in TESTS:
            cells = _answer(context, section, standard, name, wall)
            before, *_ = tests.get(f"{wall}{cells}", ("",))
            named = f"{before}; {title[:1].lower()}{title[1:]}, {standard}" if before else f"{title}, {standard}"
            tests[f"{wall}{cells}"] = named, wall, cells
    return join_walls(tests.values())


def answer_open(context: DocumentContext, absent: Absent) -> tuple[Any, Any]:
    """The cells of what waits for a field: the field, and who supplies it."""
    field = context.project.schema.field_at(absent.path)
    return "pending", [context.ask(absent.path), f", from the {words(field.owed_by)}" if field else ""]


def join_walls(answers: Iterable[tuple[str, str, tuple[Any, ...]]]) -> list[tuple[Any, ...]]:
    """One row for each subject and answer, with the walls it holds for: `Radiant heat, W1, W2`."""
    joined: dict[tuple[str, str], tuple[list[str], tuple[Any, ...]]] = {}
    for subject, wall, cells in answers:
        joined.setdefault((subject, repr(cells)), ([], cells))[0].append(wall)
    return [(f"{subject}, {span_marks(walls)}", *cells) for (subject, _), (walls, cells) in joined.items()]


def _answer(context: DocumentContext, section: str, standard: str, name: str, wall: str) -> tuple[Any, ...]:
    """Section, whether the test is due, and why, with the reports listed for the wall."""
    section = section if context.project.get(("code", "model")) == "ibc" else "R316"
    try:
        found = context.resolve(("walls", wall), name)
    except Absent as absent:
        return section, *answer_open(context, absent)
    if context.project.get(("code", "construction_type")) in _TYPE_V:
        section = _CHARGE
    number = cite_section(section, found.source[0], "fire test")
    reports = list_reports(context.project, standard, wall)
    authority = context.project.get(("code", "jurisdiction")) or "the authority"
    extension = f"or engineer's extension accepted by {authority}"
    pending = f"; {standard} report, {extension}, required from the EIFS manufacturer" if found.result else ""
    shown = f"; report {', '.join(reports)}" if reports else pending
    distance = _separation(context, wall) if found.result and standard == RADIANT else []
    return number, "yes" if found.result else "no", [found.why, *distance, shown]


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
