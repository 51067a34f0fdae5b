"""Room for the readings of the tests in place beside their limits: two in a line, in the order of the work."""

from collections.abc import Iterator
from itertools import zip_longest
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.sentences import Sentences
from specgen.documents.views._record_blanks import WHERE_USED, make_blank, make_boxes
from specgen.documents.views.field_quality import list_tests
from specgen.documents.views.test_plan import name_procedure
from specgen.model.evaluation import evaluate
from specgen.model.standard import FieldTest

# Tests of work that a project has or has not, and when it says neither.
_UNDECIDED = {
    "heavy_mesh": "walls.*.mesh.layers is not given",
    "aesthetic_joint_size": "aesthetic_joint.width is not given",
}
SAME = "as above"
# Tests that have numbered boxes on the second sheet.
NUMBERED = ("dry_film", "gloss", "color", "sealant_adhesion")
JUDGED = (("yes", "pass"), ("no", "fail"))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Each test that is read and that the work on any wall needs, a line for each thing that is read."""
    cells = [
        _line(context, test, number, limit)
        for test, limit in list_read(context, composer)
        if test.name not in NUMBERED
        for number in range(len(test.lines))
    ]
    half = (len(cells) + 1) // 2
    empty = ("",) * 6
    lines = tuple((*left, *right) for left, right in zip_longest(cells[:half], cells[half:], fillvalue=empty))
    header = ("Test", "Limit", "Place", "Readings", "Result", "By, date") * 2
    return TableView(header, lines, (8, 19, 5, 8, 5, 5) * 2)


def list_read(context: DocumentContext, composer: Composer) -> Iterator[tuple[FieldTest, Any]]:
    """The tests with readings, each with its limit, by the step after which they are made."""
    standards, sentences = context.standards, Sentences(context, composer)
    found = [
        (test, name_procedure(line[3]))
        for table, rows_of in (("step_checks", standards.step_checks), ("field_tests", standards.field_tests))
        for test, line in list_tests(sentences, table, rows_of.values())
        if test.lines
    ]
    for step in standards.steps:
        yield from (pair for pair in found if pair[0].step == step)


def _line(context: DocumentContext, test: FieldTest, number: int, limit: Any) -> tuple[Any, ...]:
    """A line of readings: what is read, its limit on the first, and blanks for where, what, and by whom."""
    undecided = test.name in _UNDECIDED and evaluate(_UNDECIDED[test.name], context.project)
    said = ", ".join(filter(None, (test.test, test.lines[number], WHERE_USED if undecided else "")))
    row = f"e-{test.name}-{number + 1}"
    return (
        said,
        SAME if number else limit,
        make_blank(f"Place, {said}", "form.place", row),
        make_blank(f"Readings, {said}", "form.readings", row),
        make_boxes(JUDGED, "form.met", row),
        make_blank(f"By and date, {said}", "form.read_by", row),
    )
