"""What comes next and who owes what, worked out by hand beside each; roles as the small job names them."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from specgen.model.calendar import WorkCalendar, WorkDays
from specgen.model.status import FaceStatus
from tests.recording.records import face_of, inspection, log, release, status

MESH = log("2027-06-10", "mesh", "07:00-09:00")  # dry at 19:00


def owed_by(face: FaceStatus) -> list[tuple[str, str, str, str]]:
    return [(one.party.role, one.what, one.step.name, one.about) for one in face.owed]


def test_behind_what_dries_the_next_step_begins_when_it_is_dry_and_released(tmp_path: Path) -> None:
    (following,) = face_of(status(tmp_path, MESH)).next
    assert (following.step.name, following.start, following.goes_on) == (
        "second_pass",
        datetime(2027, 6, 10, 19),
        False,
    )
    assert following.hold is not None
    assert following.hold.name == "mesh"
    assert following.releaser is not None
    assert following.releaser.name == "Plumb Line"


def test_a_start_falls_into_the_hours_of_work(tmp_path: Path) -> None:
    shift = WorkCalendar(WorkDays(), datetime(2027, 1, 1, 7).time(), timedelta(hours=8))
    friday = log("2027-06-11", "mesh", "07:00-09:00")  # dry on Friday at 19:00; the next shift is that of Monday
    (following,) = face_of(status(tmp_path, friday, next_start=shift.find_start)).next
    assert following.start == datetime(2027, 6, 14, 7)


def test_behind_the_primer_the_gloss_waits_for_its_release_and_may_not_come_too_late(tmp_path: Path) -> None:
    primer = log("2027-06-14", "primer", "07:00-09:00")
    change = {"primer": {"most_recoat_hours": 120}}  # from 9:00 on the 14th to the 19th, 9:00
    (following,) = face_of(status(tmp_path, primer, change=change)).next
    assert (following.step.name, following.start) == ("gloss", datetime(2027, 6, 15, 1))
    assert following.latest == datetime(2027, 6, 19, 9)
    assert following.hold is not None
    assert following.hold.name == "release_primer"


def test_an_area_that_is_free_is_named(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-10", "mesh", "07:00-09:00", area="left bay"),
        log("2027-06-10", "mesh", "18:00-20:00", area="right bay"),
        release("2027-06-10", "mesh", "19:30", area="left bay"),
    )
    (following,) = face_of(found).next
    assert following.areas == ("left bay",)
    assert following.start == datetime(2027, 6, 11, 6)


def test_between_two_coats_the_same_step_goes_on_when_touch_dry(tmp_path: Path) -> None:
    coat = log("2027-06-16", "gloss", "07:00-08:00", coat=1)
    (following,) = face_of(status(tmp_path, coat)).next
    assert (following.step.name, following.start, following.goes_on) == ("gloss", datetime(2027, 6, 16, 9), True)


def test_what_failed_is_corrected_first(tmp_path: Path) -> None:
    face = face_of(status(tmp_path, inspection("2027-06-15", "flashings", "refused"), MESH))
    assert face.next[0].step.name == "flashings"
    assert face.next[0].correct
    assert ("applicator", "correction", "flashings", "") in owed_by(face)
    assert ("inspector", "release", "flashings", "after correction") in owed_by(face)


def test_a_release_is_owed_from_when_the_work_is_dry(tmp_path: Path) -> None:
    (wet,) = [one for one in face_of(status(tmp_path, MESH)).owed if one.what == "release"]
    assert (wet.party.role, wet.step.name, wet.since) == ("inspector", "mesh", datetime(2027, 6, 10, 19))
    (dry,) = [one for one in face_of(status(tmp_path, MESH, at="2027-06-11T07:00")).owed if one.what == "release"]
    assert dry.since is None


def test_the_finish_is_accepted_by_the_approver_of_the_mockup(tmp_path: Path) -> None:
    face = face_of(status(tmp_path, inspection("2027-06-25", "acceptance", "refused")))
    assert ("architect", "release", "acceptance", "after correction") in owed_by(face)


def test_an_ending_time_is_owed_where_the_day_is_over_or_a_later_step_has_begun(tmp_path: Path) -> None:
    entry = ("applicator", "entry", "mesh", "ending time")
    begun = log("2027-06-10", "mesh", "07:00")
    assert entry not in owed_by(face_of(status(tmp_path, begun)))
    assert entry in owed_by(face_of(status(tmp_path, begun, at="2027-06-11T06:00")))
    assert entry in owed_by(face_of(status(tmp_path, begun, log("2027-06-12", "second_pass", "07:00-08:00"))))


def test_a_witness_point_is_owed_until_it_is_inspected_or_passed(tmp_path: Path) -> None:
    primer = log("2027-06-14", "primer", "07:00-09:00")
    point = ("inspector", "inspection", "primer", "first pass")
    assert point in owed_by(face_of(status(tmp_path, primer)))
    assert point not in owed_by(face_of(status(tmp_path, primer, inspection("2027-06-14", "primer"))))
    assert point not in owed_by(face_of(status(tmp_path, primer, log("2027-06-16", "gloss", "07:00-08:00"))))


def test_straightedge_and_sight_lines_are_owed_before_aesthetic_joints(tmp_path: Path) -> None:
    rasped = inspection("2027-06-05", "rasp")
    points = [one.about for one in face_of(status(tmp_path, rasped)).owed if one.what == "inspection"]
    assert points == ["board straightedge", "sight lines"]
    one = status(tmp_path, rasped, inspection("2027-06-06", "sight_lines"))
    assert [owed.about for owed in face_of(one).owed if owed.what == "inspection"] == ["board straightedge"]


@pytest.mark.parametrize("at", ["", "2027-01-01T10:00"])
def test_where_nothing_is_recorded_the_first_step_is_owed(tmp_path: Path, at: str) -> None:
    entries = [MESH] if at else []
    face = face_of(status(tmp_path, *entries, at=at))
    assert [one.step.name for one in face.next] == ["site_conditions"]
    assert owed_by(face) == [("applicator", "entry", "site_conditions", "")]


def test_nothing_comes_next_where_all_steps_are_over(tmp_path: Path) -> None:
    ends = [inspection("2027-07-20", step) for step in ("acceptance", "sealant", "final_viewing")]
    done = [log("2027-07-01", "gloss", f"{hour:02}:00-{hour:02}:30", coat=coat) for coat, hour in ((1, 7), (2, 9))]
    found = status(tmp_path, *done, *ends, inspection("2027-05-01", "mockup"))
    assert face_of(found).next == ()


def test_each_area_has_the_recoat_time_of_its_own_last_coat(tmp_path: Path) -> None:
    coats = [
        log("2027-06-14", "primer", "07:00-08:00", area="left bay"),
        log("2027-06-14", "primer", "08:00-09:00", area="right bay"),
        log("2027-06-16", "gloss", "07:00-08:00", area="left bay", coat=1),
    ]
    change = {"primer": {"most_recoat_hours": 120}, "gloss": {"most_recoat_hours": 24}}
    following = face_of(status(tmp_path, *coats, at="2027-06-16T08:30", change=change)).next[0]
    # Gloss of the left bay: 8:00 and 24 h; primer of the right bay: 9:00 on the 14th and 120 h.
    assert following.deadlines == (("left bay", datetime(2027, 6, 17, 8)), ("right bay", datetime(2027, 6, 19, 9)))
    assert following.latest == datetime(2027, 6, 17, 8)
