"""`check --watch`: one check for each time that a project or a file that it names was saved; no clock is waited for."""

import os
import signal
import sys
from argparse import Namespace
from collections.abc import Callable, Iterator
from contextlib import chdir
from pathlib import Path
from typing import Any

import pytest

from specgen.commands import Outcome
from specgen.commands._watch import watch_project
from specgen.commands.check import run
from specgen.model.problem import Refused
from tests.commands.support import STOPPED
from tests.running import run_main, start_process
from tests.support import SMALL, merged, written

pytestmark = pytest.mark.no_cover
FIRM = {"format": 1, "people": {"P1": {"name": "T. Underbough", "role": "foreman"}}}


def watched(folder: Path, name: str, steps: list[Callable[[], object]]) -> list[Outcome]:
    """What is shown, the end included, when between two looks at the files these steps are taken; then Ctrl-C."""
    shown: list[Outcome] = []
    coming: Iterator[Callable[[], object]] = iter(steps)

    def wait() -> None:
        step = next(coming, None)
        if step is None:
            raise KeyboardInterrupt
        step()

    args = Namespace(
        files=[name] if name else [],
        package=None,
        rule=None,
        severity=None,
        format="text",
        quiet=False,
        show=shown.append,
    )
    for option, usual in (("watch", False), ("open", None), ("color", "never"), ("verbose", False)):
        setattr(args, option, usual)
    with chdir(folder):
        shown.append(watch_project(args, run, wait))
    return shown


def rest() -> None:
    """Leave the files alone for one look."""


def save(file: Path, content: str) -> Callable[[], object]:
    def write() -> None:
        file.write_text(content, "utf-8")
        # Each save has a time of its own, however fast they follow.
        save.count = getattr(save, "count", 0) + 1  # type: ignore[attr-defined]
        os.utime(file, ns=(save.count * 10**9, save.count * 10**9))  # type: ignore[attr-defined]

    return write


def test_each_save_is_checked_once_and_the_last_check_gives_the_code(tmp_path: Path) -> None:
    file = written(tmp_path, SMALL, "project.yaml")
    stops = written(tmp_path, STOPPED, "stops.yaml").read_text("utf-8")
    shown = watched(tmp_path, "project.yaml", [rest, rest, save(file, stops), rest, rest])
    assert [one.code for one in shown] == [0, 1, 1]
    first, second, end = shown
    assert first.messages[-1] == "checked; watching project.yaml until Ctrl-C"
    assert second.messages[-1] == "project.yaml changed, checked again; watching project.yaml until Ctrl-C"
    assert "ATT-01a" in second.text and "ATT-01a" not in first.text
    assert second.text.startswith("-" * 72 + "\nPackage: ") and first.text.startswith("Package: ")
    assert end == Outcome(1)


def test_a_file_that_is_emptied_before_it_is_written_is_checked_when_it_is_whole(tmp_path: Path) -> None:
    file = written(tmp_path, SMALL, "project.yaml")
    whole = file.read_text("utf-8") + "# a word\n"
    shown = watched(tmp_path, "project.yaml", [save(file, ""), save(file, whole), rest, rest])
    assert [one.code for one in shown] == [0, 0, 0]


def test_a_file_that_the_project_names_is_watched_too(tmp_path: Path) -> None:
    firm = written(tmp_path, FIRM, "firm.yaml")
    written(tmp_path, merged(SMALL, {"firm": "firm.yaml"}), "project.yaml")
    broken = firm.read_text("utf-8").replace("people", "poeple")
    shown = watched(tmp_path, "project.yaml", [save(firm, broken), rest, firm.unlink, rest])
    assert [one.code for one in shown] == [0, 2, 2, 2]
    assert shown[0].messages[-1] == "checked; watching project.yaml, firm.yaml until Ctrl-C"
    assert shown[1].messages[-1].startswith("firm.yaml changed, checked again;")
    assert [problem.file for problem in shown[1].problems] == ["firm.yaml"]


def test_a_project_that_begins_to_name_a_file_has_it_watched(tmp_path: Path) -> None:
    file = written(tmp_path, SMALL, "project.yaml")
    firm = written(tmp_path, FIRM, "firm.yaml")
    named = written(tmp_path, merged(SMALL, {"firm": "firm.yaml"}), "other.yaml").read_text("utf-8")
    steps = [save(file, named), rest, save(firm, "people: ["), rest]
    shown = watched(tmp_path, "project.yaml", steps)
    assert [one.code for one in shown] == [0, 0, 2, 2]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("a.yaml", "b.yaml"), "--watch tells of one project"),
        (("--package", "out"), "--watch tells of one project"),
        (("-",), "standard input is read once"),
        ((".",), "--watch tells of one project"),
    ],
)
def test_what_cannot_be_watched_is_refused(words: tuple[str, ...], told: str, capsys: Any) -> None:
    done = run_main(capsys, "check", "--watch", *words)
    assert (done.code, done.out) == (2, "")
    assert told in done.err


def test_a_watch_without_a_file_takes_that_of_the_folder(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="there is no project.yaml in this folder"):
        watched(tmp_path, "", [])
    written(tmp_path, SMALL, "project.yaml")
    assert [one.code for one in watched(tmp_path, "", [])] == [0, 0]


@pytest.mark.skipif(os.name != "posix", reason="signals of a POSIX system")
def test_the_interrupt_of_a_terminal_ends_it_with_the_code_of_the_check(tmp_path: Path) -> None:
    file = written(tmp_path, STOPPED, "stops.yaml")
    running = start_process([sys.executable, "-m", "specgen", "check", "--watch", str(file)])
    assert running.stderr is not None and running.stdout is not None
    assert "watching" in running.stderr.readline()  # the first check is shown
    running.send_signal(signal.SIGINT)
    assert "ATT-01a" in running.stdout.read()
    assert (running.stderr.read(), running.wait()) == ("", 1)
