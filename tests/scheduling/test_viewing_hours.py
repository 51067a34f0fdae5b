"""Viewings in diffuse daylight, dated on paper.

By symmetry the sun stands over an east face from sunrise to noon of solar time and over a west face from noon to
sunset, on every day of the year: it is due south at noon. In July the sun rises at 40 degrees north before 5 of solar
time (tables of the U.S. Naval Observatory, from memory), so that a shift from 7 is in daylight.
"""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.schedule import Schedule
from tests.scheduling.jobs import TWO_FACES, dates, schedule_of
from tests.support import merged

# The example on paper, one face: accepted on Thursday, July 8, when the gloss is dry at noon; 3 h of sealant and 7 days
# of cure end on Thursday, July 15 at 15, and the hand pull is on Friday, July 16 at 7.
SEALED: dict[str, Any] = merged(
    TWO_FACES,
    {
        "site": {"latitude": "40 deg"},
        "elevations": {"E1": {"facing": "E"}, "E2": "drop"},
        "joints": {"J1": {"elevation": "E1", "kind": "panel_joint", "length": "90 ft"}},
        "sealants": {"S1": {"sequence": "after_gloss", "pull_cure_days": 7}},
        "crews": {"bead": {"steps": ["sealant"], "rates": {"sealant": "30 ft/h"}}},
        "access": {"A1": {"elevation": "E1", "kind": "frame_scaffold"}},
        "shade": {"S1": {"elevation": "E1", "kind": "shade_cloth"}},
    },
)
VIEWINGS = ("E1.acceptance.hold", "E1.final_viewing.hold")


def viewed(folder: Path, change: Any = None) -> list[str]:
    """The hours of the day of acceptance and final viewing."""
    made: Schedule = schedule_of(folder, change, SEALED)
    return [one[:11] for one in dates(made, *VIEWINGS)]


def test_a_final_viewing_waits_for_the_sun_to_leave_the_face_without_its_cloth(tmp_path: Path) -> None:
    # Accepted under the cloth; the sun is on the east face until noon when the cloth is down.
    assert viewed(tmp_path) == ["07-08 12:00", "07-16 12:00"]


def test_a_west_face_is_viewed_in_the_forenoon(tmp_path: Path) -> None:
    # Pulled on Friday at 7, before the sun.
    assert viewed(tmp_path, {"elevations": {"E1": {"facing": "W"}}}) == ["07-08 12:00", "07-16 07:00"]


def test_without_cloth_acceptance_waits_for_the_shade_of_the_face(tmp_path: Path) -> None:
    # Dry on Thursday at 12: the west face is in the sun then, and in its own shade on Friday from 7.
    bare = {"elevations": {"E1": {"facing": "W"}}, "shade": "drop", "schedule": {"spray_start": "2027-07-06"}}
    assert viewed(tmp_path, bare)[0] == "07-09 07:00"


def test_shade_as_observed_counts_for_a_viewing(tmp_path: Path) -> None:
    # A neighbor shades the east face until 9 of July.
    seen = {"elevations": {"E1": {"shade_hours": [{"month": "jul", "from": "04:00", "to": "09:00"}]}}}
    assert viewed(tmp_path, seen)[1] == "07-16 07:00"


@pytest.mark.parametrize("change", [{"site": "drop"}, {"elevations": {"E1": {"facing": "drop"}}}])
def test_where_the_sun_on_the_face_is_not_known_the_whole_shift_is_open(change: Any, tmp_path: Path) -> None:
    assert viewed(tmp_path, change)[1] == "07-16 07:00"


def test_a_face_without_shade_in_the_shift_is_viewed_in_it_all_the_same(tmp_path: Path) -> None:
    # From noon on the west face is in the sun: no hour of a shift from 12:30 is without it.
    noon = {"elevations": {"E1": {"facing": "W"}}, "schedule": {"shift_start": "12:30", "shift_hours": 6}}
    made = schedule_of(tmp_path, noon, SEALED)
    assert dates(made, "E1.final_viewing.hold") == dates(made, "E1.sealant.hold")


def test_the_hours_kept_for_a_viewing_move_what_follows(tmp_path: Path) -> None:
    # Accepted under the cloth from 12 to 14 on Thursday: 1 h of sealing is left, and 2 h of Friday; pulled a week
    # on, on Friday at 9.
    kept = {"schedule": {"viewing_hours": 2}}
    made = schedule_of(tmp_path, kept, SEALED)
    assert dates(made, "E1.acceptance.hold", "E1.sealant", "E1.sealant.hold") == [
        "07-08 12:00 to 07-08 14:00",
        "07-08 14:00 to 07-09 09:00",
        "07-16 09:00 to 07-16 09:00",
    ]
    assert "Inspection time at other hold points is not included." in made.notes
