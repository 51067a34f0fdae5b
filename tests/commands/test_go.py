"""`go`: the answer first, in 40 columns, with exit code and data; readings in any way in which they are written."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.running import run_main
from tests.support import SMALL, merged, written

PROJECT = merged(SMALL, {"weather": {"max_spray_wind": "8 mph"}, "elevations": {"E1": {"facing": "N"}}})
GOOD = ("--air", "62F", "--surface", "70F", "--humidity", "60", "--wind", "6mph")


def go(capsys: Any, folder: Path, *words: str, project: Any = PROJECT) -> Any:
    return run_main(capsys, "go", str(written(folder, project)), *words)


def test_a_go_is_told_in_one_screen(tmp_path: Path, capsys: Any) -> None:
    done = go(capsys, tmp_path, "--step", "gloss", *GOOD)
    assert (done.code, done.err) == (0, "")
    assert (
        done.out
        == """\
GO IF
gloss
LOOK FIRST: release of primer; forecast
  low for 24 h minimum 50 °F; gusts
  maximum 8 mph; no direct sun on the
  wall; no rain; no rain forecast for 24
  h
Dew point 47.9 °F, wall 22.1 °F above
ok air 62 °F, min. 50 °F (a)
ok wall 70 °F, min. 50 °F (a)
ok wall 70 °F, max. 90 °F (b)
ok humidity 60%, max. 85% (a)
ok above dew point 22.1 °F, min. 5 °F
   (c)
ok wind 6 mph, max. 8 mph (d)
(a) common practice, no source
(b) Unified Facilities Criteria
    3-190-06, 7.4.1, guide only
(c) Unified Facilities Criteria
    3-190-06, 9.6.6, guide only
(d) this project
Height and spray: site safety plan
  first.
"""
    )


def test_a_no_go_tells_what_fails_by_how_much_and_what_would_change_it(tmp_path: Path, capsys: Any) -> None:
    done = go(capsys, tmp_path, "--air", "62F", "--surface", "95F", "--rh", "60", "--wind", "12 mph", "--sun", "yes")
    assert done.code == 1
    lines = done.out.splitlines()
    assert lines[0] == "NO-GO"
    text = " ".join(done.out.split())
    for told in (
        "FAILS: wall 95 °F, max. 90 °F: 5 °F over (a)",
        "FAILS: wind 12 mph, max. 8 mph: 4 mph over",
        "FAILS: direct sun on wall: yes: none allowed",
        "TO GO: shade the wall until it reads 90 °F or less",
        "TO GO: wait for wind of 8 mph or less, gusts too",
        "TO GO: shade the wall, or wait for its own shade",
    ):
        assert told in text
    assert max(map(len, lines)) <= 40


# A reading that fails is told with as many places as show that it is not its limit; one that holds, with one.
@pytest.mark.parametrize(
    ("wind", "told"),
    [
        ("8.04mph", "FAILS: wind 8.04 mph, max. 8 mph"),
        ("8.004mph", "FAILS: wind 8.004 mph, max. 8 mph"),
        ("8.26mph", "FAILS: wind 8.3 mph, max. 8 mph"),
        ("7.96mph", "ok wind 8 mph, max. 8 mph"),
    ],
)
def test_a_reading_close_to_its_limit_is_told_apart_from_it(wind: str, told: str, tmp_path: Path, capsys: Any) -> None:
    given = ["--step", "gloss", *GOOD]
    given[given.index("--wind") + 1] = wind
    assert told in " ".join(go(capsys, tmp_path, *given).out.split())


def test_what_is_measured_and_not_told_is_no_go(tmp_path: Path, capsys: Any) -> None:
    done = go(capsys, tmp_path, *GOOD[:6])
    assert done.code == 1
    assert done.out.startswith("NO-GO\ngloss\nNOT TOLD: wind (add --wind 6mph)\n")


# 62 F and 70 F in the ways in which people type them.
WRITTEN = [
    ("62F", "70F"),
    ("62f", "70f"),
    ("62 °F", "70 °F"),
    ("62 deg F", "70F"),
    ("16.666666667C", "21.111111111 c"),
]


@pytest.mark.parametrize(("air", "surface"), WRITTEN)
def test_readings_are_taken_as_they_are_written(air: str, surface: str, tmp_path: Path, capsys: Any) -> None:
    words = ("--air", air, "--surface", surface, "--rh", "60%", "--wind", "6 mph", "--format", "json")
    done = go(capsys, tmp_path, *words)
    data = json.loads(done.out)
    assert (done.code, data["go"], data["fails"], data["not_told"]) == (0, False, [], [])
    # The dew point of 62 F and 60 % by a psychrometrics library is 47.9 F; see tests/weather/test_going.py.
    assert data["dew_point"] == pytest.approx(47.95, abs=0.05)
    assert data["above_dew_point"] == pytest.approx(22.05, abs=0.05)


def test_a_reading_below_zero_is_no_option(tmp_path: Path, capsys: Any) -> None:
    done = go(capsys, tmp_path, "--step", "boards", "--air", "-5C", "--surface", "-2C", "--rh", "60")
    assert done.code == 1
    assert "FAILS: air 23 °F (-5 °C), min. 40 °F: 17 °F" in " ".join(done.out.split())


def test_a_metric_project_answers_in_its_own_units(tmp_path: Path, capsys: Any) -> None:
    metric = merged(PROJECT, {"package": {"units": "si"}, "weather": {"max_spray_wind": "3 m/s"}})
    done = go(capsys, tmp_path, "--air", "17C", "--surface", "15.5C", "--rh", "80", "--wind", "4 m/s", project=metric)
    text = " ".join(done.out.split())
    # 3 C above the dew point, ISO 8502-4; the dew point of 17 C and 80 % is 13.5 C.
    assert "FAILS: above dew point 2 °C, min. 3 °C: 1 °C short" in text
    assert "FAILS: wind 4 m/s, max. 3 m/s: 1 m/s over" in text
    assert "TO GO: wait for a wall of 16.6 °C, or drier air" in text


REFUSED = [
    (("--air", "62"), "--air: '62' has no unit (write 62 F or 62 C)"),
    (("--wind", "6"), "--wind: '6' has no unit (write 6 mph or 6 m/s)"),
    (("--wind", "1048mph"), "--wind: '1048mph' is not possible (it lies from 0 mph to 120 mph)"),
    (("--rh", "0.6"), "--humidity: '0.6' may be a share"),
    (("--rh", "160"), "--humidity: '160' is not possible (it lies from 0 to 100%)"),
    (("--rain", "some"), "--rain: 'some' is neither yes nor no (write yes or no)"),
    (("--wind", "6mph", "--gust", "4mph"), "--gust lies below --wind"),
    (("--step", "glos"), "there is no step 'glos' (did you mean gloss?)"),
    (("--step", "equipment"), "the step 'equipment' has no weather limits"),
    (("--elevation", "E9"), "there is no elevation 'E9' (known: E1)"),
]


@pytest.mark.parametrize(("words", "told"), REFUSED)
def test_what_is_no_reading_is_refused_with_what_to_write(
    words: tuple[str, ...], told: str, tmp_path: Path, capsys: Any
) -> None:
    done = go(capsys, tmp_path, *words)
    assert (done.code, done.out) == (2, "")
    assert told in done.err


def test_all_readings_that_are_none_are_told_at_once(tmp_path: Path, capsys: Any) -> None:
    assert go(capsys, tmp_path, "--air", "62", "--surface", "70", "--wind", "6").err.count("\n") == 3


def test_words_of_the_trade_are_taken_for_steps_and_elevations_in_any_case(tmp_path: Path, capsys: Any) -> None:
    for said in ("topcoat", "Gloss finish", "SPRAYING"):
        done = go(capsys, tmp_path, "--step", said, "--elevation", "e1", *GOOD)
        assert done.out.startswith("GO IF\ngloss, E1\n"), said


def test_a_wall_below_the_dew_point_is_told_without_a_sign(tmp_path: Path, capsys: Any) -> None:
    # The dew point of 62 F and 60 % is 47.9 F (see above): a wall of 41.9 F lies 6 F below it.
    text = " ".join(go(capsys, tmp_path, *GOOD[:2], "--surface", "41.9F", *GOOD[4:]).out.split())
    assert "FAILS: wall 6 °F below dew point; needs 5 °F above" in text
    assert "Dew point 47.9 °F, wall 6 °F below" in text


def test_a_reading_that_the_step_has_no_limit_for_is_said_and_knots_are_taken(tmp_path: Path, capsys: Any) -> None:
    done = go(capsys, tmp_path, "--step", "smoothing_1", *GOOD[:6], "--wind", "5 kn", "--sun", "yes")
    assert "no limit of this step: wind, direct sun" in done.out
