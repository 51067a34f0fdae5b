"""Ends the writing of a package at every step, and whole builds at any moment, and tells what did not stay whole.

`end_at_every_step` takes a second; `end_builds_at_random` runs as long as it is given. Each returns its failures. What
must hold: the package is the old one or the new one, a signal leaves nothing beside it, and what a kill leaves is
cleared by the next build.
"""

import os
import random
import signal
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from specgen.model.problem import Stopped
from specgen.output import disk, exchange
from specgen.output.manifest import is_spent
from tests.running import run_process, start_process, wait_for, words_of_build
from tests.support import SMALL, written

OLD, NEW = ({f"{letter}.txt": letter.encode() * size for letter in "abc"} for size in (9, 99_999))
ASKED = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
# Each signal asked for is answered in one way; each way of exchange is ended by a kill too.
WAYS = ((signal.SIGKILL, False), (signal.SIGKILL, True), (signal.SIGTERM, False), (signal.SIGINT, True))
# The calls of the system that change a disk or look at it, by their names in Python's table of audit events.
STEPS = (
    "open",
    "os.mkdir",
    "os.rename",
    "os.remove",
    "os.rmdir",
    "os.chmod",
    "os.scandir",
    "os.listdir",
    "ctypes.dlsym",
)


def end_at_every_step(folder: Path) -> list[str]:
    """Write one package over another and end before each step in turn, by a signal, by both ways of exchange.

    To be called in a process of its own: it forks, and flushes nothing to the disk.
    """
    failures = []
    os.fsync = lambda descriptor: None  # what a disk keeps of it plays no part here, and there are thousands
    for number, in_steps in WAYS:
        step, ended = -1, 0
        while ended is not None:
            step += 1
            place = folder / f"{in_steps}-{number}-{step}"
            place.mkdir(parents=True)
            ended = _write_and_end(place / "out", number, step, in_steps)
            failures += [f"{number.name}, step {step}: {said}" for said in _look(place, number, ended)]
        if step < 20:
            failures.append(f"{number.name}: only {step} steps were seen")
    return failures


def _write_and_end(out: Path, number: signal.Signals, step: int, in_steps: bool) -> int | None:
    """What a process ended with that got the signal before its n-th step; None if it had no such step."""
    disk.write_package(out, OLD, {})
    child = os.fork()
    if child == 0:
        os._exit(_write(out, number, step, in_steps))
    status = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
    return None if status == 0 else status


def _write(out: Path, number: signal.Signals, step: int, in_steps: bool) -> int:
    """In the child: 0 if the package was written without a signal, 1 if with one, 2 if it was answered."""
    for asked in ASKED:
        signal.signal(asked, signal.SIG_DFL)
    if in_steps:
        exchange._exchange_at_once = lambda one, other: False  # type: ignore[assignment]
    seen: list[str] = []
    writing = [True]

    def count(event: str, arguments: object) -> None:
        if writing and event in STEPS:
            seen.append(event)
            if len(seen) == step + 1:
                os.kill(os.getpid(), number)

    sys.addaudithook(count)
    try:
        disk.write_package(out, NEW, {})
    except Stopped:
        return 2
    writing.clear()
    return int(len(seen) > step)


def _look(place: Path, number: signal.Signals, ended: int | None) -> Iterator[str]:
    """What is wrong with a folder in which a build was ended."""
    out = place / "out"
    if ended not in (None, 1, 2, -number):
        yield f"it ended with {ended}"
    if number != signal.SIGKILL and [p.name for p in place.iterdir()] != ["out"]:
        yield f"something was left: {sorted(p.name for p in place.iterdir())}"
    if out.exists() and not _is_whole(out, (OLD, NEW)):
        yield "the package is neither the old one nor the new one"
    disk.write_package(out, NEW, {})
    if [p.name for p in place.iterdir()] != ["out"] or not _is_whole(out, (NEW,)):
        yield f"the next build left {sorted(p.name for p in place.iterdir())}"


def _is_whole(out: Path, packages: tuple[dict[str, bytes], ...]) -> bool:
    found = {p.name: p.read_bytes() for p in out.iterdir() if p.name != "manifest.json"}
    return is_spent(out) and found in packages


def end_builds_at_random(
    folder: Path, seconds: float, seed: int = 0, tell: Callable[[str], object] = print
) -> list[str]:
    """Start builds and end each at a random moment, from its first module to its last file."""
    chance, failures, count = random.Random(seed), [], 0
    for name in ("job", "at"):
        (folder / name).mkdir(parents=True)
    out = folder / "at" / "out"
    words = words_of_build(written(folder / "job", SMALL), out, "html,txt")
    command = [sys.executable, "-m", "specgen", *words]
    started = time.monotonic()
    assert run_process(command).code == 0
    beside = ["out"]
    lasts, names = time.monotonic() - started, sorted(p.name for p in out.iterdir())
    while time.monotonic() - started < seconds:
        number, delay = chance.choice((signal.SIGKILL, *ASKED)), chance.uniform(0, lasts * 1.2)
        running = start_process(command, preexec_fn=_answer_signals)
        time.sleep(delay)
        running.send_signal(number)
        code, said, err = wait_for(running)
        before, beside = beside, sorted(p.name for p in (folder / "at").iterdir())
        faults = [
            ("it ended with another code", code not in (0, -number)),
            ("it wrote to standard output", bool(said)),
            # Before our first line Python answers Ctrl-C by itself.
            ("it said more than a line", len(err.splitlines()) > 1 and "cli.py" in err),
            ("something was left", number != signal.SIGKILL and not set(beside) <= set(before)),
            ("the package is not whole", not is_spent(out) or sorted(p.name for p in out.iterdir()) != names),
        ]
        failures += [f"{number.name} after {delay:.3f} s: {what}: {beside} {err}" for what, wrong in faults if wrong]
        count += 1
    if run_process(command).code != 0 or [p.name for p in (folder / "at").iterdir()] != ["out"]:
        failures.append("the last build did not clear what was left")
    tell(f"{count} builds ended, {len(failures)} failures")
    return failures


def _answer_signals() -> None:
    """A run in the background ignores some of these from its start."""
    for number in ASKED:
        signal.signal(number, signal.SIG_DFL if number != signal.SIGINT else signal.default_int_handler)
