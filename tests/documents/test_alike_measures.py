"""Measures that differ by place and figure alone are told as one; sentences are retyped by hand."""

import pytest

from specgen.documents.alike_measures import join_messages
from tests.documents.example import page_of, rows_below
from tests.documents.support import context_of_example


@pytest.mark.parametrize(
    ("messages", "told"),
    [
        (
            [
                ("July", "Days reach 85 °F; in the sun a wall is hot."),
                ("August", "Days reach 83 °F; in the sun a wall is hot."),
            ],
            "Days reach 85 °F (July), 83 °F (August); in the sun a wall is hot.",
        ),
        (
            [("May", "It rains on 9 days."), ("June", "It rains on 10 days.")],
            "It rains on 9 days (May), 10 days (June).",
        ),
        (
            [("W1", "The mesh dries for 3 h before the next."), ("W2", "The mesh dries for 14 h before the next.")],
            "The mesh dries for 3 h (W1), 14 h (W2) before the next.",
        ),
        (
            [("W1", "It is 1.26 m²·K/W; add board."), ("W2", "It is 1.22 m²·K/W; add board.")],
            "It is 1.26 m²·K/W (W1), 1.22 m²·K/W (W2); add board.",
        ),
        (
            [("W1", "Drainage is 85%; minimum 90%."), ("W2", "Drainage is 54%; minimum 90%.")],
            "Drainage is 85% (W1), 54% (W2); minimum 90%.",
        ),
        ([("W1", "Left is -2.5 mm."), ("W2", "Left is -3 mm.")], "Left is −2.5 mm (W1), −3 mm (W2)."),
        ([("July", "Nights fall."), ("August", "Days rise!")], ""),
        ([("July", "It rains."), ("August", "It seldom rains.")], ""),
    ],
)
def test_sentences_that_differ_at_one_point_are_one(messages: list[tuple[str, str]], told: str) -> None:
    assert join_messages(messages) == told


def test_hot_months_share_a_row_and_the_mockup_is_named_as_the_place() -> None:
    rows = rows_below(page_of(context_of_example("clean"), "D05"), "CONDITIONS ALLOWED WITH MEASURES")[1:]
    hot = [row for row in rows if row[0] == "WEA-07a"]
    # Mean highs of the example: July 85 °F, August 83 °F.
    assert [(row[1], row[2].replace("\u00a0", " ").removesuffix("[p]")) for row in hot] == [
        (
            "July, August",
            "Days in a month of spraying reach 85 °F (July), 83 °F (August); in the sun, a wall can pass 90 °F "
            "in air below 80 °F.",
        )
    ]
    assert [row[1] for row in rows if row[0] == "WEA-09d"] == ["Mockup"]
