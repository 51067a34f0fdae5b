"""Masking before primer and gloss, dated on paper: tape is not left on a wall that waits.

Worked on the face of 360 sq ft of `jobs.py`, ready for primer on Tuesday, July 6 at 7. Masked at 120 sq ft/h it takes
3 h, primer and its setup 2, gloss 5. That tape comes off within the days of its data sheet, nights and days off
included, is what the sheets of low-tack tapes say (common practice, no source).
"""

from itertools import pairwise
from pathlib import Path
from typing import Any

from specgen.model.schedule import Schedule
from tests.scheduling.jobs import EVERY, TWO_FACES, dates, find, schedule_of
from tests.support import merged

RATES = {"rates": {"protection": "120 ft2/h"}, "steps": ["protection", *EVERY]}
MASKED: dict[str, Any] = merged(TWO_FACES, {"crews": {"red": RATES}})
TAPE = {"accessories": [{"kind": "masking_tape", "most_days": 3}]}
ONE_FACE = {"elevations": {"E2": "drop"}}


def masked(folder: Path, change: Any = None) -> Schedule:
    return schedule_of(folder, change, MASKED)


def test_a_face_is_masked_before_the_primer_and_again_before_the_gloss(tmp_path: Path) -> None:
    # Primed on Tuesday from 10 to 12, dry at midnight, released on Wednesday at 7: masked until 10, and the 5 h of
    # gloss just fit behind.
    marks = ("E1.protection", "E1.primer", "E1.protection.gloss", "E1.gloss")
    assert dates(masked(tmp_path, ONE_FACE), *marks) == [
        "07-06 07:00 to 07-06 10:00",
        "07-06 10:00 to 07-06 12:00",
        "07-07 07:00 to 07-07 10:00",
        "07-07 10:00 to 07-07 15:00",
    ]


def test_a_crew_that_masked_a_face_turns_to_no_other_before_it_is_sprayed(tmp_path: Path) -> None:
    # Both faces are ready on Tuesday at 7. E2 is half as large: masked in 1.5 h, and primed from 13:30 to 15.
    marks = ("E1.protection", "E1.primer", "E2.protection", "E2.primer", "E1.protection.gloss", "E1.gloss")
    assert dates(masked(tmp_path), *marks) == [
        "07-06 07:00 to 07-06 10:00",
        "07-06 10:00 to 07-06 12:00",
        "07-06 12:00 to 07-06 13:30",
        "07-06 13:30 to 07-06 15:00",
        "07-07 07:00 to 07-07 10:00",
        "07-07 10:00 to 07-07 15:00",
    ]


def test_with_a_last_hour_for_the_gloss_a_face_is_glossed_before_the_next_is_primed(tmp_path: Path) -> None:
    made = masked(tmp_path, {"primer": {"most_recoat_hours": 72}})
    assert find(made, "E2.protection").start >= find(made, "E1.gloss").end
    # Without a crew at the release nothing is read in between: the primer of E1 is dry at night, and masked at 7.
    assert dates(made, "E1.protection.gloss") == ["07-07 07:00 to 07-07 10:00"]


def test_tape_that_would_stay_on_too_long_over_a_weekend_is_applied_behind_it(tmp_path: Path) -> None:
    # Primed on Thursday from 10 to 12: on Friday the face could be masked from 7 to 10, and with 3 h to touch, so 6 of
    # gloss, be sprayed on Monday from 7: 3 days and 6 h to its end. So it is masked on Monday, and sprayed on Tuesday.
    slow = {"schedule": {"spray_start": "2027-07-08"}, "gloss": {"touch_dry_hours": 3}, **ONE_FACE}
    marks = ("E1.protection.gloss", "E1.gloss")
    assert dates(masked(tmp_path, slow), *marks) == ["07-09 07:00 to 07-09 10:00", "07-12 07:00 to 07-12 13:00"]
    assert dates(masked(tmp_path, {**slow, **TAPE}), *marks) == [
        "07-12 07:00 to 07-12 10:00",
        "07-13 07:00 to 07-13 13:00",
    ]


def test_each_day_area_is_masked_by_itself(tmp_path: Path) -> None:
    # 1,600 sq ft are two areas of 800, masked in 6 h 40 min each; the 6 h 27 min of gloss need the next shift.
    made = masked(tmp_path, {"elevations": {"E1": {"width": "40 ft", "height": "40 ft"}, "E2": "drop"}})
    order = ("E1.protection.gloss.1", "E1.gloss.1", "E1.protection.gloss.2", "E1.gloss.2")
    found = [find(made, mark) for mark in order]
    assert all(before.end <= after.start for before, after in pairwise(found))
    # From 13:27 the second area takes what is left of that shift and 5 h 7 min of the next; sprayed on the day after.
    assert [(one.start.date() - found[0].start.date()).days for one in found] == [0, 1, 1, 3]


def test_the_masking_has_a_row_of_its_own(tmp_path: Path) -> None:
    assert find(masked(tmp_path, ONE_FACE), "E1.protection.gloss").row == "Preparation for gloss"
