"""One change tried in a copy of the checkout: the tests nearest to it first, then those of the rooms that use it."""

import os
import resource
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from tests.mutate.change import Change
from tests.test_architecture import LAYERS

LEFT_OUT = shutil.ignore_patterns(".git", ".venv", "__pycache__", ".*_cache", ".hypothesis")
# What asks how the code is written and not what it does notices nothing here.
OF_FORM = ("tests/test_style.py", "tests/test_architecture.py")
# What asks for bounds, growth, streams and disk, or draws at random, runs long: it meets the file it is named after.
LONG = (
    "tests/formats/docx/test_valid.py",
    "tests/formats/test_html_pages.py",
    "tests/documents/test_template_bounds.py",
    "tests/judging/test_better_and_worse.py",
    "tests/output/test_disk_process.py",
    "tests/output/test_interrupting.py",
    "tests/output/test_same_bytes.py",
    "tests/reading/test_bounds.py",
    "tests/reading/test_hostile.py",
    "tests/test_growth.py",
    "tests/test_streams.py",
)
# Processor time of the tests of a stage: what none has noticed by then counts as unnoticed, so that the share told is
# the least it can be, however busy the machine is. A test that waits forever is ended by the clock.
LONGEST_S = 900
_BY_THE_CLOCK = 8
UNCHANGED = "tests/test_golden.py"
_OUT_OF_TIME = (-signal.SIGXCPU, -signal.SIGKILL)


class Tried(NamedTuple):
    """A change, and the test that noticed it: empty where none did."""

    change: Change
    noticed_by: str


class Checkout:
    """A copy in which changes are tried one after the other."""

    def __init__(self, root: Path, copy: Path, patience: float = LONGEST_S) -> None:
        self.root = root
        self.copy = copy
        self.patience = patience  # seconds of processor time for the tests of a stage
        self.writes = 0
        shutil.copytree(root, copy, ignore=LEFT_OUT)

    def prove(self) -> None:
        """Run some tests before any change; raises where they fail, for every change would seem noticed."""
        if failed := self.run([UNCHANGED], []):
            raise SystemExit(f"the unchanged checkout fails: {failed}")

    def try_out(self, change: Change) -> Tried:
        """Make the change, run the tests until one fails, and take it back."""
        self.write(change.file, change.applied_to((self.root / change.file).read_text("utf-8")))
        try:
            return Tried(change, self.first_failure(change))
        finally:
            self.write(change.file, (self.root / change.file).read_text("utf-8"))

    def write(self, file: str, text: str) -> None:
        """Write a file with a date of its own, so that nothing compiled before passes for it."""
        self.writes += 1
        path = self.copy / file
        path.write_text(text, "utf-8")
        date = path.stat().st_mtime + 10 * self.writes
        os.utime(path, (date, date))

    def first_failure(self, change: Change) -> str:
        """The first test that fails; empty where all pass."""
        done: list[str] = []
        for stage in stages(change.file, self.copy):
            fresh = [place for place in stage if place not in done]
            if fresh and (failed := self.run(fresh, done)):
                return failed
            done += fresh
        return ""

    def run(self, places: list[str], done: list[str]) -> str:
        """The first failure among the tests of some places, those already run and those of form left out.

        Empty where none fails in time.
        """
        ignored = [f"--ignore={place}" for place in (*done, *OF_FORM, *LONG) if place not in places]
        command = [
            sys.executable,
            "-m",
            "pytest",
            "-x",
            "-q",
            "-n0",
            "--tb=no",
            "-p",
            "no:cacheprovider",
            *ignored,
            *places,
        ]
        code, told = self.run_in_time(command)
        if code in (0, 5, *_OUT_OF_TIME):
            return ""
        lines = [line for line in told.splitlines() if line.startswith(("FAILED", "ERROR"))]
        return lines[0].split(" - ")[0] if lines else "pytest itself, which did not start"

    def run_in_time(self, command: list[str]) -> tuple[int, str]:
        """How a command ended and what it said; it is killed when its time is up."""
        environment = os.environ | {"PYTHONPATH": str(self.copy)}
        with subprocess.Popen(command, cwd=self.copy, env=environment, stdout=subprocess.PIPE, text=True) as started:
            resource.prlimit(started.pid, resource.RLIMIT_CPU, (int(self.patience), int(self.patience) + 5))
            try:
                told, _ = started.communicate(timeout=self.patience * _BY_THE_CLOCK)
            except subprocess.TimeoutExpired:
                started.kill()
                return -signal.SIGKILL, ""
        return started.returncode, told


def stages(file: str, root: Path) -> Iterator[list[str]]:
    """The tests of a file: its own, the approved texts, those of the clauses, of its folder, its room, those above."""
    parts = Path(file).with_suffix("").parts[1:]
    own = [f"tests/{'/'.join(parts[:-1])}", f"tests/{'/'.join(parts[:1])}"]
    named = sorted(root.glob(f"{own[0]}/test_{parts[-1].strip('_')}*.py"))
    yield [str(path.relative_to(root)) for path in named]
    yield ["tests/test_golden.py"]
    if parts[:2] == ("judging", "rules"):
        yield ["tests/judging/test_clauses.py"]
    yield [place for place in own if (root / place).is_dir() and place != "tests/"]
    # What a change does is seen in the rooms above its own.
    above = LAYERS[LAYERS.index(parts[0]) + 1 :] if parts[0] in LAYERS else LAYERS[LAYERS.index("documents") :]
    yield [f"tests/{room}" for room in above if (root / "tests" / room).is_dir()]
    yield list_without_bounds(root, root.glob("tests/test_*.py"))
    # The tests of the rooms below see a room above where they run the command.
    yield list_without_bounds(
        root, (path for path in root.glob("tests/*/**/test_*.py") if "run_main" in path.read_text())
    )


def list_without_bounds(root: Path, files: Iterable[Path]) -> list[str]:
    """Files of tests from the checkout on, in their order, without those of form and those that run long."""
    every = sorted(str(path.relative_to(root)) for path in files)
    return [place for place in every if place not in (*OF_FORM, *LONG)]
