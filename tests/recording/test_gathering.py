"""Which entries count at a moment, which are left out and told, and what entries show beside each other."""

from datetime import datetime
from pathlib import Path

from specgen.model.finding import Severity
from specgen.model.record_judgment import Nonconformance, RecordJudgment
from specgen.model.source import PRACTICE, Basis
from specgen.model.status import StepState
from tests.recording.records import area_of, face_of, inspection, job, log, release, state_of, status, step_of, texts


def test_without_a_moment_the_last_one_of_the_records_is_meant(tmp_path: Path) -> None:
    assert status(tmp_path).at is None
    found = status(tmp_path, log("2027-06-15", "mesh", "07:00-09:00"), release("2027-06-16", "mesh", "08:00"))
    assert (found.at, found.counted) == (datetime(2027, 6, 16, 8), 2)
    assert status(tmp_path, inspection("2027-06-15", "rasp")).at == datetime(2027, 6, 15, 23, 59)


def test_before_the_first_entry_nothing_has_begun(tmp_path: Path) -> None:
    found = status(tmp_path, log("2027-06-15", "mesh", "07:00-09:00"), at="2027-06-15T06:59")
    assert found.counted == 0
    assert {step.state for step in face_of(found).steps} == {StepState.NOT_BEGUN}


def test_entries_without_a_face_a_day_or_a_known_step_are_told(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-15", "mesh", "07:00-09:00", elevation=None),
        {"in": "log", "step": "mesh", "elevation": "E1"},
        log("2027-06-15", "msh", "07:00-09:00"),
        log("2027-06-15", "wrb", "07:00-09:00"),
        log("2027-06-15", "mesh", "07:00-09:00", elevation="E7"),
        {"in": "release", "date": "2027-06-15", "elevation": "E1", "by": "P. Line"},
    )
    assert [remark.text for remark in found.remarks] == [
        "not counted, as no elevation is told",
        "not counted, as no day is told",
        "not counted, as 'msh' is not a step (did you mean mesh?)",
        "not counted, as wall W1 of E1 has no step water-resistive barrier (WRB)",
        "not counted, as there is no elevation 'E7'",
        "not counted, as no step is told",
    ]
    assert state_of(found, "mesh") is StepState.NOT_BEGUN


def test_a_step_done_once_that_some_walls_alone_have_is_told_of_none(tmp_path: Path) -> None:
    brick = {"W2": {"substrate": {"kind": "existing_brick"}, "attachment": {"method": "adhesive_full_bed"}}}
    change = {"walls": brick, "elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W2"}}}
    found = status(tmp_path, inspection("2027-06-15", "old_coating", elevation="E2"), change=change)
    assert found.remarks == ()
    assert state_of(found, "old_coating", "E2") is StepState.RELEASED
    bare = status(tmp_path, inspection("2027-06-15", "old_coating"))
    assert texts(bare.remarks) == "not counted, as wall W1 of E1 has no step old coating"


def test_of_one_elevation_an_entry_that_names_none_is_about_that_one(tmp_path: Path) -> None:
    one = {"elevations": {"E2": "drop"}}
    found = status(tmp_path, log("2027-06-15", "mesh", "07:00-09:00", elevation=None), change=one)
    assert state_of(found, "mesh") is StepState.DRIES


def test_two_crews_in_the_same_hours_are_told_once_a_day(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-15", "mesh", "07:00-09:00", crew="red", area="left bay"),
        log("2027-06-15", "mesh", "08:30-10:00", crew="blue", area="right bay"),
        log("2027-06-15", "mesh", "08:45-09:30", crew="red", area="left bay"),
        log("2027-06-16", "mesh", "07:00-08:00", crew="red"),
        log("2027-06-16", "mesh", "08:00-09:00", crew="blue"),
    )
    assert texts(face_of(found).remarks) == "crews red and blue were both at work 2027-06-15 08:30 to 09:00"


def test_a_panel_in_two_areas_and_one_that_the_layout_lacks_are_told(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-15", "primer", "07:00-08:00", area="left bay", panels=("E1-A1", "E1-A2")),
        log("2027-06-15", "primer", "08:00-09:00", area="right bay", panels=("E1-A2", "E1-A9")),
        panels=lambda elevation: (f"{elevation}-A1", f"{elevation}-A2"),
    )
    assert [remark.text for remark in face_of(found).remarks] == [
        "Tinted primer: left bay and right bay both hold panel E1-A2",
        "the layout has no panel E1-A9 (did you mean E1-A2?)",
    ]


def judgment_of(folder: Path, severity: Severity, lifted_by: str | None) -> RecordJudgment:
    entry = job(folder, log("2027-06-15", "mesh", "07:00-09:00")).records.of("log")[0]
    basis = Basis((PRACTICE,))
    one = Nonconformance(1, "WEA-01a", severity, entry, "air", "Air is 36 °F.", "36 °F", "40 °F", basis, "Wait.")
    return RecordJudgment((one._replace(lifted_by=lifted_by),))


def test_a_nonconformance_that_no_deviation_lifts_fails_the_step(tmp_path: Path) -> None:
    work = log("2027-06-15", "mesh", "07:00-09:00")
    failed = status(tmp_path, work, judgment=judgment_of(tmp_path, Severity.STOP, None))
    assert state_of(failed, "mesh") is StepState.FAILED
    assert texts(area_of(failed, "mesh").reasons) == "nonconformance 1, WEA-01a: Air is 36 °F"
    lifted = status(tmp_path, work, judgment=judgment_of(tmp_path, Severity.CAUTION, "DV1"))
    assert state_of(lifted, "mesh") is StepState.DRIES


def test_a_nonconformance_of_work_done_anew_stands_no_longer(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        log("2027-06-15", "mesh", "07:00-09:00"),
        release("2027-06-16", "mesh", "08:00", defects=("uneven",)),
        log("2027-06-17", "mesh", "07:00-09:00"),
        judgment=judgment_of(tmp_path, Severity.STOP, None),
    )
    assert step_of(found, "mesh").state is StepState.DRIES


def test_a_nonconformance_of_work_accepted_since_waits_for_its_disposition_and_no_correction(tmp_path: Path) -> None:
    days = (
        log("2027-06-15", "mesh", "07:00-09:00"),
        release("2027-06-15", "mesh", "19:00"),  # 9 and 10 h
        log("2027-06-16", "second_pass", "07:00-09:00"),
        release("2027-06-17", "second_pass", "09:00"),  # 9 and 24 h
    )
    found = status(tmp_path, *days, judgment=judgment_of(tmp_path, Severity.STOP, None))
    assert state_of(found, "mesh") is StepState.RELEASED
    assert texts(step_of(found, "mesh").pending) == "nonconformance 1, WEA-01a: Air is 36 °F"
    assert [(one.party.role, one.what) for one in face_of(found).owed if one.step.name == "mesh"] == [
        ("architect", "disposition")
    ]
    assert not found.is_sound
