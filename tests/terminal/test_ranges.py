"""Marks told as ranges, retyped by hand."""

import pytest

from specgen.terminal.ranges import join_marks


@pytest.mark.parametrize(
    ("marks", "told"),
    [
        ([], ""),
        (["W1"], "W1"),
        (["E1", "E2"], "E1, E2"),
        (["E1", "E2", "E3"], "E1 to E3 (3)"),
        ([f"E{n}" for n in range(1, 201)], "E1 to E200 (200)"),
        (["E1", "E2", "E3", "E5", "E6", "E7", "E9"], "E1 to E3 (3), E5 to E7 (3), E9"),
        (["E01", "E02", "E03"], "E01 to E03 (3)"),
        # In the order of the file: what counts backwards is no range, nor what loses a nought on the way.
        (["E3", "E2", "E1"], "E3, E2, E1"),
        (["E09", "E10", "E011"], "E09, E10, E011"),
        (["9", "10", "11", "12"], "9 to 12 (4)"),
        (["north", "south"], "north, south"),
        (["W1 mesh layer 1", "W1 mesh layer 2", "W1 mesh layer 3"], "W1 mesh layer 1 to W1 mesh layer 3 (3)"),
        ([f"E{n}" for n in range(1, 4001)], "E1 to E4000 (4,000)"),
    ],
)
def test_marks_that_count_on_are_told_as_a_range(marks: list[str], told: str) -> None:
    assert join_marks(marks) == told


def test_of_many_pieces_the_first_are_told_and_the_number_of_the_others() -> None:
    evens = [f"E{n}" for n in range(2, 62, 2)]
    assert join_marks(evens, 3) == "E2, E4, E6 and 27 more"
    # A range behind the last piece counts all its marks.
    assert join_marks(["A", "B", "E1", "E2", "E3"], 2) == "A, B and 3 more"
