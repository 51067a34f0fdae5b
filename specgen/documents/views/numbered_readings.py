"""Numbered boxes for the tests in place that are read too often for one cell: film, gloss, color, hand pulls."""

from collections.abc import Iterator
from itertools import zip_longest
from typing import Any, NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._film import reads_film_each
from specgen.documents.views._record_blanks import make_blank, make_boxes
from specgen.documents.views._sealant_tests import count_sealant_tests
from specgen.documents.views.field_quality import count_readings, is_of_mean
from specgen.documents.views.test_readings import JUDGED, NUMBERED, SAME, list_read

# Boxes side by side; a line with more goes on below itself.
_ABREAST = 6
_NONE = "–"


class _Line(NamedTuple):
    """What is read by itself: its words, the row of its blanks, how often, and what is written beside."""

    said: str
    limit: tuple[Any, ...]
    row: str
    times: int
    mean: bool = False
    placed: bool = False  # whether each reading has a place of its own


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two lines abreast, each with a box for each reading."""
    cells = list(_list_cells(context, composer))
    half = (len(cells) + 1) // 2
    empty = ("",) * (_ABREAST + 3)
    lines = tuple((*left, *right) for left, right in zip_longest(cells[:half], cells[half:], fillvalue=empty))
    header = ("Test, limit", *map(str, range(1, _ABREAST + 1)), "Mean", "Result")
    return TableView(header * 2, lines, (16, *(4,) * _ABREAST, 5, 5) * 2)


def _list_cells(context: DocumentContext, composer: Composer) -> Iterator[tuple[Any, ...]]:
    """The lines of each test that the work needs."""
    make = dict(zip(NUMBERED, (_list_films, _list_gloss, _list_colors, _list_pulls), strict=True))
    for test, limit in list_read(context, composer):
        for line in make[test.name](context, limit) if test.name in make else ():
            yield from _set_line(line)


def _list_films(context: DocumentContext, limit: Any) -> Iterator[_Line]:
    """The dry film of each coat, with its own figures."""
    each = reads_film_each(context)
    bound = "each reading" if each else "mean"
    for coat, criterion in (("primer", "film_dry"), ("gloss", "film_gloss_dry")):
        told = [f"{bound} minimum ", context.display((coat, "dry_film"))]
        told += [] if each else [", no reading below ", context.limit("film.least_share"), " of it"]
        if context.project.is_given((coat, "most_dry_film")):
            told += [", maximum ", context.display((coat, "most_dry_film"))]
        coats = int(context.project.get((coat, "coats")) or context.limit(f"{coat}.coats").raw)
        for number in range(1, coats + 1):
            said = f"Dry film, {coat}" + (f", coat {number}" if coats > 1 else "")
            row, times = f"e-dry_film-{coat}{number}", count_readings(context, criterion)
            yield _Line(said, tuple(told) if number == 1 else (SAME,), row, times, mean=True)


def _list_gloss(context: DocumentContext, limit: Any) -> Iterator[_Line]:
    yield _Line("Gloss", tuple(limit), "e-gloss-1", count_readings(context, "gloss"), mean=True)


def _list_colors(context: DocumentContext, limit: Any) -> Iterator[_Line]:
    """The color difference at each angle, of each color."""
    times, marks = count_readings(context, "color_reading"), list_marks(context, "colors")
    bound = "mean" if is_of_mean(context, "color_reading") else "each reading"
    for mark in marks or ("",):
        lead = f"Color {mark}" if len(marks) > 1 else "Color"
        told = (f"CIEDE2000 {bound} maximum ", context.display(("colors", mark, "tolerance"))) if mark else limit
        for angle in (context.project.get(("colors", mark, "angles")) if mark else None) or ("",):
            said = f"{lead}, {angle} degrees" if angle else lead
            yield _Line(said, tuple(told), f"e-color-{mark}{angle}", times, mean=True)


def _list_pulls(context: DocumentContext, limit: Any) -> Iterator[_Line]:
    """The hand pulls of the sealant, by the length of its joints; the least number where that is not known."""
    counted = count_sealant_tests(context) or context.limit("sealant.field_tests")
    yield _Line("Sealant hand pull", tuple(limit), "e-sealant_adhesion-1", int(counted.raw), placed=True)


def _set_line(line: _Line) -> Iterator[tuple[Any, ...]]:
    """The rows of a line; from the second on they hold further readings alone."""
    mean = make_blank(f"Mean, {line.said}", "form.mean", line.row) if line.mean else _NONE
    for first in range(1, line.times + 1, _ABREAST):
        boxes = (_make_box(line, number) for number in range(first, first + _ABREAST))
        if first > 1:
            yield (f"{line.said}, {first} to {min(first + _ABREAST - 1, line.times)}", *boxes, _NONE, _NONE)
        else:
            yield ([f"{line.said}: ", *line.limit], *boxes, mean, make_boxes(JUDGED, "form.met", line.row))
        if line.placed:
            places = (_make_box(line, number, "place") for number in range(first, first + _ABREAST))
            yield ("Joint and place of each, above", *places, _NONE, _NONE)


def _make_box(line: _Line, number: int, what: str = "reading") -> Any:
    """A blank for a reading or its place, a dash past the last."""
    label = f"{line.said}, {what} {number}"
    return make_blank(label, f"form.{what}", line.row, number) if number <= line.times else _NONE
