"""`status`: where the work stands by a record in files, and what is refused."""

import json
from pathlib import Path
from typing import Any

import pytest

from specgen.terminal.status_data import KEYS, PANEL_KEYS
from tests.documents.figures.faces import FACE, JOINTS, LIMITS
from tests.recording.records import JOB
from tests.running import run_main
from tests.support import SMALL, merged, written

PROJECT = merged(
    merged(SMALL, JOB),
    {
        "panel_limits": LIMITS,
        "elevations": {"E1": FACE, "E2": "drop"},
        "joints": JOINTS,
        "crews": {"red": {"steps": ["gloss"]}},
    },
)
FIRST = {
    "log": [
        {
            "date": "2027-06-14",
            "elevation": "E1",
            "step": "primer",
            "panels": ["E1-A1"],
            "started_at": "07:00",
            "ended_at": "09:00",
        },
        {"date": "2027-06-14", "elevation": "E1", "started_at": "06:30", "air": "61 F"},
    ],
    "inspection": [
        {"step": step, "elevation": "E1", "done_on": "2027-06-01", "outcome": "accepted", "by": "P. Line"}
        for step in ("substrate", "mockup", "flashings", "rasp")
    ],
    "release": [
        {"step": step, "elevation": "E1", "date": "2027-06-12", "time": "07:00", "hours_dry": 30, "by": "P. Line"}
        for step in ("mesh", "second_pass", "smoothing_2")
    ],
}
SECOND = {
    "log": [
        {
            "date": "2027-06-16",
            "elevation": "E1",
            "step": "gloss",
            "coat": 1,
            "panels": ["E1-A1"],
            "started_at": "07:00",
            "ended_at": "08:00",
        }
    ],
    "release": [{"step": "primer", "elevation": "E1", "date": "2027-06-15", "time": "07:00", "by": "P. Line"}],
}


def tell(capsys: Any, folder: Path, *more: str, project: Any = PROJECT, logs: tuple[Any, ...] = (FIRST, SECOND)) -> Any:
    files = [str(written(folder, log, f"log{number}.yaml")) for number, log in enumerate(logs)]
    return run_main(capsys, "status", str(written(folder, project)), *files, *more)


def data_of(capsys: Any, folder: Path, *more: str, **how: Any) -> dict[str, Any]:
    done = tell(capsys, folder, *more, "--format", "json", **how)
    made: dict[str, Any] = json.loads(done.out)
    return made


def test_entries_of_two_files_are_told_together(tmp_path: Path, capsys: Any) -> None:
    steps = {step["step"]: step for step in data_of(capsys, tmp_path)["elevations"][0]["steps"]}
    assert steps["release_primer"]["areas"][0]["released"] == "2027-06-15T07:00"
    assert steps["gloss"]["areas"][0]["coats"] == 1
    turned = data_of(capsys, tmp_path, logs=(SECOND, FIRST))
    states = [[step["state"] for step in one["elevations"][0]["steps"]] for one in (turned, data_of(capsys, tmp_path))]
    assert states[0] == states[1]


def test_the_moment_is_that_of_the_last_entry_or_the_one_asked_about(tmp_path: Path, capsys: Any) -> None:
    assert data_of(capsys, tmp_path)["at"] == "2027-06-16T08:00"
    assert data_of(capsys, tmp_path, "--at", "2027-06-14T10:00")["at"] == "2027-06-14T10:00"
    assert data_of(capsys, tmp_path, "--at", "2027-06-14")["at"] == "2027-06-14T23:59"


def test_the_exit_code_tells_whether_anything_failed(tmp_path: Path, capsys: Any) -> None:
    assert tell(capsys, tmp_path, logs=()).code == 0
    refused = {"inspection": [{**FIRST["inspection"][0], "outcome": "refused"}]}
    assert tell(capsys, tmp_path, logs=(refused,)).code == 1
    assert tell(capsys, tmp_path, "--at", "2027-05-01", logs=(refused,)).code == 0


def test_one_elevation_and_one_panel_are_told_by_themselves(tmp_path: Path, capsys: Any) -> None:
    face = tell(capsys, tmp_path, "--elevation", "E1")
    assert "Tinted primer: under way\n" in face.out
    panel = tell(capsys, tmp_path, "--panel", "E1-A1")
    assert "Tinted primer: 2027-06-14 07:00 to 09:00\n" in panel.out
    assert "06:30 air 61 °F (16.1 °C)\n" in panel.out
    assert "2027-06-15 07:00 release of primer by P. Line" in panel.out
    other = tell(capsys, tmp_path, "--panel", "E1-A2")
    assert (other.code, other.out) == (0, "Panel E1-A2 of E1, until 2027-06-16 08:00\nNo entry names this panel.\n")


def test_a_panel_that_the_log_alone_knows_is_told_with_a_word_on_the_layout(tmp_path: Path, capsys: Any) -> None:
    odd = merged(FIRST, {"log": [{**FIRST["log"][0], "panels": ["E1-Z9"]}]})
    told = tell(capsys, tmp_path, "--panel", "E1-Z9", logs=(odd,))
    assert "The layout of the elevation has no panel of this mark.\n" in told.out


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("--elevation", "E11"), "there is no elevation 'E11' (did you mean E1?)"),
        (("--panel", "E1-A01"), "there is no panel 'E1-A01' (did you mean E1-A1?)"),
        (
            ("--at", "2027-06-15T10:00Z"),
            "--at: '2027-06-15T10:00Z' has an offset from UTC (write the local time, 2027-06-15T10:00)",
        ),
        (("--at", "2027-02-29"), "--at: '2027-02-29' is not a day (write year-month-day, such as 2027-06-15)"),
    ],
)
def test_what_is_not_there_is_refused_with_what_is(
    tmp_path: Path, capsys: Any, words: tuple[str, ...], message: str
) -> None:
    done = tell(capsys, tmp_path, *words)
    assert (done.code, done.out, done.err) == (2, "", f"specgen: {message}\n")


def test_a_refusal_is_data_where_data_are_asked_for(tmp_path: Path, capsys: Any) -> None:
    made = data_of(capsys, tmp_path, "--elevation", "E11")
    assert made["errors"][0]["message"] == "there is no elevation 'E11'"
    assert made["elevations"] == []


def list_keys(data: Any) -> set[str]:
    if isinstance(data, dict):
        return set(data) | {key for value in data.values() for key in list_keys(value)}
    return {key for value in data for key in list_keys(value)} if isinstance(data, list) else set()


def test_each_key_of_the_data_is_told_in_the_help(tmp_path: Path, capsys: Any) -> None:
    told = set(KEYS.replace(";", ",").replace(":", ",").replace(" ", "").split(","))
    assert list_keys(data_of(capsys, tmp_path)) <= told
    made = data_of(capsys, tmp_path, "--panel", "E1-A1")
    assert set(made) | set(made["passes"][0]) <= set(
        PANEL_KEYS.replace(";", ",").replace(":", ",").replace(" ", "").split(",")
    )


def test_an_empty_record_is_told_as_one(tmp_path: Path, capsys: Any) -> None:
    done = tell(capsys, tmp_path, logs=())
    assert done.out.startswith("Nothing is recorded.\n")
    assert run_main(capsys, "status", str(written(tmp_path, SMALL))).out == (
        "Nothing is recorded.\nThe project has no elevations: give them under elevations.\n"
    )
