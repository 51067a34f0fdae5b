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
_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Every standard line that applies and every line of the project, each with room to be filled in."""
    lines = [
        row for number, line in enumerate(Form(context, composer).lines(), 1) for row in _set_line(str(number), line)
    ]
    boxes = tuple(str(number) for number in range(1, _ABREAST + 1))
    header = ("No.", "Criterion", "Method", "Limit", "Where, readings", *boxes, "Mean", "Result", "Init.")
    return TableView(header, tuple(lines), (13, 42, 64, 84, 33, *(17,) * _ABREAST, 19, 26, 17))


def _set_line(number: str, line: AcceptanceLine) -> Iterator[tuple[Any, ...]]:
    """The rows of a line: one for each coat or angle, with its own mean and result."""
    if not line.boxes:
        yield (number, line.title, line.method, line.limit, line.where, *(_NONE,) * (_ABREAST + 3))
        return
    parts = line.parts if not line.spare else tuple(part or "working gun" for part in line.parts)
    for at, part in enumerate((*parts, *line.spare)):
        letter = _LETTERS[at % len(_LETTERS)] if part else ""
        name = f"{line.name}, {part}" if part else line.name
        said = ([line.title, f", {part}"] if part else line.title, line.method, line.limit)
        where = line.spare_where if part in line.spare else line.where
        row = f"{line.criterion}{letter and f'-{letter}'}" if len(parts) > 1 or at else line.criterion
        yield from _set_part(f"{number}{letter}", (*said, where), line, name, row)


def _set_part(
    number: str, said: tuple[Any, ...], line: AcceptanceLine, name: str, row: str
) -> Iterator[tuple[Any, ...]]:
    """The rows of what is judged by itself; from the second on they hold further readings alone."""
    mean = Blank(f"Mean, {name}", field=f"form.mean.{row}") if line.mean else _NONE
    passed = f"result.passed.{row}"
    result: Any = [CheckBox("pass", passed, "yes"), " ", CheckBox("fail", passed, "no")]
    result = CheckBox("done", f"form.done.{row}", "yes") if line.for_record else result
    initials = Blank(f"Initials, {name}", field=f"result.signed_by.{row}")
    yield (number, *said, *_set_boxes(name, row, line.boxes, 1), mean, result, initials)
    for first in range(_ABREAST + 1, line.boxes + 1, _ABREAST):
        last = min(first + _ABREAST - 1, line.boxes)
        more = f"Readings {first} to {last}" if last > first else f"Reading {first}"
        boxes = _set_boxes(name, row, line.boxes, first)
        yield (f"{number} cont.", f"{name}, continued", _NONE, _NONE, more, *boxes, _NONE, _NONE, _NONE)


def _set_boxes(name: str, row: str, boxes: int, first: int) -> list[Any]:
    """A blank for each reading asked for, from the given one on."""
    asked = range(first, first + _ABREAST)
    return [
        Blank(f"Reading {number}, {name}", field=f"result.reading.{row}.{number}") if number <= boxes else _NONE
        for number in asked
    ]
