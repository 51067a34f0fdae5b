"""Coats that bear no direct sun until set, dated on paper.

The sun stands over a west face from noon to sunset on every day of the year, by symmetry: at noon of solar time it is
due south. A coat is set to touch an hour after its application (common practice, no source): in a shift from 7 to 15 it
is applied until 11. On an east face, in the sun until noon, it begins at noon.
"""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.schedule import Schedule
from tests.scheduling.jobs import TWO_FACES, dates, schedule_of
from tests.support import merged

# One face of 360 sq ft: boards take 4 h, mesh 3, the second pass 3, smoothing 2.
SUNLESS: dict[str, Any] = merged(
    TWO_FACES,
    {
        "site": {"latitude": "40 deg"},
        "elevations": {"E1": {"facing": "W"}, "E2": "drop"},
        "walls": {"W1": {"attachment": {"direct_sun": False}, "base_coat": {"direct_sun": False}}},
        "smoothing": {"direct_sun": False},
    },
)
CLOTH = {"shade": {"S1": {"elevation": "E1", "kind": "shade_cloth"}}}
OPEN = {"walls": {"W1": {"base_coat": {"direct_sun": "drop"}}}}
JOINT = {"elevation": "E1", "kind": "panel_joint", "length": "180 ft"}
HELD = "Coats that bear no direct sun until set (Document D08): only while the face is out of it, to 1 h before"


def sunless(folder: Path, change: Any = None) -> Schedule:
    return schedule_of(folder, change, SUNLESS)


def test_wet_coats_of_a_west_face_are_set_before_noon(tmp_path: Path) -> None:
    # Boards on Monday from 7 to 11, cured on Tuesday at 11; rasped until 13, as that may go on in the sun. Mesh on
    # Wednesday from 7 to 10, dry at 22; the second pass on Thursday from 7 to 10, cured on Friday at 10; smoothing from
    # 10 to 11, and on from 7 to 8 on Tuesday, as Monday is the day on which July 4 is observed.
    marks = ("E1.boards", "E1.rasp", "E1.mesh", "E1.second_pass", "E1.smoothing_2")
    assert dates(sunless(tmp_path), *marks) == [
        "06-28 07:00 to 06-28 11:00",
        "06-29 11:00 to 06-29 13:00",
        "06-30 07:00 to 06-30 10:00",
        "07-01 07:00 to 07-01 10:00",
        "07-02 10:00 to 07-06 08:00",
    ]


def test_wet_coats_of_an_east_face_begin_once_it_is_out_of_the_sun(tmp_path: Path) -> None:
    # From noon there are 3 h each day: boards on Monday and 1 h of Tuesday.
    east = {"elevations": {"E1": {"facing": "E"}}}
    assert dates(sunless(tmp_path, east), "E1.boards") == ["06-28 12:00 to 06-29 13:00"]


def test_a_coat_that_no_manufacturer_keeps_out_of_the_sun_takes_the_whole_shift(tmp_path: Path) -> None:
    # Rasped on Tuesday at 13, mesh from then to 15 and 1 h on Wednesday.
    assert dates(sunless(tmp_path, OPEN), "E1.mesh") == ["06-29 13:00 to 06-30 08:00"]


def test_under_cloth_the_sun_holds_nothing_back(tmp_path: Path) -> None:
    made = sunless(tmp_path, CLOTH)
    assert dates(made, "E1.mesh") == ["06-29 13:00 to 06-30 08:00"]
    assert not [note for note in made.notes if note.startswith(HELD)]


def test_shade_as_observed_counts_in_its_month(tmp_path: Path) -> None:
    # A neighbor shades the west face until 14 of June: boards until 13, so that 4 h from 8 are over at 12.
    seen = {"elevations": {"E1": {"shade_hours": [{"month": "jun", "from": "04:00", "to": "14:00"}]}}}
    late = {"schedule": {"shift_start": "08:00"}}
    assert dates(sunless(tmp_path, merged(seen, late)), "E1.boards") == ["06-28 08:00 to 06-28 12:00"]
    assert dates(sunless(tmp_path, late), "E1.boards") == ["06-28 08:00 to 06-29 09:00"]


def test_a_face_in_the_sun_all_through_the_shift_is_to_be_shaded(tmp_path: Path) -> None:
    # From half past noon the west face is in it; in August a neighbor shades it, so that it can be sprayed.
    seen = {"elevations": {"E1": {"shade_hours": [{"month": "aug", "from": "12:00", "to": "18:30"}]}}}
    noon = {"schedule": {"shift_start": "12:30", "shift_hours": 6, "spray_start": "2027-08-02"}}
    made = sunless(tmp_path, merged(seen, noon))
    assert dates(made, "E1.boards") == ["06-28 12:30 to 06-28 16:30"]
    assert "shade the face until the coat is set." in next(note for note in made.notes if note.startswith(HELD))


@pytest.mark.parametrize("change", [{"site": "drop"}, {"elevations": {"E1": {"facing": "drop"}}}])
def test_where_the_sun_on_the_face_is_not_known_it_is_asked_for(change: Any, tmp_path: Path) -> None:
    made = sunless(tmp_path, change)
    missing = "site.latitude" if "site" in change else "elevations.E1.facing"
    assert [
        note for note in made.notes if note.startswith("Direct sun is not considered on E1; add ") and missing in note
    ]


def test_what_holds_the_coats_back_is_told(tmp_path: Path) -> None:
    (told,) = (note for note in sunless(tmp_path).notes if note.startswith(HELD))
    assert "shade the face" not in told


def test_joints_are_sealed_out_of_the_sun_in_mild_air_too(tmp_path: Path) -> None:
    # No coat is held back; glossed on Wednesday by noon, dry on Thursday at noon, viewed on Friday at 7, as the face
    # is in the sun from noon. 180 ft of joint at 30 ft/h take 6 h: 5 on Friday, 1 on Monday.
    mild: dict[str, Any] = {
        "walls": {"W1": {"attachment": {"direct_sun": True}, "base_coat": {"direct_sun": True}}},
        "smoothing": {"direct_sun": True},
        "climate": {"months": [{"month": "jul", "mean_min": "60 F", "mean_max": "80 F"}]},
        "joints": {
            "J1": {
                "elevation": "E1",
                "kind": "panel_joint",
                "length": "180 ft",
                "install_low": "50 F",
                "install_high": "90 F",
            }
        },
        "sealants": {"S1": {"sequence": "after_gloss", "pull_cure_days": 7}},
        "crews": {"bead": {"steps": ["sealant"], "rates": {"sealant": "30 ft/h"}}},
        "schedule": {"spray_start": "2027-07-06"},
    }
    assert dates(sunless(tmp_path, mild), "E1.sealant") == ["07-09 07:00 to 07-12 08:00"]
