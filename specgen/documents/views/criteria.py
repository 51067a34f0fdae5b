"""The lines of the mockup acceptance form, with a box for each reading."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._acceptance import Form, PrintedLine
from specgen.model.block import Blank, CheckBox
from specgen.recording.acceptance_lines import LinePart

# Readings side by side; a line with more goes on below itself.
_ABREAST = 6
_NONE = "–"
# What no record holds: the mean of a row, and the box of a line that is written down and not judged.
MEAN, DONE = "form.mean.", "form.done."


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Every standard line that applies and every line of the project, each with room to be filled in."""
    lines = [row for line in Form(context, composer).lines() for row in _set_line(line)]
    boxes = tuple(str(number) for number in range(1, _ABREAST + 1))
    header = ("No.", "Criterion", "Method", "Limit", "Where, readings", *boxes, "Mean", "Result", "Init.")
    return TableView(header, tuple(lines), (13, 42, 64, 84, 33, *(17,) * _ABREAST, 19, 26, 17))


def _set_line(printed: PrintedLine) -> Iterator[tuple[Any, ...]]:
    """The rows of a line: one for each coat or angle, with its own mean and result."""
    line = printed.line
    if not line.parts:
        said = (printed.title, printed.method, printed.limit, printed.where)
        yield (str(line.number), *said, *(_NONE,) * (_ABREAST + 3))
    for part in line.parts:
        title = [printed.title, f", {part.name}"] if part.name else printed.title
        where = printed.spare_where if part.spare else printed.where
        yield from _set_part(part, (title, printed.method, printed.limit, where), printed)


def _set_part(part: LinePart, said: tuple[Any, ...], printed: PrintedLine) -> Iterator[tuple[Any, ...]]:
    """The rows of what is judged by itself; from the second on they hold further readings alone."""
    standard, row, count = printed.line.row, part.row, printed.boxes
    name = f"{printed.line.title}, {part.name}" if part.name else printed.line.title
    mean = Blank(f"Mean, {name}", field=f"{MEAN}{row}") if standard and standard.mean else _NONE
    passed = f"result.passed.{row}"
    result: Any = [CheckBox("pass", passed, "yes"), " ", CheckBox("fail", passed, "no")]
    result = CheckBox("done", f"{DONE}{row}", "yes") if standard and standard.for_record else result
    initials = Blank(f"Initials, {name}", field=f"result.signed_by.{row}")
    yield (part.number, *said, *_set_boxes(name, row, count, 1), mean, result, initials)
    for first in range(_ABREAST + 1, count + 1, _ABREAST):
        last = min(first + _ABREAST - 1, count)
        more = f"Readings {first} to {last}" if last > first else f"Reading {first}"
        boxes = _set_boxes(name, row, count, first)
        yield (f"{part.number} cont.", f"{name}, continued", _NONE, _NONE, more, *boxes, _NONE, _NONE, _NONE)


def _set_boxes(name: str, row: str, boxes: int, first: int) -> list[Any]:
    """A blank for each reading asked for, from the given one on."""
    asked = range(first, first + _ABREAST)
    return [
        Blank(f"Reading {number}, {name}", field=f"result.reading.{row}.{number}") if number <= boxes else _NONE
        for number in asked
    ]
