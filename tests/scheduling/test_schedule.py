"""Schedules of jobs of our own, dated on paper. Federal holidays as published for 2027 by the U.S. Office of Personnel
Management (5 U.S.C. 6103): July 4 is a Sunday and observed on Monday, July 5."""

from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.source import Kind
from tests.scheduling.jobs import EVERY, dates, find, schedule_of
from tests.support import EXAMPLES

# Worked on paper, June 28, 2027 being a Monday. Hours: E1 boards 360 / 90 = 4, rasp 2, mesh 3, second pass 3,
# smoothing 2, primer 1, with 1 for setup and cleanup on each face (common practice, no source); E2 half of each. A day
# area holds two coats in 8 - 1 - 1 = 6 h: 360 x 3 = 1,080 sq ft, so that each face is one: E1 takes 2 h of setting up
# and cleaning, 2 until the first coat is dry to touch, and 1, together 5; E2 4.5.
ON_PAPER = {
    "E1.substrate.hold": "06-28 07:00 to 06-28 07:00",
    "E1.flashings.hold": "06-28 07:00 to 06-28 07:00",
    "E1.boards": "06-28 07:00 to 06-28 11:00",
    "E1.boards.dry": "06-28 11:00 to 06-29 11:00",
    "E2.boards": "06-28 11:00 to 06-28 13:00",  # the crew has come from E1
    "E2.boards.dry": "06-28 13:00 to 06-29 13:00",
    "E1.rasp": "06-29 11:00 to 06-29 13:00",
    "E1.rasp.hold": "06-29 13:00 to 06-29 13:00",
    "E1.mesh": "06-29 13:00 to 06-30 08:00",  # 2 h on Tuesday, 1 on Wednesday; E2 can be rasped, too, but E1 is first
    "E2.rasp": "06-30 08:00 to 06-30 09:00",
    "E1.mesh.dry": "06-30 08:00 to 06-30 20:00",
    "E2.mesh": "06-30 09:00 to 06-30 10:30",
    "E2.mesh.dry": "06-30 10:30 to 06-30 22:30",
    "E1.mesh.hold": "07-01 07:00 to 07-01 07:00",  # nobody releases it in the evening
    "E1.second_pass": "07-01 07:00 to 07-01 10:00",
    "E2.second_pass": "07-01 10:00 to 07-01 11:30",
    "E1.second_pass.dry": "07-01 10:00 to 07-02 10:00",
    "E2.second_pass.dry": "07-01 11:30 to 07-02 11:30",
    "E1.smoothing_2": "07-02 10:00 to 07-02 12:00",
    "E2.smoothing_2": "07-02 12:00 to 07-02 13:00",
    "E1.smoothing_2.dry": "07-02 12:00 to 07-03 12:00",  # dry on Saturday
    "E1.smoothing_2.hold": "07-06 07:00 to 07-06 07:00",  # Monday is the day on which July 4 is observed
    "E1.primer": "07-06 07:00 to 07-06 09:00",
    "E2.primer": "07-06 09:00 to 07-06 10:30",
    "E1.primer.dry": "07-06 09:00 to 07-06 21:00",
    "E1.release_primer.hold": "07-07 07:00 to 07-07 07:00",
    "E1.gloss": "07-07 07:00 to 07-07 12:00",
    "E2.gloss": "07-08 07:00 to 07-08 11:30",  # 4.5 h do not fit behind noon
    "E1.gloss.dry": "07-07 12:00 to 07-08 12:00",
    "E1.acceptance.hold": "07-08 12:00 to 07-08 12:00",
    "E2.gloss.dry": "07-08 11:30 to 07-09 11:30",
    "E2.acceptance.hold": "07-09 11:30 to 07-09 11:30",
}
CHAIN = [
    *("E1.substrate.hold", "E1.flashings.hold", "E1.boards", "E1.boards.dry", "E1.rasp", "E1.rasp.hold", "E1.mesh"),
    *("E1.mesh.dry", "E1.mesh.hold", "E1.second_pass", "E1.second_pass.dry", "E1.second_pass.hold"),
    *("E1.smoothing_2", "E1.smoothing_2.dry", "E1.smoothing_2.hold", "E1.primer", "E1.primer.dry"),
    *("E1.release_primer.hold", "E1.gloss", "E2.gloss", "E2.gloss.dry", "E2.acceptance.hold"),
]


def test_two_faces_and_one_crew_are_dated_as_on_paper(tmp_path: Path) -> None:
    made = schedule_of(tmp_path)
    assert dict(zip(ON_PAPER, dates(made, *ON_PAPER), strict=True)) == ON_PAPER
    assert made.end == datetime(2027, 7, 9, 11, 30)
    assert made.chain == tuple(CHAIN)
    # The review is not dated, and that is said.
    review = ("schedule.submit_on", "contract.review_days", "contract.review_day_kind")
    before = (*review, "colors", "mockup.duration_days")
    assert made.missing == tuple(tuple(path.split(".")) for path in before)
    assert f"Review and mockup are not dated; add {', '.join(before)}." in made.notes


def test_the_order_of_the_activities_is_that_of_their_starts(tmp_path: Path) -> None:
    made = schedule_of(tmp_path)
    assert list(made.activities) == sorted(made.activities, key=lambda one: one.start)
    assert {one.crew for one in made.activities if one.kind == "work"} == {"red"}
    assert {one.crew for one in made.activities if one.kind != "work"} == {""}


def test_slack_is_counted_on_paper_too(tmp_path: Path) -> None:
    made = schedule_of(tmp_path)
    # E2 is glossed on Thursday at 7 at the latest, so its primer has to be dry, 12 h, by then; before that E1 takes the
    # crew, whose gloss has to be over by Thursday at 7: on Wednesday from 10. So E2 is primed on Wednesday from 8:30,
    # half an hour short of a day behind 9 of Tuesday.
    assert find(made, "E2.primer").spare == timedelta(hours=23, minutes=30)
    # Accepted on Thursday at noon, and no later than the end, on Friday at 11:30: less than a day.
    assert find(made, "E1.acceptance.hold").spare.days == 0
    # The gloss of E1 begins on Wednesday by 10, so its primer is on by 22 of Tuesday, in the shift from 13 to 15; begun
    # on Monday at 13 the smoothing is dry by then, and it begins to dry on Friday at noon.
    assert find(made, "E1.smoothing_2.dry").spare.days == 3
    assert find(made, "E2.gloss").spare.days == 0


def test_each_drying_says_where_its_hours_stand(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {"smoothing": {"dry_hours": "drop"}})
    given = find(made, "E1.primer.dry").source
    usual = find(made, "E1.smoothing_2.dry").source
    assert given is not None and (given.kind, given.reference) == (Kind.PROJECT, "primer.dry_hours")
    assert usual is not None and usual.kind is Kind.PRACTICE


def test_weather_days_are_shifts_before_the_end(tmp_path: Path) -> None:
    # Two shifts of 8 h behind Friday at 11:30: 3.5 h, 8 h on Monday, 4.5 h on Tuesday.
    made = schedule_of(tmp_path, {"schedule": {"weather_days": 2}})
    assert dates(made, "weather") == ["07-09 11:30 to 07-13 11:30"]
    assert (made.end, made.chain[-1]) == (datetime(2027, 7, 13, 11, 30), "weather")


def test_a_face_larger_than_a_day_is_glossed_in_equal_day_areas(tmp_path: Path) -> None:
    # 1,600 sq ft are more than the 1,080 of a day: two areas of 800, 2 + 800 / 360 + 800 / 360 h, with the begun minute
    # 6:27.
    made = schedule_of(tmp_path, {"elevations": {"E1": {"width": "40 ft", "height": "40 ft"}, "E2": "drop"}})
    first, second = find(made, "E1.gloss.1"), find(made, "E1.gloss.2")
    assert (first.title, second.title) == (
        "Gloss finish, day area 1 of 2, two coats",
        "Gloss finish, day area 2 of 2, two coats",
    )
    for one in (first, second):
        assert (one.start.hour, (one.end - one.start).seconds // 60) == (7, 387)
    assert (second.start.date() - first.start.date()).days == 1
    assert find(made, "E1.gloss.dry").start == second.end


def test_a_coat_that_is_not_dry_to_touch_in_time_is_followed_on_another_day(tmp_path: Path) -> None:
    # 7 h to touch leave no second coat in the 6 h of a day: 1 h, with 1 h of setup and cleanup; dry till 16:00 of
    # Wednesday, then Thursday at 7.
    made = schedule_of(tmp_path, {"gloss": {"touch_dry_hours": 7}, "elevations": {"E2": "drop"}})
    assert dates(made, "E1.gloss.1", "E1.gloss.1.dry", "E1.gloss.2") == [
        "07-07 07:00 to 07-07 09:00",
        "07-07 09:00 to 07-07 16:00",
        "07-08 07:00 to 07-08 09:00",
    ]


def test_coats_of_smoothing_take_their_passes_and_dry_between(tmp_path: Path) -> None:
    three = {"smoothing": {"coats": 3, "between_hours": 4}, "elevations": {"E2": "drop"}}
    made = schedule_of(tmp_path, three)
    # Released on Friday at 10: 2 h and 4 h of drying end at 16, after the shift.
    assert dates(made, "E1.smoothing_1.1", "E1.smoothing_1.1.dry", "E1.smoothing_1.2", "E1.smoothing_1.dry") == [
        "07-02 10:00 to 07-02 12:00",
        "07-02 12:00 to 07-02 16:00",
        "07-06 07:00 to 07-06 09:00",
        "07-06 09:00 to 07-06 13:00",
    ]
    assert dates(made, "E1.smoothing_2") == ["07-06 13:00 to 07-06 15:00"]


def test_each_coat_of_a_fluid_barrier_is_dry_before_the_next_is_begun_in_a_shift(tmp_path: Path) -> None:
    # 360 sq ft at 180 take 2 h a coat; 12 h from 9 on are over at 21, after the shift, on both days. Boards follow on
    # Wednesday.
    barrier = {"kind": "fluid_applied", "coats": 2, "dry_hours": 12}
    made = schedule_of(
        tmp_path,
        {
            "walls": {"W1": {"wrb": barrier}},
            "crews": {"red": {"steps": [*EVERY, "wrb"], "rates": {"wrb": "180 ft2/h"}}},
            "elevations": {"E2": "drop"},
        },
    )
    assert dates(made, "E1.wrb.1", "E1.wrb.1.dry", "E1.wrb.2", "E1.wrb.dry", "E1.wrb.hold", "E1.boards") == [
        "06-28 07:00 to 06-28 09:00",
        "06-28 09:00 to 06-28 21:00",
        "06-29 07:00 to 06-29 09:00",
        "06-29 09:00 to 06-29 21:00",
        "06-30 07:00 to 06-30 07:00",
        "06-30 07:00 to 06-30 11:00",
    ]
    assert find(made, "E1.wrb.2").title == "Water-resistive barrier, coat 2 of 2"


def test_no_coat_dries_that_is_not_there(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {"smoothing": {"coats": 0}, "elevations": {"E2": "drop"}})
    marks = [one.mark for one in made.activities if "smoothing" in one.mark]
    assert marks == ["E1.smoothing_2.hold"]
    assert dates(made, "E1.primer") == ["07-02 10:00 to 07-02 12:00"]


def test_a_planned_wait_that_is_longer_than_drying_is_kept_and_a_shorter_one_is_not(tmp_path: Path) -> None:
    gaps = [
        {"from_step": "primer", "to_step": "gloss", "hours": 40},
        {"from_step": "boards", "to_step": "mesh", "hours": 23},
    ]
    made = schedule_of(tmp_path, {"schedule": {"gaps": gaps}, "elevations": {"E2": "drop"}})
    assert dates(made, "E1.primer.wait.0", "E1.gloss") == ["07-06 09:00 to 07-08 01:00", "07-08 07:00 to 07-08 12:00"]
    assert find(made, "E1.gloss").driven_by == "E1.primer.wait.0"
    assert not [one for one in made.activities if "boards.wait" in one.mark]


def test_a_planned_wait_to_a_step_that_lies_before_holds_up_nothing(tmp_path: Path) -> None:
    gaps = [{"from_step": "gloss", "to_step": "primer", "hours": 400}]
    assert schedule_of(tmp_path, {"schedule": {"gaps": gaps}}).end == datetime(2027, 7, 9, 11, 30)


def test_spraying_begins_no_earlier_than_planned(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {"schedule": {"spray_start": "2027-07-12"}, "elevations": {"E2": "drop"}})
    assert dates(made, "E1.primer") == ["07-12 07:00 to 07-12 09:00"]
    assert made.chain[0] == "E1.primer"
    first = "Tinted primer, E1: not before July 12, 2027 (schedule.spray_start)."
    assert first in made.notes
    # What lies before has the days from Tuesday, July 6 on.
    assert find(made, "E1.smoothing_2.hold").spare.days == 6


def test_steps_without_an_output_are_named_beside_the_end_that_is_the_earliest(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {"access": {"A1": {"elevation": "E1", "kind": "frame_scaffold"}}})
    down = "taking down the scaffold, sealing tie places, and repair"
    assert {"Substrate", "Flashings and terminations", down} <= set(made.untimed)
    (told,) = [note for note in made.notes if note.startswith("The end is the earliest: no time is included for ")]
    assert "flashings and terminations" in told and told.endswith(f", {down}.")


SEALED: dict[str, Any] = {
    "joints": {"J1": {"elevation": "E1", "kind": "panel_joint", "length": "90 ft"}},
    "sealants": {"S1": {"sequence": "after_gloss", "pull_cure_days": 7}},
    "crews": {"bead": {"steps": ["sealant"], "rates": {"sealant": "30 ft/h"}}},
    "elevations": {"E2": "drop"},
}


def test_sealant_follows_the_finish_and_cures_before_its_pull(tmp_path: Path) -> None:
    # Accepted on Thursday, July 8 at noon; 90 ft of joint at 30 ft/h take 3 h, whatever the area of the face.
    made = schedule_of(tmp_path, SEALED)
    assert dates(made, "E1.sealant", "E1.sealant.dry", "E1.sealant.hold") == [
        "07-08 12:00 to 07-08 15:00",
        "07-08 15:00 to 07-15 15:00",
        "07-16 07:00 to 07-16 07:00",
    ]
    assert find(made, "E1.sealant").crew == "bead"


def test_joints_are_sealed_while_the_air_is_neither_too_hot_nor_too_cold(tmp_path: Path) -> None:
    # Accepted on Thursday, July 8 at noon. Of the daily range of 20 F the air of July is 0.23 of it, 4.6 F, below its
    # high at 11 and 0.13 at 12 (ASHRAE Handbook, Fundamentals, 2009, chapter 14, from memory): at 85.4 F and 87.4 F.
    # 86.4 F is passed at 11:30. From 7 on Friday 3 h of sealing end at 10.
    hot: dict[str, Any] = {
        "site": {"latitude": "40 deg"},
        "elevations": {"E1": {"facing": "N"}, "E2": "drop"},
        "climate": {"months": [{"month": "jul", "mean_min": "70 F", "mean_max": "90 F"}]},
        "joints": {"J1": {"install_low": "50 F", "install_high": "86.4 F"}},
        "shade": {"X1": {"elevation": "E1", "kind": "shade_cloth"}},
    }
    made = schedule_of(tmp_path, {**SEALED, **hot, "joints": {"J1": SEALED["joints"]["J1"] | hot["joints"]["J1"]}})
    assert dates(made, "E1.sealant") == ["07-09 07:00 to 07-09 10:00"]
    # 5 h of it: 4.5 h by 11:30, the rest on Monday.
    long = SEALED["joints"]["J1"] | hot["joints"]["J1"] | {"length": "150 ft"}
    made = schedule_of(tmp_path, {**SEALED, **hot, "joints": {"J1": long}})
    assert dates(made, "E1.sealant") == ["07-09 07:00 to 07-12 07:30"]
    told = [note for note in made.notes if note.startswith("Sealing: ")]
    assert len(told) == 1 and "only out of direct sun" in told[0]


def test_in_a_mild_month_joints_are_sealed_all_day(tmp_path: Path) -> None:
    mild: dict[str, Any] = {
        "site": {"latitude": "40 deg"},
        "elevations": {"E1": {"facing": "N"}, "E2": "drop"},
        "climate": {"months": [{"month": "jul", "mean_min": "60 F", "mean_max": "80 F"}]},
        "joints": {"J1": SEALED["joints"]["J1"] | {"install_low": "50 F", "install_high": "80 F"}},
        "shade": {"X1": {"elevation": "E1", "kind": "shade_cloth"}},
    }
    assert dates(schedule_of(tmp_path, {**SEALED, **mild}), "E1.sealant") == ["07-08 12:00 to 07-08 15:00"]


def test_an_elevation_without_joints_has_no_sealing_and_no_cure(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {**SEALED, "elevations": {}})
    assert dates(made, "E1.sealant")
    assert {one.mark for one in made.activities if one.step == "sealant" and one.elevation == "E2"} == {
        "E2.sealant.hold"
    }


def test_the_length_of_a_joint_is_measured_on_its_elevation_where_it_is_not_given(tmp_path: Path) -> None:
    # A floor line across 20 ft at 10 ft an hour takes 2 h.
    floor = {"elevation": "E1", "kind": "floor_line", "runs": "horizontal", "at": "9 ft"}
    bead = {"steps": ["sealant"], "rates": {"sealant": "10 ft/h"}}
    made = schedule_of(tmp_path, {**SEALED, "joints": {"J1": floor}, "crews": {"bead": bead}})
    assert dates(made, "E1.sealant") == ["07-08 12:00 to 07-08 14:00"]


def test_a_primer_longer_than_a_shift_is_set_up_anew_on_each_day(tmp_path: Path) -> None:
    # 360 sq ft at 36 take 10 h: 8 h and 4 h, of which each day has an hour of setup and cleanup.
    slow = {"crews": {"red": {"rates": {"primer": "36 ft2/h"}}}, "elevations": {"E2": "drop"}}
    made = schedule_of(tmp_path, slow)
    assert dates(made, "E1.primer", "E1.primer.dry") == ["07-06 07:00 to 07-07 11:00", "07-07 11:00 to 07-07 23:00"]


def test_the_final_viewing_follows_the_hand_pull(tmp_path: Path) -> None:
    scaffold = {"access": {"A1": {"elevation": "E1", "kind": "frame_scaffold"}}}
    made = schedule_of(tmp_path, {**SEALED, **scaffold})
    assert dates(made, "E1.sealant.hold", "E1.final_viewing.hold") == ["07-16 07:00 to 07-16 07:00"] * 2


def test_flashings_and_caps_take_their_time_by_the_foot(tmp_path: Path) -> None:
    # Pan and head of 4 ft, and 12 ft of flashing along a roof that falls 5 ft over 12, 13 ft: 21 ft at 7 take 3 h.
    # The cap runs along the 20 ft of the face: at 10 ft an hour 2 h.
    opening = {"x": "4 ft", "y": "4 ft", "width": "4 ft", "height": "4 ft", "kind": "window"}
    roof = {"kind": "roof_below", "elevation": "E1", "x": "0 ft", "y": "0 ft", "width": "12 ft", "height": "5 ft"}
    rates = {"flashings": "7 ft/h", "metal_caps": "10 ft/h"}
    change: dict[str, Any] = {
        "details": {"RB1": roof, "PA1": {"kind": "parapet", "elevation": "E1", "cap": "yes"}},
        "crews": {"red": {"steps": [*EVERY, *rates], "rates": rates}},
        "elevations": {
            "E1": {"openings": {"W1": {**opening, "sill_pan": "yes", "head_flashing": "yes"}}},
            "E2": "drop",
        },
    }
    made = schedule_of(tmp_path, change)
    assert dates(made, "E1.flashings") == ["06-28 07:00 to 06-28 10:00"]
    caps = find(made, "E1.metal_caps")
    assert caps.end - caps.start == timedelta(hours=2)


def test_a_scaffold_is_taken_down_before_the_final_viewing(tmp_path: Path) -> None:
    # Pulled on Friday, July 16 at 7; 360 sq ft at 180 take 2 h.
    change: dict[str, Any] = {
        "access": {"A1": {"elevation": "E1", "kind": "frame_scaffold", "tie_location": "none"}},
        "crews": {
            "red": {"steps": [*EVERY, "final_viewing"], "rates": {"final_viewing": "180 ft2/h"}},
            "bead": SEALED["crews"]["bead"],
        },
    }
    made = schedule_of(tmp_path, {**SEALED, **change})
    assert dates(made, "E1.final_viewing", "E1.final_viewing.hold") == [
        "07-16 07:00 to 07-16 09:00",
        "07-16 09:00 to 07-16 09:00",
    ]
    assert find(made, "E1.final_viewing").title == "Taking down the scaffold"
    # No tie place is sealed where there is none.
    assert made.untimed[-1] == "repair"


def test_masking_waits_for_the_season_and_takes_its_time_before_each_coat(tmp_path: Path) -> None:
    # 360 sq ft at 360 take 1 h before the primer; dry overnight, 3 h at 120 to read it, and 1 h again before the gloss,
    # of which the 5 h no longer fit into the shift.
    rates = {"protection": "360 ft2/h", "release_primer": "120 ft2/h"}
    made = schedule_of(
        tmp_path,
        {
            "schedule": {"spray_start": "2027-07-12"},
            "crews": {"red": {"steps": [*EVERY, *rates], "rates": rates}},
            "elevations": {"E2": "drop"},
        },
    )
    marks = ("E1.protection", "E1.primer", "E1.release_primer", "E1.release_primer.hold", "E1.gloss")
    assert dates(made, *marks) == [
        "07-12 07:00 to 07-12 08:00",
        "07-12 08:00 to 07-12 10:00",
        "07-13 07:00 to 07-13 10:00",
        "07-13 10:00 to 07-13 10:00",
        "07-14 07:00 to 07-14 12:00",
    ]


def test_no_work_begins_in_the_last_quarter_of_a_shift(tmp_path: Path) -> None:
    # 703 sq ft of boards at 90 take 7 h 49 min: 11 minutes are left of the 8 h of Monday.
    sizes = {"E1": {"width": "37 ft", "height": "19 ft"}}
    made = schedule_of(tmp_path, {"elevations": sizes})
    assert dates(made, "E1.boards", "E2.boards") == ["06-28 07:00 to 06-28 14:49", "06-29 07:00 to 06-29 09:00"]


def test_sealant_that_comes_first_cures_before_the_gloss(tmp_path: Path) -> None:
    # The primer is released on Wednesday at 7; 3 h of sealant and 48 of cure end on Friday at 10; 5 h of gloss fit in.
    first = {**SEALED, "sealants": {"S1": {"sequence": "before_gloss", "cure_hours": 48}}}
    made = schedule_of(tmp_path, first)
    assert dates(made, "E1.sealant", "E1.sealant.dry", "E1.gloss") == [
        "07-07 07:00 to 07-07 10:00",
        "07-07 10:00 to 07-09 10:00",
        "07-09 10:00 to 07-09 15:00",
    ]


def test_a_color_for_the_work_is_waited_for(tmp_path: Path) -> None:
    # Ordered on June 28, a color of 21 days is there on Monday, July 19.
    color = {
        "colors": {"C1": {"kind": "custom", "lead_time_days": 21}},
        "schedule": {"color_main_order_on": "2027-06-28"},
    }
    made = schedule_of(tmp_path, color)
    assert dates(made, "C1.order", "E1.primer") == ["06-28 00:00 to 07-19 00:00", "07-19 07:00 to 07-19 09:00"]
    assert made.chain[:2] == ("C1.order", "E1.primer")


CHAIN_BEFORE: dict[str, Any] = {
    "schedule": {"submit_on": "2027-03-01", "color_sample_order_on": "2027-03-01", "work_start": "drop"},
    "contract": {"review_days": 14, "review_day_kind": "calendar"},
    "colors": {"C1": {"kind": "custom", "lead_time_days": 21}},
    "mockup": {"duration_days": 18},
}


def test_review_color_and_mockup_lead_to_the_first_day_of_work(tmp_path: Path) -> None:
    # 14 days of review end on March 15, 21 of lead on March 22. From a Monday the mockup dries for four days before its
    # primer: it begins on March 18, goes on with its color on the 22nd, and its 18 days end on Monday, April 5.
    made = schedule_of(tmp_path, CHAIN_BEFORE)
    assert dates(made, "review", "C1.sample", "mockup", "mockup.coats", "mockup.hold", "E1.boards") == [
        "03-01 00:00 to 03-15 00:00",
        "03-01 00:00 to 03-22 00:00",
        "03-18 00:00 to 03-22 00:00",
        "03-22 00:00 to 04-05 00:00",
        # Accepted as the last day of the mockup ends, and no shift later.
        "04-05 00:00 to 04-05 00:00",
        "04-05 07:00 to 04-05 11:00",
    ]
    assert made.chain[:4] == ("C1.sample", "mockup.coats", "mockup.hold", "E1.substrate.hold")
    # The review may end with the start of the mockup, three days later.
    assert find(made, "review").spare.days == 3


def test_a_color_ordered_behind_the_review_waits_for_it(tmp_path: Path) -> None:
    # Ordered on March 15, the day on which the review ends, it is there on April 5: neither can be late. The mockup
    # begins four days before, and ends 14 days behind.
    later = {**CHAIN_BEFORE, "schedule": CHAIN_BEFORE["schedule"] | {"color_sample_order_on": "2027-03-15"}}
    made = schedule_of(tmp_path, later)
    assert dates(made, "C1.sample", "mockup", "mockup.coats") == [
        "03-15 00:00 to 04-05 00:00",
        "04-01 00:00 to 04-05 00:00",
        "04-05 00:00 to 04-19 00:00",
    ]
    assert find(made, "review").spare.days == find(made, "C1.sample").spare.days == 0


def test_the_work_waits_for_the_day_on_which_the_mockup_was_accepted(tmp_path: Path) -> None:
    # Ended on Monday, April 5, accepted on Thursday, April 8.
    accepted = {**CHAIN_BEFORE, "mockup": {"duration_days": 18, "accepted_on": "2027-04-08"}}
    assert dates(schedule_of(tmp_path, accepted), "mockup.hold", "E1.boards") == [
        "04-08 07:00 to 04-08 07:00",
        "04-08 07:00 to 04-08 11:00",
    ]


def test_without_a_shift_the_days_before_the_work_are_dated_and_the_rest_is_asked_for(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {**CHAIN_BEFORE, "schedule": CHAIN_BEFORE["schedule"] | {"shift_hours": "drop"}})
    assert [one.mark for one in made.activities] == ["review", "C1.sample", "mockup", "mockup.coats", "mockup.hold"]
    assert (made.end, made.missing) == (datetime(2027, 4, 5), (("schedule", "shift_hours"),))
    assert "Work on the wall is not dated; add schedule.shift_hours." in made.notes


def test_a_face_that_lacks_a_figure_is_left_out_and_the_others_are_dated(tmp_path: Path) -> None:
    made = schedule_of(tmp_path, {"elevations": {"E2": {"height": "drop"}}})
    assert {one.elevation for one in made.activities} == {"E1"}
    assert ("elevations", "E2", "height") in made.missing
    assert "E2 is not scheduled; add elevations.E2.height." in made.notes


@pytest.mark.parametrize(
    ("change", "missing"),
    [
        ({"crews": "drop"}, "crews"),
        ({"crews": {"red": {"rates": {"primer": "drop"}}}}, "crews.red.rates.primer"),
        ({"gloss": {"touch_dry_hours": "drop"}}, "gloss.touch_dry_hours"),
        ({"walls": {"W1": {"base_coat": {"first_pass_dry_hours": "drop"}}}}, "walls.W1.base_coat.first_pass_dry_hours"),
        ({"elevations": "drop"}, "elevations"),
        ({"schedule": {"work_start": "drop"}}, "schedule.work_start"),
    ],
)
def test_what_no_activity_can_be_dated_without_is_named(change: Any, missing: str, tmp_path: Path) -> None:
    with pytest.raises(Absent) as absent:
        schedule_of(tmp_path, change)
    assert missing in {".".join(path) for path in absent.value.paths}


def test_the_weekend_that_is_taken_is_told(tmp_path: Path) -> None:
    told = "Saturday and Sunday are days off: common practice, no source."
    assert told not in schedule_of(tmp_path).notes
    assert told in schedule_of(tmp_path, {"schedule": {"days_off": "drop"}}).notes


def test_no_days_off_are_no_days_off(tmp_path: Path) -> None:
    # Dry on Saturday at noon, released at once; the primer of E1 on Saturday.
    made = schedule_of(tmp_path, {"schedule": {"days_off": [], "holidays": "drop"}})
    assert dates(made, "E1.primer") == ["07-03 12:00 to 07-03 14:00"]


def test_a_shift_past_midnight_without_night_work_is_told(tmp_path: Path) -> None:
    night = {"schedule": {"shift_start": "20:00"}}
    told = "The shift runs past midnight, and no night work is planned in schedule.night_work."
    assert told in schedule_of(tmp_path, night).notes
    assert told not in schedule_of(tmp_path, {"schedule": {"shift_start": "20:00", "night_work": "yes"}}).notes
    assert dates(schedule_of(tmp_path, night), "E1.boards") == ["06-28 20:00 to 06-29 00:00"]


def test_work_that_no_calendar_holds_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="the work takes more than 10,000 shifts"):
        schedule_of(
            tmp_path,
            {
                "crews": {"red": {"rates": {"boards": "1 ft2/h"}}},
                "elevations": {"E1": {"width": "3000 ft", "height": "1500 ft"}},
            },
        )


def test_the_example_is_dated_whole(tmp_path: Path) -> None:
    from specgen import pipeline

    made = pipeline.make_resolver(pipeline.read(EXAMPLES / "clean" / "project.yaml"))((), "schedule")
    assert made.missing == ()
    assert {one.elevation for one in made.activities} == {"", "E1", "E2", "E3"}
    assert made.end.date().isoformat() > "2027-07-12"
