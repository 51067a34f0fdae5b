"""The air of a mean day, by parts of its range retyped from the ASHRAE Handbook, Fundamentals, 2009, chapter 14.

Retyped from memory: below the daily high by 0.38 of the range at 10, 0.23 at 11, 0.13 at noon, nothing at 14 and 15,
0.14 at 17, 0.24 at 18, 0.98 at 4, 1.00 at 5, 0.98 at 6, 0.91 at 7.
"""

import pytest

from specgen.computing.air_of_day import list_air_hours


@pytest.mark.parametrize(
    ("allowed", "hours"),
    [
        # Of 60 to 80, 75.4 is passed at 11 and again between 17 (77.2) and 18 (75.2): 1.8 of 2.0 into that hour.
        ((0, 75.4), ((0, 11), (17.9, 24))),
        # 60.4 is reached at 4 on the way down and at 6 on the way up.
        ((60.4, 100), ((0, 4), (6, 24))),
        # Both: what is too cold around 5 and too hot in the afternoon.
        ((60.4, 75.4), ((0, 4), (6, 11), (17.9, 24))),
        ((60, 80), ((0, 24),)),
        ((81, 90), ()),
    ],
)
def test_air_lies_within_two_temperatures_in_these_hours(
    allowed: tuple[float, float], hours: tuple[tuple[float, float], ...]
) -> None:
    found = list_air_hours((60, 80), allowed)
    assert len(found) == len(hours)
    assert [end for span in found for end in span] == pytest.approx([end for span in hours for end in span])


def test_a_day_without_a_range_is_fit_as_a_whole_or_not_at_all() -> None:
    assert list_air_hours((70, 70), (50, 80))[0][0] == 0
    assert list_air_hours((70, 70), (50, 80))[-1][1] == 24
    assert list_air_hours((70, 70), (50, 60)) == ()
