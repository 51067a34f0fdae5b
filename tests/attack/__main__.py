"""Draws attempts of each class in turn until the time is over, and prints what came of them."""

import argparse
import random
import re
import sys
import tempfile
import time
from dataclasses import dataclass, field
from pathlib import Path

from tests.attack.attempt import Attempt, Ended
from tests.attack.classes import Draw, load_classes
from tests.attack.processes import Worker, run_alone
from tests.attack.scratch import keep, lay_out, take_stock
from tests.attack.verdict import find_faults

SHOWN = 2  # failures of one kind that are kept and told


@dataclass
class Tally:
    """What came of the attempts of one class; `slowest` in processor seconds, `largest` in megabytes."""

    attempts: int = 0
    refused: int = 0
    taken: int = 0
    failed: int = 0
    slowest: float = 0
    largest: float = 0
    failures: dict[str, list[str]] = field(default_factory=dict)  # how they are run again, by what was wrong


class Round:
    """One run of the tool: its seed, its folders, and one tally for each class."""

    def __init__(self, classes: dict[str, Draw], seed: int, folder: Path) -> None:
        self.classes, self.seed, self.folder = classes, seed, folder
        self.tallies = {name: Tally() for name in classes}
        self.workers = {name: Worker() for name in classes}

    def attack(self, name: str) -> None:
        """Make the next attempt of a class; the same seed and count draw the same."""
        tally = self.tallies[name]
        attempt = self.classes[name](random.Random(f"{self.seed}/{name}/{tally.attempts}"))  # noqa: S311
        job = lay_out(attempt, self.folder / "scratch" / name)
        before = take_stock(job.parent)
        ended = run_alone(attempt, job) if attempt.alone else self.workers[name].run(attempt, job)
        faults = find_faults(attempt, ended, before, take_stock(job.parent), job)
        tally.attempts += 1
        tally.refused += ended.code == 2
        tally.taken += ended.code in (0, 1)
        tally.slowest, tally.largest = max(tally.slowest, ended.seconds), max(tally.largest, ended.megabytes)
        tally.failed += bool(faults)
        if faults:
            self._note(name, attempt, ended, faults)

    def _note(self, name: str, attempt: Attempt, ended: Ended, faults: list[str]) -> None:
        """Keep an attempt that failed, up to a few of each kind."""
        tally, what = self.tallies[name], "; ".join(dict.fromkeys(faults))[:300]
        kind = tally.failures.setdefault(re.sub(r"\d+", "0", what), [])
        if len(kind) < SHOWN:
            kept = self.folder / "failures" / f"{name}-{tally.attempts}"
            kind.append(f"{attempt.about}: {what}\n      {keep(attempt, kept)}")
            (kept / "command").write_text(f"{kind[-1]}\n", "utf-8", "backslashreplace")
            (kept / "said").write_bytes(ended.out[:100_000] + ended.err[:100_000])

    def close(self) -> None:
        """End the workers."""
        for worker in self.workers.values():
            worker.close()


def report(done: Round) -> bool:
    """Print each failure and the table; returns whether there was none."""
    for name, tally in done.tallies.items():
        for shown in (line for lines in tally.failures.values() for line in lines):
            print(f"{name}: {shown}".encode("ascii", "backslashreplace").decode())
    print(f"{'class':<14}{'attempts':>9}{'refused':>9}{'taken':>9}{'failures':>9}{'slowest s':>11}{'largest MB':>12}")
    for name, tally in done.tallies.items():
        counts = "".join(f"{n:>9}" for n in (tally.attempts, tally.refused, tally.taken, tally.failed))
        print(f"{name:<14}{counts}{tally.slowest:>11.1f}{tally.largest:>12.0f}")
    return not any(tally.failed for tally in done.tallies.values())


def main() -> int:
    """Attack for so many seconds; exit code 1 where anything failed."""
    classes = load_classes()
    parser = argparse.ArgumentParser(prog="python -m tests.attack", description=__doc__)
    parser.add_argument("seconds", type=float)
    parser.add_argument("--only", choices=classes, metavar="CLASS", help=f"one of {', '.join(classes)}")
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    chosen = {asked.only: classes[asked.only]} if asked.only else classes
    folder = Path(tempfile.mkdtemp(prefix="attack-"))
    done, end = Round(chosen, asked.seed, folder), time.monotonic() + asked.seconds
    try:
        while time.monotonic() < end:
            for name in chosen:
                # Each class gets an equal share of the time, however long its attempts take.
                share = time.monotonic() + min(5, asked.seconds / len(chosen))
                while time.monotonic() < min(share, end):
                    done.attack(name)
    finally:
        done.close()
    print(f"inputs that failed are kept below {folder / 'failures'}; seed {asked.seed}")
    return 0 if report(done) else 1


if __name__ == "__main__":
    sys.exit(main())
