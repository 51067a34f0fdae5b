"""Room for the readings of the tests in place: two tests in a line, in the order of the work."""

from collections.abc import Iterator
from itertools import zip_longest
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.sentences import Sentences
from specgen.documents.views._record_blanks import WHERE_USED, make_blank, make_boxes
from specgen.documents.views.field_quality import list_tests
from specgen.model.evaluation import evaluate
from specgen.model.standard import FieldTest

# Tests of work that a project has or has not, and when it says neither.
_UNDECIDED = {
    "heavy_mesh": "walls.*.mesh.layers is not given",
    "aesthetic_joint_size": "aesthetic_joint.width is not given",
}
_JUDGED = (("yes", "pass"), ("no", "fail"))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Each test that is read and that the work on any wall needs, a line for each thing that is read."""
    cells = [
        _line(context, test, number) for test in _list_read(context, composer) for number in range(len(test.lines))
    ]
    half = (len(cells) + 1) // 2
    empty = ("",) * 5
    lines = tuple((*left, *right) for left, right in zip_longest(cells[:half], cells[half:], fillvalue=empty))
    header = ("Test", "Place", "Readings, mean", "Result", "By, date") * 2
    return TableView(header, lines, (15, 7, 11, 9, 8) * 2)


def _list_read(context: DocumentContext, composer: Composer) -> Iterator[FieldTest]:
    """The tests with readings, by the step after which they are made."""
    standards, sentences = context.standards, Sentences(context, composer)
    found = [
        test
        for table, rows_of in (("step_checks", standards.step_checks), ("field_tests", standards.field_tests))
        for test, _ in list_tests(sentences, table, rows_of.values())
        if test.lines
    ]
    for step in standards.steps:
        yield from (test for test in found if test.step == step)


def _line(context: DocumentContext, test: FieldTest, number: int) -> tuple[Any, ...]:
    """A line of readings: what is read, and blanks for where, what, and by whom."""
    undecided = test.name in _UNDECIDED and evaluate(_UNDECIDED[test.name], context.project)
    said = ", ".join(filter(None, (test.test, test.lines[number], WHERE_USED if undecided else "")))
    row = f"d-{test.name}-{number + 1}"
    return (
        said,
        make_blank(f"Place, {said}", "form.place", row),
        make_blank(f"Readings, {said}", "form.readings", row),
        make_boxes(_JUDGED, "form.met", row),
        make_blank(f"By and date, {said}", "form.read_by", row),
    )
