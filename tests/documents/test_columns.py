"""Columns take the width their words need; figures in one unit stand to the right. Expectations are ours."""

import pytest

from specgen.documents.columns import find_figures, fit_widths
from specgen.model.block import Blank, Inlines, Table, Text


def table(widths: tuple[int, ...], *rows: tuple[str, ...]) -> Table:
    header, *others = (tuple((Text(cell),) if cell else () for cell in row) for row in rows)
    return Table(header, tuple(others), widths)


def test_a_column_of_long_words_takes_the_room_that_short_ones_leave() -> None:
    row = ("W1", "Graywether Wall Systems of the whole of the upper valley and its hills", "yes")
    left, middle, right = fit_widths(table((40, 20, 40), ("Wall", "Source", "Kept"), row, row))
    assert middle > 60
    assert left + middle + right == 100
    assert min(left, right) >= 5


def test_widths_that_make_no_more_lines_than_others_stay() -> None:
    assert fit_widths(table((30, 70), ("Wall", "Kept"), ("W1", "yes"), ("W2", "no"))) == (30, 70)


def test_a_form_keeps_its_widths() -> None:
    cells: tuple[Inlines, ...] = ((Text("a line as long as nobody needs it, and then longer " * 4),), (Blank("Read"),))
    form = Table(((Text("Line"),), (Text("Read"),)), (cells, cells), (20, 80))
    assert fit_widths(form) == (20, 80)


@pytest.mark.parametrize(
    ("cells", "stands"),
    [
        (("1.5", "12.25"), True),
        (("1-1/2 in", "3/4 in"), True),
        (("26.0 psf", ""), True),
        (("26.0 psf", "3 in"), False),
        (("1.5", "none"), False),
        (("", ""), False),
        (("2027-03-01", "2027-03-02"), False),
    ],
)
def test_figures_of_one_unit_stand_to_the_right(cells: tuple[str, ...], stands: bool) -> None:
    rows = ((f"E{number}", cell) for number, cell in enumerate(cells))
    assert find_figures(table((50, 50), ("Elevation", "Figure"), *rows)) == (frozenset({1}) if stands else frozenset())


def test_the_names_of_rows_stand_to_the_left() -> None:
    assert find_figures(table((50, 50), ("No.", "Kept"), ("1", "yes"), ("2", "no"))) == frozenset()
