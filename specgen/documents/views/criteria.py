"""The lines of the mockup acceptance form, with a box for each reading."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._acceptance import AcceptanceLine, Form
from specgen.model.block import Blank, CheckBox

# Readings side by side; a line with more goes on below itself.
_ABREAST = 6
_NONE = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Every standard line that applies and every line of the project, each with room to be filled in."""
    lines = [
        row for number, line in enumerate(Form(context, composer).lines(), 1) for row in _set_line(str(number), line)
    ]
    boxes = tuple(str(number) for number in range(1, _ABREAST + 1))
    header = ("No.", "Criterion", "Method", "Limit", "Where, readings", *boxes, "Mean", "Result", "Init.")
    return TableView(header, tuple(lines), (4, 11, 14, 16, 9, *(5,) * _ABREAST, 5, 6, 5))


def _set_line(number: str, line: AcceptanceLine) -> Iterator[tuple[Any, ...]]:
    """The rows of a line; from the second on they hold further readings alone."""
    said = (number, line.title, line.method, line.limit, line.where)
    if not line.boxes:
        yield (*said, *(_NONE,) * (_ABREAST + 3))
        return
    mean = Blank(f"Mean, {line.name}") if line.mean else _NONE
    result = [CheckBox("pass"), " ", CheckBox("fail")]
    yield (*said, *_set_boxes(line, 1), mean, result, Blank(f"Initials, {line.name}"))
    for first in range(_ABREAST + 1, line.boxes + 1, _ABREAST):
        last = min(first + _ABREAST - 1, line.boxes)
        more = f"Readings {first} to {last}" if last > first else f"Reading {first}"
        yield (number, f"{line.name}, continued", _NONE, _NONE, more, *_set_boxes(line, first), _NONE, _NONE, _NONE)


def _set_boxes(line: AcceptanceLine, first: int) -> list[Any]:
    """A blank for each reading asked for, from the given one on."""
    asked = range(first, first + _ABREAST)
    return [Blank(f"Reading {number}, {line.name}") if number <= line.boxes else _NONE for number in asked]
