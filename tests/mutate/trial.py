"""Changes tried in a copy of the checkout: each by the tests nearest to it, then several together by all others.

What fails with several is run with each by itself: a change is noticed where a test fails with it alone.
"""

import os
import resource
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from tests.mutate.change import Change
from tests.mutate.failing import PLACE
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
_BY_THE_CLOCK, _OF_ALL = 8, 2
NOT_STARTED = "pytest itself, which did not start"
UNCHANGED = "tests/test_golden.py"
_PYTEST = [sys.executable, "-m", "pytest"]
_FAILING = ".failing"
_OUT_OF_TIME = (-signal.SIGXCPU, -signal.SIGKILL)
# The tests of a whole room are no nearer than those of any other.
ROOMS = ("tests/", *(f"tests/{room}" for room in LAYERS))


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
        if failed := self.run([UNCHANGED], []).failed:
            raise SystemExit(f"the unchanged checkout fails: {failed[0]}")

    def try_near(self, change: Change) -> Tried:
        """Make the change, run the tests nearest to it until one fails, and take it back."""
        with self.changed([change]):
            return Tried(change, self.first_failure(stages(change.file, self.copy)))

    def try_together(self, changes: list[Change]) -> list[Tried]:
        """Make changes of several files, run all tests, and with each change by itself those that failed."""
        with self.changed(changes):
            found = self.run(["tests"], [UNCHANGED], stops=False, patience=_OF_ALL * self.patience)
        if not found.ended and len(changes) > 1:  # what keeps tests from their end tells nothing of the others
            half = len(changes) // 2
            return [*self.try_together(changes[:half]), *self.try_together(changes[half:])]
        sound = self.list_sound(found.failed)
        return [self.try_alone(change, sound) for change in changes]

    def list_sound(self, failed: list[str]) -> list[str]:
        """Those of the tests that failed with changes which pass without any."""
        if not failed or failed == [NOT_STARTED]:
            return failed
        unsound = self.run(failed, [], stops=False).failed
        return [test for test in failed if test not in unsound]

    def try_alone(self, change: Change, places: list[str]) -> Tried:
        """Make the change, run these tests until one fails, and take it back; no places are those of no failure."""
        if not places or places == [NOT_STARTED]:
            return Tried(change, "".join(places))
        with self.changed([change]):
            return Tried(change, self.first_failure([places]))

    @contextmanager
    def changed(self, changes: list[Change]) -> Iterator[None]:
        """The checkout with changes of several files, taken back behind."""
        originals = {change.file: (self.root / change.file).read_text("utf-8") for change in changes}
        assert len(originals) == len(changes)
        try:
            for change in changes:
                self.write(change.file, change.applied_to(originals[change.file]))
            yield
        finally:
            for file, text in originals.items():
                self.write(file, text)

    def write(self, file: str, text: str) -> None:
        """Write a file with a date of its own, so that nothing compiled before passes for it."""
        self.writes += 1
        path = self.copy / file
        path.write_text(text, "utf-8")
        date = path.stat().st_mtime + 10 * self.writes
        os.utime(path, (date, date))

    def first_failure(self, groups: Iterable[list[str]]) -> str:
        """The first test that fails in groups of tests; empty where all pass in time."""
        done: list[str] = []
        for places in groups:
            fresh = [place for place in places if place not in done]
            if fresh and (failed := self.run(fresh, done).failed):
                return failed[0]
            done += fresh
        return ""

    def run(self, places: list[str], done: list[str], stops: bool = True, patience: float = 0) -> "Run":
        """The tests of some places, without those already run and those of form; it `stops` at the first failure."""
        ignored = [f"--ignore={place}" for place in (*done, *OF_FORM, *LONG) if place not in places]
        names = self.copy / _FAILING
        names.write_text("")
        first = ["-x"] if stops else ["--continue-on-collection-errors"]
        quiet = ["-q", "-n0", "--tb=no", "-p", "no:cacheprovider", "-p", "tests.mutate.failing"]
        code = self.run_in_time([*_PYTEST, *first, *quiet, *ignored, *places], patience or self.patience)
        failed = list(dict.fromkeys(names.read_text().splitlines()))
        if code in (0, 5, *_OUT_OF_TIME):
            return Run([], code not in _OUT_OF_TIME)
        return Run(failed or [NOT_STARTED], code == 1 and bool(failed))

    def run_in_time(self, command: list[str], patience: float) -> int:
        """How a command ended; it is killed when its time is up."""
        environment = os.environ | {"PYTHONPATH": str(self.copy), PLACE: str(self.copy / _FAILING)}
        away = subprocess.DEVNULL
        with subprocess.Popen(command, cwd=self.copy, env=environment, stdout=away, stderr=away) as started:
            resource.prlimit(started.pid, resource.RLIMIT_CPU, (int(patience), int(patience) + 5))
            try:
                return started.wait(patience * _BY_THE_CLOCK)
            except subprocess.TimeoutExpired:
                started.kill()
                return -signal.SIGKILL


class Run(NamedTuple):
    """The tests that failed, and whether all were run."""

    failed: list[str]
    ended: bool


def stages(file: str, root: Path) -> Iterator[list[str]]:
    """The tests nearest to a file: its own, the approved texts, those of the clauses, those of its folder."""
    parts = Path(file).with_suffix("").parts[1:]
    folder = f"tests/{'/'.join(parts[:-1])}"
    named = sorted(root.glob(f"{folder}/test_{parts[-1].strip('_')}*.py"))
    yield [str(path.relative_to(root)) for path in named]
    yield [UNCHANGED]
    if parts[:2] == ("judging", "rules"):
        yield ["tests/judging/test_clauses.py"]
    if (root / folder).is_dir() and folder not in ROOMS:
        yield [folder]


def group_by_file(changes: Iterable[Change], most: int) -> list[list[Change]]:
    """Changes in groups of at most so many, each of other files."""
    groups: list[list[Change]] = []
    for change in changes:
        for taken in groups:
            if len(taken) < most and all(one.file != change.file for one in taken):
                taken.append(change)
                break
        else:
            groups.append([change])
    return groups
