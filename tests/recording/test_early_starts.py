"""What was begun before the step before it was released or dry.

Times worked out by hand beside each; which steps are hold points is common practice, no source.
"""

from pathlib import Path

from tests.recording.records import area_of, inspection, log, release, status, texts

MESH = log("2027-06-10", "mesh", "07:00-09:00")  # dry at 19:00
# All that stands before the mesh on this wall.
BEFORE = [inspection("2027-06-01", step) for step in ("substrate", "mockup", "flashings", "rasp")]


def test_work_that_waited_for_release_and_hours_is_in_order(tmp_path: Path) -> None:
    found = status(
        tmp_path, *BEFORE, MESH, release("2027-06-10", "mesh", "19:00"), log("2027-06-10", "second_pass", "19:00-20:00")
    )
    assert found.is_sound
    assert not area_of(found, "second_pass").early


def test_work_a_minute_before_the_release_was_begun_too_early(tmp_path: Path) -> None:
    found = status(
        tmp_path, *BEFORE, MESH, release("2027-06-11", "mesh", "07:00"), log("2027-06-11", "second_pass", "06:59-08:00")
    )
    told = "begun 2027-06-11 06:59, before the release of Base coat with standard mesh (released 2027-06-11 07:00)"
    assert texts(area_of(found, "second_pass").early) == told
    assert not found.is_sound


def test_a_release_that_came_too_soon_does_not_let_the_next_step_begin(tmp_path: Path) -> None:
    found = status(
        tmp_path, *BEFORE, MESH, release("2027-06-10", "mesh", "18:00"), log("2027-06-11", "second_pass", "07:00-08:00")
    )
    assert "not released" in texts(area_of(found, "second_pass").early)


def test_a_release_of_the_same_day_without_an_hour_is_taken_for_in_time(tmp_path: Path) -> None:
    found = status(
        tmp_path, *BEFORE, MESH, release("2027-06-11", "mesh"), log("2027-06-11", "second_pass", "07:00-08:00")
    )
    assert not area_of(found, "second_pass").early


def test_a_step_that_dries_without_a_hold_point_is_waited_for_by_the_clock(tmp_path: Path) -> None:
    first = log("2027-06-12", "smoothing_1", "07:00-08:00")  # 4 h to the next coat: 12:00
    early = status(tmp_path, first, log("2027-06-12", "smoothing_2", "11:59-13:00"))
    told = "before First smoothing coat was dry (2027-06-12 12:00; 4 h, smoothing.between_hours)"
    assert told in texts(area_of(early, "smoothing_2").early)
    assert not area_of(status(tmp_path, first, log("2027-06-12", "smoothing_2", "12:00-13:00")), "smoothing_2").early


def test_hold_points_that_were_passed_over_are_named_in_the_order_of_the_work(tmp_path: Path) -> None:
    found = status(tmp_path, *BEFORE[:2], MESH)
    told = "begun 2027-06-10 07:00, with no release recorded of Flashings and terminations, Rasping and leveling"
    assert texts(area_of(found, "mesh").early) == told


def test_each_area_waits_for_its_own_release(tmp_path: Path) -> None:
    bays = [log("2027-06-10", "mesh", "07:00-09:00", area=area) for area in ("left bay", "right bay")]
    found = status(
        tmp_path,
        *BEFORE,
        *bays,
        release("2027-06-11", "mesh", "07:00", area="left bay"),
        log("2027-06-11", "second_pass", "08:00-09:00", area="left bay"),
        log("2027-06-11", "second_pass", "09:00-10:00", area="right bay"),
    )
    assert not area_of(found, "second_pass", "left bay").early
    assert "not released" in texts(area_of(found, "second_pass", "right bay").early)


def test_areas_of_other_names_wait_for_the_whole_face(tmp_path: Path) -> None:
    found = status(
        tmp_path,
        *BEFORE,
        log("2027-06-10", "mesh", "07:00-09:00", area="lift 1"),
        log("2027-06-10", "mesh", "13:00-15:00", area="lift 2"),  # dry on the 11th, 01:00
        release("2027-06-11", "mesh", "07:00"),
        log("2027-06-11", "second_pass", "06:00-09:00", area="left bay"),
        log("2027-06-11", "second_pass", "07:00-09:00", area="right bay"),
    )
    assert "released 2027-06-11 07:00" in texts(area_of(found, "second_pass", "left bay").early)
    assert not area_of(found, "second_pass", "right bay").early


def test_sealant_that_goes_before_the_gloss_waits_for_no_acceptance(tmp_path: Path) -> None:
    sealant = log("2027-06-20", "sealant", "07:00-09:00")
    first = {
        "sealants": {"S1": {"sequence": "before_gloss"}},
        "joints": {"J1": {"elevation": "E1", "kind": "eifs_to_eifs"}},
    }
    last = {**first, "sealants": {"S1": {"sequence": "after_gloss"}}}
    assert not area_of(status(tmp_path, sealant, change=first), "sealant").early
    assert "Acceptance of the finish" in texts(area_of(status(tmp_path, sealant, change=last), "sealant").early)
