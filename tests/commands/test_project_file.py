"""Where a project comes from: a file as it is named, standard input, the current folder; and names that miss one."""

import io
import os
import pty
import re
import subprocess
import sys
from contextlib import chdir
from pathlib import Path
from typing import Any

import pytest

from tests.commands.support import STOPPED
from tests.running import Ended, in_checkout, run_main, run_specgen
from tests.support import SMALL, merged, written

FIRM = {"format": 1, "people": {"P1": {"name": "T. Underbough", "role": "foreman"}}}
WITH_FIRM = merged(SMALL, {"firm": "firm.yaml"})


class Sent(io.TextIOWrapper):
    """Standard input with what is sent to it."""

    def __init__(self, content: bytes) -> None:
        super().__init__(io.BytesIO(content), "utf-8")


@pytest.fixture
def send(monkeypatch: pytest.MonkeyPatch) -> Any:
    return lambda content: monkeypatch.setattr(sys, "stdin", Sent(content))


def test_a_project_by_standard_input_is_judged_as_its_file(tmp_path: Path, send: Any, capsys: Any) -> None:
    file = written(tmp_path, STOPPED, "project.yaml")
    for words in ((), ("--rule", "ATT-01"), ("--severity", "stop")):
        send(file.read_bytes())
        by_input = run_main(capsys, "check", "-", *words)
        by_name = run_main(capsys, "check", str(file), *words)
        assert by_input.code == by_name.code == 1
        told = by_input.out.replace("standard input", "project.yaml")
        # The command to type next names what was named.
        named = r"specgen check \S+"
        assert re.sub(named, "", told) == re.sub(named, "", by_name.out)


def test_its_side_files_are_those_of_the_current_folder(tmp_path: Path, send: Any, capsys: Any) -> None:
    content = written(tmp_path, WITH_FIRM, "project.yaml").read_bytes()
    written(tmp_path, FIRM, "firm.yaml")
    with chdir(tmp_path):
        send(content)
        assert run_main(capsys, "check", "-").code == 0
        (tmp_path / "firm.yaml").unlink()
        send(content)
        done = run_main(capsys, "check", "-")
    assert (done.code, done.out) == (2, "")
    assert done.err.startswith("specgen: standard input:")
    assert "firm.yaml" in done.err


def test_a_fault_is_told_with_its_line(send: Any, capsys: Any) -> None:
    send(b"format: 1\nproject:\n\tname: X\n")
    done = run_main(capsys, "check", "-")
    assert done == (
        2,
        "",
        "specgen: standard input:3:1: a tab is in the indentation (indent with spaces)\n",
    )
    send(b"")
    assert "standard input:1:1: the file is empty" in run_main(capsys, "check", "-").err
    send(b"\xff\xfe")
    assert "the file is UTF-16" in run_main(capsys, "check", "-").err


def test_no_more_is_read_than_a_file_may_hold(send: Any, capsys: Any) -> None:
    send(b"#" * 20_000_001)
    assert run_main(capsys, "check", "-").err == "specgen: standard input: the file is larger than 20 MB (split it)\n"


def test_every_command_that_reads_a_project_takes_it(tmp_path: Path, send: Any, capsys: Any) -> None:
    file = written(tmp_path, SMALL, "project.yaml")
    content, out = file.read_bytes(), str(tmp_path / "out")
    for words in (
        ("build", "-", "--out", out, "--only", "D05", "--formats", "txt"),
        ("check", "--package", out, "-"),
        ("compare", "-", str(file)),
        ("compare", out, "-"),
        ("calc", "drainage-due", "--from", "-"),
    ):
        send(content)
        done = run_main(capsys, *words)
        assert (words, done.code) == (words, 0), done
    send(content)
    # Its elevations are not given, which is told of the project and not of standard input.
    assert "the project has no elevations" in run_main(capsys, "layout", "-", "--out", out).err


def test_a_package_of_standard_input_is_that_of_its_file(tmp_path: Path, send: Any, capsys: Any) -> None:
    file = written(tmp_path, SMALL, "project.yaml")
    how = ("--only", "D05", "--formats", "txt")
    send(file.read_bytes())
    assert run_main(capsys, "build", "-", "--out", str(tmp_path / "a"), *how).code == 0
    assert run_main(capsys, "build", str(file), "--out", str(tmp_path / "b"), *how).code == 0
    made = [{one.name: one.read_bytes() for one in (tmp_path / name).iterdir()} for name in "ab"]
    manifests = [one.pop("manifest.json") for one in made]
    assert made[0] == made[1]
    assert b'"file": "standard input"' in manifests[0] and b'"file": "project.yaml"' in manifests[1]


def test_two_projects_cannot_both_be_sent(capsys: Any) -> None:
    done = run_main(capsys, "compare", "-", "-")
    assert (done.code, done.err) == (2, "specgen: standard input is read once (name a file for one of the two)\n")


def test_what_is_no_project_is_not_read_from_there(tmp_path: Path, capsys: Any) -> None:
    told = "specgen: - stands for standard input, and only a project is read from there (give the name of a file)\n"
    file = str(written(tmp_path, SMALL))
    for words in (("new", "-"), ("build", file, "--out", str(tmp_path / "out"), "--letterhead", "-")):
        assert run_main(capsys, *words) == (2, "", told)


def test_a_file_that_is_called_so_is_named_with_its_folder(tmp_path: Path, capsys: Any) -> None:
    written(tmp_path, SMALL, "-")
    with chdir(tmp_path):
        assert run_main(capsys, "check", "./-").code == 0


@pytest.mark.no_cover
@pytest.mark.skipif(os.name != "posix", reason="a terminal of a POSIX system")
def test_a_terminal_is_not_waited_for() -> None:
    mine, theirs = pty.openpty()
    done = subprocess.run(
        [sys.executable, "-m", "specgen", "check", "-"], stdin=theirs, capture_output=True, text=True, **in_checkout()
    )
    os.close(mine)
    os.close(theirs)
    assert Ended(done.returncode, done.stdout, done.stderr) == (
        2,
        "",
        "specgen: standard input: - reads what is sent to this command (write ... | specgen, or < FILE)\n",
    )


@pytest.mark.no_cover
def test_a_closed_input_is_an_empty_file() -> None:
    done = run_specgen("check", "-", stdin=subprocess.DEVNULL)
    assert (done.code, done.out) == (2, "")
    assert "standard input:1:1: the file is empty" in done.err


def test_without_a_name_the_project_of_the_folder_is_meant(tmp_path: Path, capsys: Any) -> None:
    written(tmp_path, STOPPED, "project.yaml")
    with chdir(tmp_path):
        assert run_main(capsys, "check") == run_main(capsys, "check", "project.yaml")
        done = run_main(capsys, "build", "--out", "out", "--draft", "--only", "D05", "--formats", "txt")
        assert done.code == 1
        assert (tmp_path / "out").is_dir()
        assert "no elevations" in run_main(capsys, "layout", "--out", "out2").err


@pytest.mark.parametrize(
    ("there", "name", "hint"),
    [
        (["project.yaml", "firm.yaml"], "projct.yaml", "did you mean project.yaml?"),
        (["project.yaml"], "Project.yml", "did you mean project.yaml?"),
        (["clinic.yaml"], "none.yaml", "the folder holds clinic.yaml"),
        ([f"{n}.yaml" for n in "abcd"], "none.yaml", "the folder holds a.yaml, b.yaml, c.yaml, ..."),
        ([], "none.yaml", "check name and folder"),
    ],
)
def test_a_file_that_is_not_there_offers_the_names_that_are(
    there: list[str], name: str, hint: str, tmp_path: Path, capsys: Any
) -> None:
    for one in there:
        written(tmp_path, SMALL, one)
    told = f"specgen: {name}: the file cannot be read: No such file or directory ({hint})\n"
    with chdir(tmp_path):
        for words in (("check", name), ("build", name, "--out", "out"), ("calc", "joint-width", "--from", name)):
            assert run_main(capsys, *words) == (2, "", told)
        # None of them is taken in its place without a word.
        missed = run_main(capsys, "check") if "project.yaml" not in there else None
    assert missed is None or missed.err.startswith("specgen: FILE must be given: there is no project.yaml")


def test_files_are_named_as_they_were_typed(tmp_path: Path, capsys: Any) -> None:
    (tmp_path / "jobs").mkdir()
    written(tmp_path / "jobs", WITH_FIRM, "a.yaml")
    written(tmp_path / "jobs", merged(FIRM, {"people": {"P1": {"rank": "x"}}}), "firm.yaml")
    with chdir(tmp_path):
        done = run_main(capsys, "check", "jobs/a.yaml")
        assert done.err.startswith("specgen: jobs/firm.yaml:")
        assert run_main(capsys, "build", "jobs/a.yaml", "--out", "out").err == done.err
        missed = run_main(capsys, "check", "jobs/b.yaml").err
    assert missed.startswith("specgen: jobs/b.yaml: the file cannot be read: ")
    assert missed.endswith(" (the folder holds jobs/a.yaml, jobs/firm.yaml)\n")
