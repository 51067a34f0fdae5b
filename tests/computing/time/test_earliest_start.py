"""The earliest start: dates by hand, and working days against a general library of calendars."""

import datetime
from pathlib import Path
from typing import Any

import numpy
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.computing.calendars import make_work_days
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import beside, line, resolver_of
from tests.support import merged

PROJECT: dict[str, Any] = {
    "schedule": {"submit_on": "2027-03-01", "color_sample_order_on": "2027-03-01"},
    "contract": {"review_days": 14, "review_day_kind": "calendar"},
    "colors": {"C1": {"kind": "custom", "lead_time_days": 21}},
    "mockup": {"duration_days": 14},
}
DEVIATION = {"kind": "deviation", "demanded": "75", "proposed": "62", "reason": "waves"}


def start(folder: Path, change: Any = None) -> Working:
    made = resolver_of(folder, merged(PROJECT, change or {}))((), "earliest-start")
    assert isinstance(made, Working)
    return made


def test_a_chain_worked_by_hand(tmp_path: Path) -> None:
    # 1 March and 14 days of review are 15 March, and 21 of lead 22 March; 14 of mockup end on 5 April.
    made = start(tmp_path)
    assert (made.result, made.unit, made.governing_case) == (35, "d", "the sample color")
    assert beside(made) == {"mockup can start": 21}
    assert "mockup can start on March 22, 2027, work on the wall on April 5, 2027." in made.notes[0]


def test_the_planned_start_of_the_mockup_counts_where_it_is_later(tmp_path: Path) -> None:
    # 22 March, when the color is there, against 5 April; 14 days of mockup end on 19 April.
    made = start(tmp_path, {"mockup": {"planned_on": "2027-04-05"}})
    assert (made.result, made.governing_case) == (49, "the planned mockup start")
    assert "the mockup starts on April 5, 2027, work on the wall on April 19, 2027." in made.notes[0]
    assert start(tmp_path, {"mockup": {"planned_on": "2027-03-02"}}).result == 35


@pytest.mark.parametrize(
    ("planned", "ordered", "told"),
    [
        # Reviewed twice on 29 March, with the color there on the 22nd: a week behind it, or before 5 April.
        ("2027-03-22", "2027-03-01", "review, and moves the start by 7 days."),
        ("2027-04-05", "2027-03-01", "review, and does not move the start."),
        # Ordered behind the review on 15 March, the color moves with it, from 5 April to the 19th.
        ("2027-04-05", "2027-03-15", "review and order of the sample color, and moves the start by 14 days."),
        ("2027-04-12", "2027-03-15", "review and order of the sample color, and moves the start by 7 days."),
    ],
)
def test_a_resubmittal_moves_what_waits_for_the_review(planned: str, ordered: str, told: str, tmp_path: Path) -> None:
    dates = {"mockup": {"planned_on": planned}, "schedule": {"color_sample_order_on": ordered}}
    made = start(tmp_path, {**dates, "contract": {"resubmittal_days": 14}})
    assert f"Assumes one review; a resubmittal of 14 days, sent on the day of return, moves {told}" in made.notes


def test_the_days_left_to_prepare_a_resubmittal_are_told(tmp_path: Path) -> None:
    # Work could begin on April 5, behind a second review of 14 days on April 12 (the color governs the first: 7 days).
    change = {"contract": {"resubmittal_days": 14}, "schedule": {"work_start": "2027-04-17"}}
    told = start(tmp_path, change).notes
    assert any(note.endswith("moves the start by 7 days; 5 days of the 12 left to prepare it.") for note in told)


def test_a_second_review_in_working_days_counts_as_the_first(tmp_path: Path) -> None:
    # 10 working days from Monday 1 March are 15 March, 10 more 29 March; the color is there on 22 March, so that the
    # mockup moves by 7 days, and the work from 5 April to the 12th.
    change = {"contract": {"review_days": 10, "review_day_kind": "working", "resubmittal_days": 10}}
    made = start(tmp_path, change)
    assert (made.result, line(made, "E_2")) == (35, 42)
    assert (
        "Assumes one review; a resubmittal of 10 working days, sent on the day of return, moves review, and moves the "
        "start by 7 days." in made.notes
    )


# A wall of which all drying before the primer is told: 24 h of adhesive, 12 and 24 h of base coat, 24 h of smoothing.
DRYING: dict[str, Any] = {
    "walls": {
        "W1": {
            "substrate": {"kind": "cement_board"},
            "wrb": {"kind": "none"},
            "attachment": {"method": "adhesive_notched_trowel", "cure_hours": 24},
            "mesh": {"layers": [{"kind": "standard"}]},
            "base_coat": {"first_pass_dry_hours": 12, "cure_hours": 24},
        }
    },
    "coating": {"smoothing": {"coats": 1, "dry_hours": 24}},
}


@pytest.mark.parametrize(
    ("change", "before", "mockup", "work"),
    [
        # The review ends on Monday, March 15: a day of adhesive, one of each pass, and one of smoothing end on Friday,
        # March 19, 4 days behind it. Ordered on March 1, the color is there on the 22nd: the mockup begins on the 18th.
        ({}, 4, 17, 31),
        # Two coats of barrier of 12 h, dry after a shift, are two days more: over the weekend, Tuesday, March 23.
        ({"walls": {"W1": {"wrb": {"kind": "fluid_applied", "coats": 2, "dry_hours": 12}}}}, 8, 14, 28),
        # On concrete the adhesive is pulled off a day before boards are set on it: over the weekend, Monday, March 22.
        ({"walls": {"W1": {"substrate": {"kind": "concrete"}}}}, 7, 14, 28),
        # Planned for Monday, April 5, with the color there long before its first primer on Friday, April 9.
        ({"mockup": {"planned_on": "2027-04-05"}}, 4, 35, 49),
        # Not all drying is told: the color is needed for the start.
        ({"walls": {"W1": {"base_coat": {"first_pass_dry_hours": "drop"}}}}, None, 21, 35),
    ],
)
def test_the_color_is_needed_for_the_first_primer_of_the_mockup(
    change: Any, before: int | None, mockup: int, work: int, tmp_path: Path
) -> None:
    made = start(tmp_path, merged(DRYING, change))
    assert ({row.symbol: row.value for row in made.inputs}.get("c"), made.result) == (before, work)
    assert line(made, "M") == mockup


@pytest.mark.parametrize(
    ("change", "days", "governs"),
    [
        ({"contract": {"review_days": 30}}, 44, "the review"),
        ({"schedule": {"color_sample_order_on": "2027-02-01"}}, 28, "the review"),
        ({"colors": {"C1": {"kind": "standard"}}}, 28, "the review"),
        ({"colors": {"C2": {"kind": "custom", "lead_time_days": 40}}}, 54, "the sample color"),
        ({"contract": {"variation_review_days": 25}, "deviations": {"V1": DEVIATION}}, 39, "the review"),
        # A set with deviations is not back before one without.
        ({"contract": {"variation_review_days": 7}, "deviations": {"V1": DEVIATION}}, 35, "the sample color"),
    ],
)
def test_the_longest_wait_governs(change: Any, days: int, governs: str, tmp_path: Path) -> None:
    made = start(tmp_path, change)
    assert (made.result, made.governing_case) == (days, governs)


# Drafted on Monday, May 3, 2027, with weekends off, dated on a calendar.
DRAFTED: dict[str, Any] = {
    "package": {"purpose": "design_draft", "date": "2027-05-03"},
    "parties": {"general_contractor": {"name": "Hale Builders"}},
    "contract": {"review_days": 10, "review_day_kind": "working"},
    "colors": {"C1": {"kind": "standard"}},
    "schedule": {"submit_on": "2027-06-07"},
}


def test_the_review_of_the_contractor_comes_before_that_of_the_architect(tmp_path: Path) -> None:
    # From Monday, June 7, three working days (common practice, no source) and ten end on Thursday, June 24.
    assert line(start(tmp_path, DRAFTED), "R") == 17
    signed = {"package": {"contractor_review": {"by": "J. Ortiz", "signed_on": "2027-05-03"}}}
    assert line(start(tmp_path, merged(DRAFTED, signed)), "R") == 14
    # Calendar days are counted from the day on which the contractor sends it, Thursday, June 10.
    assert line(start(tmp_path, merged(DRAFTED, {"contract": {"review_day_kind": "calendar"}})), "R") == 13


def test_a_draft_is_not_submitted_before_its_walls_can_be_decided_on(tmp_path: Path) -> None:
    # A reply on Tuesday, 3 working days to check and send it and 3 of the contractor (common practice, no source), and
    # 10 of review end on Wednesday, May 26: submitted on the 27th, not on the 10th, and reviewed by Tuesday, June 15.
    made = start(tmp_path, merged(DRAFTED, {"schedule": {"submit_on": "2027-05-10"}}))
    assert (line(made, "R"), {row.symbol: row.value for row in made.inputs}["b"]) == (36, 17)
    assert (
        "The walls are not decided on by May 10, 2027, the planned submittal. Submitted on May 27, 2027"
        in made.notes[0]
    )
    assert "b" not in {row.symbol for row in start(tmp_path, DRAFTED).inputs}
    issued = merged(DRAFTED, {"package": {"purpose": "mockup_submittal"}, "schedule": {"submit_on": "2027-05-10"}})
    assert "b" not in {row.symbol for row in start(tmp_path, issued).inputs}


def test_working_days_leave_out_the_weekend_and_say_so(tmp_path: Path) -> None:
    # Ten working days from Monday 1 March 2027 end on Monday 15 March.
    made = start(tmp_path, {"contract": {"review_days": 10, "review_day_kind": "working"}})
    assert line(made, "R") == 14
    assert any("Saturday and Sunday are days off" in note for note in made.notes)
    assert not any("Saturday and Sunday" in note for note in start(tmp_path).notes)


def test_days_off_of_the_description_come_in_place_of_the_weekend(tmp_path: Path) -> None:
    change = {
        "contract": {"review_days": 5, "review_day_kind": "working"},
        "schedule": {"days_off": ["sun", "2027-03-03"]},
    }
    # Tuesday, Thursday, Friday, Saturday, and after the Sunday the Monday.
    made = start(tmp_path, change)
    assert line(made, "R") == 7
    assert not any("are days off" in note for note in made.notes)


@given(
    st.dates(datetime.date(2026, 1, 1), datetime.date(2030, 12, 31)),
    st.integers(1, 90),
    st.sets(st.sampled_from(["mon", "tue", "wed", "thu", "fri", "sat", "sun"]), max_size=6),
    st.sets(st.dates(datetime.date(2026, 1, 1), datetime.date(2031, 12, 31)), max_size=20),
)
def test_working_days_are_those_of_a_library_of_calendars(
    day: datetime.date, working: int, week: set[str], dates: set[datetime.date]
) -> None:
    # numpy.busday_offset; a start on a day off is first moved back, as the count here begins the day after.
    mask = [name not in week for name in ("mon", "tue", "wed", "thu", "fri", "sat", "sun")]
    end = numpy.busday_offset(day, working, "backward", weekmask=mask, holidays=sorted(dates))
    off = make_work_days((*week, *map(str, dates))).count_off(day, working)
    assert day + datetime.timedelta(days=working + off) == end.astype(object)


@pytest.mark.parametrize(
    ("planned", "said"),
    [("2027-04-12", "7 days later"), ("2027-04-05", "the same day"), ("2027-04-01", "4 days too early")],
)
def test_the_planned_start_is_held_against_it(planned: str, said: str, tmp_path: Path) -> None:
    assert start(tmp_path, {"schedule": {"work_start": planned}}).notes[1].endswith(f", {said}.")


@pytest.mark.parametrize(
    ("off", "said"),
    [(["saturday"], "'saturday' is not a day off"), (["mon", "tue", "wed", "thu", "fri", "sat", "sun"], "every day")],
)
def test_a_calendar_without_sense_is_refused(off: list[str], said: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match=said):
        start(tmp_path, {"contract": {"review_day_kind": "working"}, "schedule": {"days_off": off}})


@pytest.mark.parametrize(
    ("change", "path"),
    [
        ({"schedule": {"submit_on": "drop"}}, "schedule.submit_on"),
        ({"contract": {"review_days": "drop"}}, "contract.review_days"),
        ({"contract": {"review_day_kind": "drop"}}, "contract.review_day_kind"),
        ({"schedule": {"color_sample_order_on": "drop"}}, "schedule.color_sample_order_on"),
        ({"colors": {"C1": {"lead_time_days": "drop"}}}, "colors.C1.lead_time_days"),
        ({"mockup": "drop"}, "mockup.duration_days"),
        ({"deviations": {"V1": DEVIATION}}, "contract.variation_review_days"),
    ],
)
def test_what_is_missing_is_named_and_not_made_up(change: Any, path: str, tmp_path: Path) -> None:
    with pytest.raises(Absent) as absent:
        start(tmp_path, change)
    assert ".".join(absent.value.path) == path


@pytest.mark.parametrize("kind", ["calendar", "working"])
def test_the_last_days_a_project_may_name_end_in_a_day_and_in_no_failure(kind: str, tmp_path: Path) -> None:
    late = {"submit_on": "2100-12-20", "color_sample_order_on": "2100-12-31", "days_off": ["fri", "sat"]}
    made = start(tmp_path, {"schedule": late, "contract": {"review_day_kind": kind}})
    assert ", 2101." in made.notes[0]
