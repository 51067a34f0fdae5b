"""What a terminal shows while something is done: one line from the second second on, gone at the end. Rules of ours."""

import io
import os
import pty
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from specgen.terminal.progress import ProgressLine
from tests.documents.figures.faces import FACE, JOINTS, LIMITS
from tests.running import in_checkout, run_python
from tests.support import SMALL, merged, written

pytestmark = pytest.mark.no_cover
# A command as it is, save that no second is waited for before it tells of its progress.
AT_ONCE = """
import sys
from specgen.terminal import progress
progress.AFTER = 0
from specgen.cli import main
sys.exit(main(sys.argv[1:]))
"""


def screen(written_to: str) -> list[str]:
    """The lines of a terminal once all is written: what stands behind a return stands over what was before it."""
    lines = []
    for line in written_to.replace("\r\n", "\n").split("\n"):
        cells = ""
        for part in line.split("\r"):
            cells = part + cells[len(part) :]
        lines.append(cells.rstrip())
    return lines


def run_on_terminal(*words: str, **how: Any) -> tuple[int, str, str]:
    """The exit code of a command of which the messages go to a terminal, its result, and all that was written there."""
    mine, theirs = pty.openpty()
    running = subprocess.Popen(
        [sys.executable, "-c", AT_ONCE, *words],
        stdout=subprocess.PIPE,
        stderr=theirs,
        text=True,
        **(in_checkout() | how),
    )
    os.close(theirs)
    told = b""
    try:
        while part := os.read(mine, 65536):
            told += part
    except OSError:  # how a terminal ends whose last writer has left
        pass
    os.close(mine)
    assert running.stdout is not None
    return running.wait(), running.stdout.read(), told.decode()


def test_nothing_is_told_within_the_first_second_and_one_line_after_it() -> None:
    terminal, now = io.StringIO(), [0.0]
    line = ProgressLine(terminal, lambda: now[0])
    line.tell("composing the documents")
    now[0] = 0.9
    line.draw()
    assert terminal.getvalue() == ""
    now[0] = 1.2
    line.draw()
    now[0] = 3.0
    line.tell("writing pdf")
    assert screen(terminal.getvalue()) == ["specgen: writing pdf, 3 s"]
    line.erase()
    assert screen(terminal.getvalue()) == [""]
    assert "\n" not in terminal.getvalue()


def test_a_line_that_was_never_shown_is_not_erased() -> None:
    terminal = io.StringIO()
    line = ProgressLine(terminal, lambda: 0.0)
    line.tell("composing the documents")
    line.erase()
    assert terminal.getvalue() == ""


def test_a_line_is_no_wider_than_the_terminal_and_steers_nothing() -> None:
    terminal, now = io.StringIO(), [0.0]
    line = ProgressLine(terminal, lambda: now[0])
    now[0] = 2.0
    line.tell("judging " + "x" * 200 + "\x1b[2J")
    assert len(screen(terminal.getvalue())[0]) == 79
    line.tell("judging \x1b[2J\n")
    assert "\x1b" not in terminal.getvalue() and "\n" not in terminal.getvalue()


@pytest.mark.skipif(os.name != "posix", reason="a terminal of a POSIX system")
def test_a_build_tells_its_steps_on_a_terminal_and_leaves_only_its_messages(tmp_path: Path) -> None:
    written(tmp_path, SMALL, "project.yaml")
    words = ("build", "-o", "out", "--only", "D05", "--formats", "txt,html")
    code, result, told = run_on_terminal(*words, cwd=tmp_path)
    assert (code, result) == (0, "")
    steps = re.findall(r"\rspecgen: ([^\r]*), \d+ s", told)
    assert list(dict.fromkeys(steps)) == [
        "judging project.yaml",
        "composing the documents",
        "writing txt",
        "writing html",
        "writing 3 files to out",
    ]
    left = [line for line in screen(told) if line]
    assert left[:-1] == ["specgen: wrote 3 files to out"]
    assert re.match(r"specgen: \d+ documents still required; \d+ rules on the walls not evaluated; ", left[-1])
    assert left[-1].endswith("; every page is marked as a draft")


@pytest.mark.skipif(os.name != "posix", reason="a terminal of a POSIX system")
def test_many_projects_tell_how_many_are_done(tmp_path: Path) -> None:
    for name in ("a.yaml", "b.yaml"):
        written(tmp_path, SMALL, name)
    code, result, told = run_on_terminal("check", str(tmp_path))
    assert code == 0 and "2 projects" in result
    assert re.findall(r"checked \d of 2 projects", told) == ["checked 1 of 2 projects", "checked 2 of 2 projects"]
    assert [line for line in screen(told) if line] == []


@pytest.mark.skipif(os.name != "posix", reason="a terminal of a POSIX system")
def test_a_layout_tells_its_elevations(tmp_path: Path) -> None:
    drawn = merged(SMALL, {"panel_limits": LIMITS, "elevations": {"E1": FACE}, "joints": JOINTS})
    file = str(written(tmp_path, drawn))
    code, _, told = run_on_terminal("layout", file, "--out", str(tmp_path / "out"))
    assert (code, re.findall(r"laying out (\w+)", told)) == (0, ["E1"])
    assert not any("laying out" in line for line in screen(told))


@pytest.mark.skipif(os.name != "posix", reason="a terminal of a POSIX system")
def test_quiet_and_what_is_no_terminal_are_told_of_no_progress(tmp_path: Path) -> None:
    words = ("build", str(written(tmp_path, SMALL)), "--only", "D05", "--formats", "txt")
    assert run_on_terminal(*words, "--out", str(tmp_path / "a"), "--quiet") == (0, "", "")
    done = run_python(AT_ONCE, *words, "--out", str(tmp_path / "b"))
    assert (done.code, "\r" in done.err, "composing" in done.err) == (0, False, False)
