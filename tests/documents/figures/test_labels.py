"""Labels find a place of their own or none."""

from hypothesis import given
from hypothesis import strategies as st

from specgen.documents.figures.labels import Box, Label, LabelSpace, center_label, measure, shorten, wrap_words

SHEET = Box(0, 0, 100, 60)


def labels():
    words = st.text("AB12′-″", min_size=1, max_size=8)
    return st.builds(center_label, words, st.floats(0, 100), st.floats(0, 60), turned=st.booleans())


@given(st.lists(labels(), max_size=60))
def test_labels_that_are_placed_lie_on_the_sheet_and_do_not_overlap(wanted):
    space = LabelSpace(SHEET)
    boxes = [placed.box for label in wanted if (placed := space.place([label]))]
    assert all(SHEET.holds(box) for box in boxes)
    for number, box in enumerate(boxes):
        assert not any(box.meets(other) for other in boxes[:number])


def test_the_second_choice_is_taken_where_the_first_is_not_free():
    space = LabelSpace(SHEET)
    first = space.place([Label("A1", 50, 30)])
    second = space.place([Label("A2", 50, 30), Label("A2", 50, 40)])
    assert (first.y, second.y) == (30, 40)
    assert space.place([Label("A3", 50, 30), Label("A3", 50, 40), Label("A3", 1, 40)]) is None


def test_a_turned_label_is_as_high_as_its_text_is_wide():
    box = center_label("12345678", 50, 30, turned=True).box
    assert abs((box.bottom - box.top) - measure("12345678")) < 1e-9
    assert box.right - box.left < 3


def test_long_words_are_wrapped_and_then_cut():
    assert wrap_words("one two three", measure("one two"), 2) == ["one two", "three"]
    assert wrap_words("one two three four", measure("three four"), 2) == ["one two", "three four"]
    # A word wider than the line stands alone on it, and the others behind it.
    assert wrap_words("extraordinarily one two", measure("one two"), 2)[1] == "one two"
    cut = wrap_words("one two three four five", measure("one two"), 2)
    assert cut[0] == "one two"
    assert cut[1].endswith("…")
    assert measure(cut[1]) <= measure("one two")
    assert shorten("W" * 60, 20).endswith("W…")
