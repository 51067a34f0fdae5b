"""Coats in the shade of the face alone, dated on paper.

The sun stands over a west face from noon to sunset on every day of the year, by symmetry: at noon of solar time it is
due south. A shift from 7 to 15 has 5 h before that; half an hour at its start is setup, so that coats go on from 7:30
to 12, and cleanup may go on in the sun until 12:30.
"""

from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from specgen.model.problem import Refused
from specgen.model.schedule import Schedule
from tests.scheduling.jobs import TWO_FACES, dates, find, schedule_of
from tests.support import merged

WEST = merged(
    TWO_FACES,
    {
        "site": {"latitude": "40 deg"},
        # 2,400 sq ft; primer and each coat of gloss at 360 sq ft/h take 6 h 40 min.
        "elevations": {"E1": {"width": "60 ft", "height": "40 ft", "facing": "W"}, "E2": "drop"},
        "schedule": {"spray_start": "2027-07-26", "holidays": "drop"},
    },
)
CLOTH = {"shade": {"S1": {"elevation": "E1", "kind": "shade_cloth"}}}


def west(folder: Path, change: Any = None) -> Schedule:
    """The schedule of the west face with a change laid over it."""
    return schedule_of(folder, change, WEST)


def test_a_west_face_is_primed_in_the_forenoons_alone(tmp_path: Path) -> None:
    # 4 h 30 min of shade from 7:30 do not hold 6 h 40 min: 2 h 10 min are left for the second day, and each of the two
    # has half an hour of setup before and of cleanup behind.
    assert dates(west(tmp_path), "E1.primer") == ["07-26 07:00 to 07-27 10:10"]


def test_under_cloth_the_same_face_is_primed_in_a_day(tmp_path: Path) -> None:
    # The shift less half an hour of setup and of cleanup: from 7:30 to 14:30.
    assert dates(west(tmp_path, CLOTH), "E1.primer") == ["07-26 07:00 to 07-26 14:40"]


def test_day_areas_keep_to_the_shade_one_a_day(tmp_path: Path) -> None:
    # Of 4.5 h one is for cleanup and setup between the coats; a pass of 1.5 h behind 2 h to touch: 540 sq ft, so five
    # areas of 480 with passes of 1 h 20 min: 1 h, 1 h, 2 h, 1 h 20 min. Primed by Tuesday, dry at night, released on
    # Wednesday the 28th: Wednesday to Friday, Monday, and Tuesday.
    made = west(tmp_path)
    assert dates(made, *(f"E1.gloss.{number}" for number in range(1, 6))) == [
        f"{day} 07:00 to {day} 12:20" for day in ("07-28", "07-29", "07-30", "08-02", "08-03")
    ]


def test_a_coat_not_dry_to_touch_in_the_shade_is_followed_on_another_day(tmp_path: Path) -> None:
    # 3.5 h to touch leave no second coat in the 3.5 h of the day; 360 sq ft take 1 h a coat, and 1 h of setup
    # and cleanup.
    small = {"elevations": {"E1": {"width": "20 ft", "height": "18 ft"}}, "gloss": {"touch_dry_hours": 3.5}}
    made = west(tmp_path, small)
    assert dates(made, "E1.primer", "E1.gloss.1", "E1.gloss.2") == [
        "07-26 07:00 to 07-26 09:00",
        "07-27 07:00 to 07-27 09:00",
        "07-28 07:00 to 07-28 09:00",
    ]


def test_the_end_is_later_from_a_lift_than_under_cloth(tmp_path: Path) -> None:
    lift, cloth = west(tmp_path), west(tmp_path, CLOTH)
    # Under cloth 6 h leave 360 x 3 = 1,080 sq ft: three areas of 800, Tuesday to Thursday.
    assert cloth.end == find(cloth, "E1.gloss.3").end + timedelta(hours=24)
    # From the lift the last area is dry on Wednesday, August 4 at 12:20, in the sun: it is viewed on Thursday at 7.
    assert (cloth.end, lift.end) == (datetime(2027, 7, 30, 13, 27), datetime(2027, 8, 5, 7))


def test_shade_as_observed_counts_in_its_month_and_the_computed_sun_in_the_others(tmp_path: Path) -> None:
    # In July a neighbor shades the face until 14:10, which holds 6 h 40 min from 7:30 on.
    seen = {"shade_hours": [{"month": "jul", "from": "05:00", "to": "14:10"}]}
    july = {"schedule": {"spray_end": "2027-07-30"}, "elevations": {"E1": seen}}
    assert dates(west(tmp_path, july), "E1.primer") == ["07-26 07:00 to 07-26 14:40"]
    august = {"schedule": {"spray_start": "2027-08-02"}, "elevations": {"E1": seen}}
    assert dates(west(tmp_path, august), "E1.primer") == ["08-02 07:00 to 08-03 10:10"]


def test_a_shift_past_midnight_is_sprayed_by_lamp_on_both_sides_of_it(tmp_path: Path) -> None:
    night = {"shift_start": "20:00", "night_work": "yes"}
    made = west(tmp_path, {"schedule": night})
    assert dates(made, "E1.primer") == ["07-26 20:00 to 07-27 03:40"]


def test_a_face_without_shade_in_any_month_is_refused(tmp_path: Path) -> None:
    noon = {"shift_start": "12:30", "shift_hours": 4}
    with pytest.raises(Refused, match="elevation E1 has no usable spray hours in any month"):
        west(tmp_path, {"schedule": noon})


def test_the_hours_taken_and_the_sun_not_known_are_told(tmp_path: Path) -> None:
    taken = "Primer and gloss: only in the usable spray hours of face and month, solar time taken as clock time."
    assert taken in west(tmp_path).notes
    bare = schedule_of(tmp_path).notes
    assert taken not in bare
    missing = "site.latitude, elevations.E1.facing, elevations.E2.facing"
    assert f"Direct sun is not considered on E1, E2; add {missing}." in bare


def test_slack_is_counted_in_the_shade_too(tmp_path: Path) -> None:
    # The whole chain hangs on one face and one crew: nothing that the chain passes through has a day to spare.
    made = west(tmp_path)
    assert {find(made, mark).spare.days for mark in made.chain} == {0}
