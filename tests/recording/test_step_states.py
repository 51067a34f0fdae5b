"""States of steps on a face and its areas, each worked out by hand beside it.

The order of the work, which steps are hold points and what waits for what: common practice, no source.
Times are sums by the clock.
"""

from datetime import datetime
from pathlib import Path

from specgen.model.status import StepState
from tests.recording.records import area_of, face_of, inspection, log, release, state_of, status, step_of, texts


def test_a_coat_dries_so_many_hours_from_the_end_of_its_last_pass(tmp_path: Path) -> None:
    passes = (log("2027-06-15", "second_pass", "07:00-09:00"), log("2027-06-15", "second_pass", "10:00-12:30"))
    found = status(tmp_path, *passes, at="2027-06-16T12:29")  # 12:30 and 24 h: to the 16th, 12:30
    assert state_of(found, "second_pass") is StepState.DRIES
    assert step_of(found, "second_pass").until == datetime(2027, 6, 16, 12, 30)
    hours = step_of(found, "second_pass").hours
    assert hours is not None
    assert (hours.hours, hours.source) == (24, "walls.W1.base_coat.cure_hours")
    dry = status(tmp_path, *passes, at="2027-06-16T12:30")
    assert state_of(dry, "second_pass") is StepState.WAITS


def test_hours_that_the_project_does_not_give_are_told_with_the_source_of_the_trade(tmp_path: Path) -> None:
    change = {"walls": {"W1": {"base_coat": {"cure_hours": "drop"}}}}
    found = status(tmp_path, log("2027-06-15", "second_pass", "07:00-09:00"), change=change)
    hours = step_of(found, "second_pass").hours
    assert hours is not None
    assert hours.source != "walls.W1.base_coat.cure_hours"
    assert hours.source


def test_a_hold_point_is_released_by_a_release_after_its_hours(tmp_path: Path) -> None:
    found = status(
        tmp_path, log("2027-06-15", "mesh", "07:00-09:00"), release("2027-06-15", "mesh", "19:00")
    )  # 9 and 10 h
    signed = area_of(found, "mesh").released
    assert state_of(found, "mesh") is StepState.RELEASED
    assert signed is not None
    assert (signed.moment.at, signed.by) == (datetime(2027, 6, 15, 19), "P. Line")


def test_a_release_signed_before_the_hours_are_up_does_not_count_and_is_told(tmp_path: Path) -> None:
    found = status(tmp_path, log("2027-06-15", "mesh", "07:00-09:00"), release("2027-06-15", "mesh", "18:59"))
    assert state_of(found, "mesh") is StepState.DRIES
    assert texts(area_of(found, "mesh").remarks) == (
        "release not counted: signed 2027-06-15 18:59, before the 10 h were up 2027-06-15 19:00 "
        "(walls.W1.base_coat.first_pass_dry_hours)"
    )
    late = status(
        tmp_path,
        log("2027-06-15", "mesh", "07:00-09:00"),
        release("2027-06-15", "mesh", "18:59"),
        at="2027-06-20T00:00",
    )
    assert state_of(late, "mesh") is StepState.WAITS


def test_a_release_that_says_fewer_hours_than_are_due_does_not_count(tmp_path: Path) -> None:
    found = status(tmp_path, release("2027-06-15", "mesh", "18:00", hours_dry=9))
    assert state_of(found, "mesh") is StepState.WAITS
    assert "after 9 h; 10 h are due" in texts(area_of(found, "mesh").remarks)
    enough = status(tmp_path, release("2027-06-15", "mesh", "18:00", hours_dry=10))
    assert state_of(enough, "mesh") is StepState.RELEASED


def test_a_release_of_the_day_alone_counts_where_its_end_is_late_enough(tmp_path: Path) -> None:
    work = log("2027-06-15", "mesh", "07:00-09:00")
    assert state_of(status(tmp_path, work, release("2027-06-15", "mesh")), "mesh") is StepState.RELEASED
    late = log("2027-06-15", "mesh", "07:00-15:00")  # dry on the 16th, 01:00
    assert state_of(status(tmp_path, late, release("2027-06-15", "mesh")), "mesh") is StepState.DRIES


def test_a_release_before_the_work_that_it_releases_does_not_count(tmp_path: Path) -> None:
    found = status(tmp_path, release("2027-06-14", "mesh", "10:00"), log("2027-06-15", "mesh", "07:00-09:00"))
    assert state_of(found, "mesh") is StepState.DRIES
    assert "before the work it releases began" in texts(area_of(found, "mesh").remarks)


def test_a_release_of_the_whole_face_releases_the_areas_that_are_dry(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-15", "mesh", "07:00-09:00", area="left bay"),  # dry at 19:00
        log("2027-06-15", "mesh", "12:00-14:00", area="right bay"),  # dry on the 16th, 00:00
        release("2027-06-15", "mesh", "20:00"),
    )
    assert area_of(found, "mesh", "left bay").state is StepState.RELEASED
    assert area_of(found, "mesh", "right bay").state is StepState.DRIES
    assert "before the 10 h were up 2027-06-16 00:00" in texts(area_of(found, "mesh", "right bay").remarks)
    assert state_of(found, "mesh") is StepState.DRIES


def test_an_area_written_in_two_ways_is_one(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-15", "mesh", "07:00-09:00", area="E1 left bay"),
        log("2027-06-15", "mesh", "10:00-11:00", area="Left  Bay"),
        release("2027-06-16", "mesh", "20:00", area="left bay"),
    )
    assert [(one.area, one.state) for one in step_of(found, "mesh").areas] == [("E1 left bay", StepState.RELEASED)]


def test_a_step_is_under_way_while_an_area_of_the_step_before_is_not_reached(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-10", "mesh", "07:00-09:00", area="left bay"),
        log("2027-06-10", "mesh", "10:00-11:00", area="right bay"),
        release("2027-06-12", "mesh", "07:00"),
        log("2027-06-14", "second_pass", "07:00-09:00", area="left bay"),
        release("2027-06-15", "second_pass", "10:00"),
    )
    assert state_of(found, "second_pass") is StepState.UNDER_WAY
    assert step_of(found, "second_pass").missing == ("right bay",)


def test_an_entry_without_an_end_is_under_way_and_one_that_ends_later_too(tmp_path: Path) -> None:
    assert state_of(status(tmp_path, log("2027-06-15", "mesh", "07:00")), "mesh") is StepState.UNDER_WAY
    work = log("2027-06-15", "mesh", "07:00-09:00")
    assert state_of(status(tmp_path, work, at="2027-06-15T08:59"), "mesh") is StepState.UNDER_WAY
    assert state_of(status(tmp_path, work, at="2027-06-15T09:00"), "mesh") is StepState.DRIES


def test_a_shift_across_midnight_ends_on_the_next_day(tmp_path: Path) -> None:
    found = status(tmp_path, log("2028-02-28", "mesh", "22:00-02:00"))  # 2028 is a leap year: dry on the 29th, 12:00
    assert step_of(found, "mesh").until == datetime(2028, 2, 29, 12)
    assert found.at == datetime(2028, 2, 29, 2)


def test_hours_go_over_a_leap_day(tmp_path: Path) -> None:
    leap = status(tmp_path, log("2028-02-28", "second_pass", "07:00-12:00"))
    usual = status(tmp_path, log("2027-02-28", "second_pass", "07:00-12:00"))
    assert step_of(leap, "second_pass").until == datetime(2028, 2, 29, 12)
    assert step_of(usual, "second_pass").until == datetime(2027, 3, 1, 12)


def test_an_entry_without_an_hour_stands_at_the_end_of_its_day(tmp_path: Path) -> None:
    found = status(tmp_path, log("2027-06-15", "mesh"))
    assert step_of(found, "mesh").until == datetime(2027, 6, 16, 9, 59)
    before = status(tmp_path, log("2027-06-15", "mesh"), at="2027-06-15T10:00")
    assert state_of(before, "mesh") is StepState.NOT_BEGUN
    assert texts(before.remarks) == "not counted, as no hour of that day is told"


def test_entries_count_in_the_order_of_time_however_they_are_written(tmp_path: Path) -> None:
    entries = [
        log("2027-06-10", "mesh", "07:00-09:00"),
        log("2027-06-14", "second_pass", "07:00-09:00"),
        log("2027-06-15", "second_pass", "07:00-09:00"),
    ]
    signed = [release("2027-06-11", "mesh", "07:00"), release("2027-06-16", "second_pass", "10:00")]
    assert (
        status(tmp_path, *entries, *signed).faces[0].steps[-3:]
        == status(tmp_path, *signed, *entries).faces[0].steps[-3:]
    )
    turned = status(tmp_path, *reversed(entries), *signed)
    assert state_of(turned, "second_pass") is StepState.RELEASED
    assert area_of(turned, "second_pass").ended == datetime(2027, 6, 15, 9)


def test_a_refused_inspection_and_a_release_with_faults_fail_the_step(tmp_path: Path) -> None:
    refused = status(tmp_path, inspection("2027-06-15", "flashings", "refused"))
    assert state_of(refused, "flashings") is StepState.FAILED
    assert texts(area_of(refused, "flashings").reasons) == "inspection refused 2027-06-15 by P. Line"
    faults = status(
        tmp_path,
        log("2027-06-15", "mesh", "07:00-09:00"),
        release("2027-06-16", "mesh", "08:00", defects=("mesh_visible",)),
    )
    assert state_of(faults, "mesh") is StepState.FAILED
    assert "mesh visible" in texts(area_of(faults, "mesh").reasons)
    assert not faults.is_sound
    mended = status(tmp_path, inspection("2027-06-15", "flashings", "refused"), inspection("2027-06-18", "flashings"))
    assert state_of(mended, "flashings") is StepState.RELEASED


def test_a_release_without_a_name_waits_for_the_signature(tmp_path: Path) -> None:
    found = status(tmp_path, log("2027-06-15", "mesh", "07:00-09:00"), release("2027-06-16", "mesh", "08:00", by=None))
    assert state_of(found, "mesh") is StepState.WAITS
    owed = [(one.what, one.party.name) for one in face_of(found).owed if one.step.name == "mesh"]
    assert owed == [("signature", "Plumb Line")]


def test_a_step_without_an_entry_is_told_where_a_later_one_has_begun(tmp_path: Path) -> None:
    found = status(tmp_path, log("2027-06-15", "mesh", "07:00-09:00"))
    assert state_of(found, "rasp") is StepState.SKIPPED
    assert state_of(found, "second_pass") is StepState.NOT_BEGUN
    assert state_of(found, "rasp", "E2") is StepState.NOT_BEGUN


def test_preparation_and_cleaning_do_not_show_that_the_steps_before_are_over(tmp_path: Path) -> None:
    found = status(
        tmp_path, log("2027-06-15", "protection", "07:00-09:00"), log("2027-06-15", "clean_equipment", "10:00-11:00")
    )
    assert state_of(found, "smoothing_2") is StepState.NOT_BEGUN


def test_what_is_done_once_stands_on_every_elevation(tmp_path: Path) -> None:
    found = status(tmp_path, inspection("2027-04-05", "mockup", elevation="E2"))
    assert [state_of(found, "mockup", face) for face in ("E1", "E2")] == [StepState.RELEASED] * 2
    told = status(tmp_path, log("2027-06-15", "mesh", "07:00-09:00"), change={"mockup": {"accepted_on": "2027-04-05"}})
    assert state_of(told, "mockup") is StepState.RELEASED
    assert (
        state_of(status(tmp_path, change={"mockup": {"accepted_on": "2027-04-05"}}, at="2027-04-01T00:00"), "mockup")
        is StepState.NOT_BEGUN
    )


def test_a_step_that_only_releases_is_pending_before_anybody_released_though_an_area_is_not_coated(
    tmp_path: Path,
) -> None:
    smoothed = [log("2027-06-10", "smoothing_2", "07:00-09:00", area=bay) for bay in ("left bay", "right bay")]
    primed = log("2027-06-14", "primer", "07:00-09:00", area="left bay")
    found = status(tmp_path, *smoothed, primed, at="2027-06-16T09:00")  # dry 16 h after 9:00 on the 14th
    assert state_of(found, "primer") is StepState.UNDER_WAY
    assert state_of(found, "release_primer") is StepState.WAITS
