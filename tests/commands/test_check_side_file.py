"""`check` of a side file by itself, as a firm does that keeps one from job to job."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.running import run_main
from tests.support import EXAMPLES, SMALL, merged, written

FIRM = """\
format: 1
people:
  P1: {name: A. Reed, role: project_manager}
"""
# Nobody's employer; no guns, compressor, hoses, tank, instruments, and programs.
OPEN = [
    "guns",
    "compressor.air_flow",
    "compressor.at_pressure",
    "compressor.rating_basis",
    "compressor.engine_derate",
    "compressor.dryer",
    "compressor.filter",
    "hoses",
    "tank.volume",
    "tank.lined",
    "tank.relief_valve",
    "tank.regulators",
    "instruments",
    "people.P1.employer",
    "safety.respirator_program",
    "safety.silica_plan",
    "safety.hazcom",
]


def test_a_firm_file_is_told_in_a_line_with_what_is_open_and_what_comes_next(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, FIRM, "firm.yaml")
    done = run_main(capsys, "check", str(file))
    assert (done.code, done.err) == (0, "")
    lines = done.out.splitlines()
    assert lines[0] == f"firm.yaml: a firm file; no faults; 2 fields given, {len(OPEN)} open"
    assert [line.split(":")[0].strip() for line in lines if line.startswith("  ")] == OPEN
    assert lines[-1] == "No project file beside it names it. Next: write `firm: firm.yaml` in one, then check that."


@pytest.mark.parametrize("name", ["firm.yaml", "'firm.yaml'"])
def test_the_projects_that_name_it_are_told(name: str, tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, FIRM, "firm.yaml")
    written(tmp_path, f"format: 1\nfirm: {name}  # ours\n", "one.yaml")
    written(tmp_path, merged(SMALL, {"firm": "old-firm.yaml"}), "other.yaml")
    done = run_main(capsys, "check", str(file))
    one = tmp_path / "one.yaml"
    assert done.out.splitlines()[-1] == f"Named by {one}. Next: specgen check {one}"


@pytest.mark.parametrize(("name", "word"), [("firm", "firm"), ("coating-system", "coating system")])
def test_the_side_files_of_the_example_have_no_faults(name: str, word: str, capsys: Any) -> None:
    done = run_main(capsys, "check", str(EXAMPLES / "clean" / f"{name}.yaml"))
    assert (done.code, done.err) == (0, "")
    assert done.out.startswith(f"{name}.yaml: a {word} file; no faults; ")
    assert " 0 open\n" in done.out
    assert f"Named by {EXAMPLES / 'clean' / 'project.yaml'}." in done.out


def test_a_record_file_is_known_too(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, {"log": [{"date": "2027-06-15", "elevation": "E1"}]}, "week.yaml")
    done = run_main(capsys, "check", str(file))
    assert done.code == 0
    assert done.out.startswith("week.yaml: a record file; no faults; 2 fields given, ")
    assert "  log.0.elevation: E1" in done.out


def test_the_data_keep_their_shape(tmp_path: Path, capsys: Any) -> None:
    side = json.loads(run_main(capsys, "check", str(written(tmp_path, FIRM, "firm.yaml")), "--format", "json").out)
    whole = json.loads(run_main(capsys, "check", str(written(tmp_path, SMALL)), "--format", "json").out)
    assert side.keys() == whole.keys()
    assert [item["path"] for item in side["open"]] == OPEN
    assert side["open"][0].keys() == whole["open"][0].keys()
    assert (side["errors"], side["counts"]["open"], side["project"]) == ([], len(OPEN), None)


def test_its_faults_are_told_by_file_and_line_in_both_forms(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, FIRM + "  P2: {role: sprayr}\n", "firm.yaml")
    done = run_main(capsys, "check", str(file))
    assert (done.code, done.out) == (2, "")
    assert done.err.startswith(f"specgen: {file}:4:8: people.P2.role: 'sprayr' is not a choice for this field")
    told = json.loads(run_main(capsys, "check", str(file), "--format", "json").out)["errors"]
    assert [(one["file"], one["line"]) for one in told] == [(str(file), 4)]


@pytest.mark.parametrize(
    "words", [("build", "firm.yaml", "--out", "out"), ("calc", "joint-width", "--from", "firm.yaml")]
)
def test_other_commands_say_that_it_is_no_project(
    words: tuple[str, ...], tmp_path: Path, capsys: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    written(tmp_path, FIRM, "firm.yaml")
    done = run_main(capsys, *words)
    assert (done.code, done.out) == (2, "")
    assert "this is a firm file, not a project file" in done.err
    assert [path.name for path in tmp_path.iterdir()] == ["firm.yaml"]
