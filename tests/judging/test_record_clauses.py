"""Clauses on the site record where many entries meet: a lapse is told once a day, and hours are real hours.

Common practice, no source; when clocks change: 15 U.S.C. 260a.
"""

from pathlib import Path
from typing import Any

from tests.support import findings_of, project_of

FACE = {"elevations": {"E1": {"wall": "W1"}}}


def places(folder: Path, change: Any, code: str) -> list[str]:
    """Where a clause fires on the entries of a project."""
    findings = findings_of(project_of(folder, FACE | change), code[:-1])
    return [place.path for found in findings if found.code == code for place in found.places]


def worked(day: str, began: str, ended: str, step: str, **more: Any) -> dict[str, Any]:
    return {"step": step, "elevation": "E1", "date": day, "started_at": began, "ended_at": ended} | more


def test_a_lapse_is_told_once_for_a_day_and_an_area(tmp_path: Path) -> None:
    log = [
        worked("2027-06-14", "08:00", "09:00", "gloss"),
        worked("2027-06-14", "10:00", "11:00", "gloss", coat=2),
        worked("2027-06-14", "12:00", "13:00", "gloss", area="left bay"),
        worked("2027-06-15", "08:00", "09:00", "gloss"),
    ]
    assert places(tmp_path, {"log": log}, "FIN-07e") == ["log.0.step", "log.2.step", "log.3.step"]


def test_boards_that_nobody_accepted_are_told_once_for_an_elevation_with_how_many_days(tmp_path: Path) -> None:
    log = [
        worked("2027-06-16", "08:00", "09:00", "mesh", elevation="E2"),
        worked("2027-06-15", "08:00", "09:00", "mesh"),
        worked("2027-06-14", "08:00", "09:00", "mesh", area="left bay"),
        worked("2027-06-14", "10:00", "11:00", "mesh", area="right bay"),
        worked("2027-06-18", "10:00", "11:00", "second_pass"),
        worked("2027-06-19", "10:00", "11:00", "smoothing_1"),
    ]
    accepted = {"step": "rasp", "elevation": "E1", "done_on": "2027-06-19", "outcome": "accepted"}
    faces = {"elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W1"}}}
    project = project_of(tmp_path, faces | {"log": log, "inspection": [accepted]})
    (finding,) = (one for one in findings_of(project, "PLN-03") if one.code == "PLN-03a")
    assert [place.path for place in finding.places] == ["log.0.step", "log.2.step"]
    assert finding.found == "mesh (site record entry 1); mesh (first of 3 days) (site record entry 3)"


def test_a_pail_or_a_reading_with_a_time_begins_no_coat(tmp_path: Path) -> None:
    coating = {"gloss": {"touch_dry_hours": 4}}
    below = worked("2027-06-14", "08:00", "09:00", "gloss", coat=1)
    second = {"step": "gloss", "elevation": "E1", "date": "2027-06-14", "started_at": "10:00", "coat": 2}
    log = [below, second | {"pail": "3", "cup_time": "30 s"}, second | {"air": "70 F"}]
    assert places(tmp_path, coating | {"log": log}, "FIN-07i") == []
    assert places(tmp_path, coating | {"log": [*log, second]}, "FIN-07i") == ["log.3.started_at"]


def test_a_night_on_which_the_clocks_change_is_counted_in_real_hours(tmp_path: Path) -> None:
    log = [
        worked("2027-03-13", "12:00", "20:00", "primer"),
        worked("2027-03-14", "08:00", "10:00", "gloss"),
    ]
    # Twelve hours by the clock, eleven by the sun.
    assert places(tmp_path, {"log": log}, "SCH-03b") == []
    zone = {"site": {"time_zone": "America/Denver"}}
    assert places(tmp_path, {"log": log} | zone, "SCH-03b") == ["log.1.started_at"]


def test_a_wait_is_held_against_the_nearest_step_that_was_done_at_the_place(tmp_path: Path) -> None:
    # The heavy mesh of this wall reaches the lower bay alone; above it the boards are what dries.
    wall = {"walls": {"W1": {"mesh": {"layers": [{"kind": "high_impact", "dry_hours": 24}, {"kind": "standard"}]}}}}
    log = [
        worked("2027-06-14", "08:00", "16:00", "boards"),
        worked("2027-06-16", "08:00", "12:00", "heavy_mesh", area="lower bay"),
        worked("2027-06-17", "08:00", "12:00", "mesh", area="lower bay"),
        worked("2027-06-17", "08:00", "12:00", "mesh", area="upper bay"),
    ]
    assert places(tmp_path, {"log": log} | wall, "SCH-03b") == ["log.2.started_at"]


def test_a_coat_is_held_against_the_one_below_it_on_its_own_panels(tmp_path: Path) -> None:
    coating = {"gloss": {"touch_dry_hours": 1}}
    log = [
        worked("2027-06-16", "07:00", "08:00", "gloss", coat=1, panels=["E1-A1"]),
        worked("2027-06-16", "08:00", "09:00", "gloss", coat=1, panels=["E1-A2"]),
        worked("2027-06-16", "09:00", "09:30", "gloss", coat=2, panels=["E1-A1"]),
        worked("2027-06-16", "09:59", "10:30", "gloss", coat=2, panels=["E1-A2"]),
    ]
    assert places(tmp_path, coating | {"log": log}, "FIN-07i") == ["log.3.started_at"]


def test_of_two_pails_the_one_with_less_water_may_have_been_the_one_sprayed(tmp_path: Path) -> None:
    # By hand: 1.2 mil / 0.36 = 3.333 mil; without water 85 % of it are 2.8 mil, with 10 % of it 3.1 mil.
    coat = {"coating": {"gloss": {"dry_film": "1.2 mil", "volume_solids": 36, "max_water": 10}}}
    pails = [
        {"step": "gloss", "elevation": "E1", "date": "2027-06-14", "pail": "3", "water": water} for water in (0, 10)
    ]
    sprayed = worked("2027-06-14", "08:00", "09:00", "gloss", wet_film="2.9 mil")
    assert places(tmp_path, coat | {"log": [*pails, sprayed]}, "FIN-17a") == []
    assert places(tmp_path, coat | {"log": [pails[1], sprayed]}, "FIN-17a") == ["log.1.wet_film"]
