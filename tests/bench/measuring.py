"""How a run is timed, and how its ratio is told."""

import gc
import resource
import subprocess
import time
from collections.abc import Callable


def seconds(work: Callable[[], object], times: int = 5) -> float:
    """The least processor time of several runs, in seconds."""
    best = float("inf")
    for _ in range(times):
        gc.collect()
        start = time.process_time()
        work()
        best = min(best, time.process_time() - start)
    return best


def process(*command: str, times: int = 7) -> float:
    """The least processor time of a whole process, in seconds."""
    best = float("inf")
    for _ in range(times):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)  # noqa: S603
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        best = min(best, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return best


def peak(*command: str) -> int:
    """The most memory a process held, in bytes; it is started alone, so that no other counts."""
    script = (
        "import resource, subprocess, sys; subprocess.run(sys.argv[1:], check=True, stdout=subprocess.DEVNULL);"
        "print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)"
    )
    done = subprocess.run(  # noqa: S603
        [command[0], "-c", script, *command], check=True, capture_output=True, text=True
    )
    return int(done.stdout) * 1024


def at_most(what: str, ratio: float, goal: float) -> None:
    """One line of the report, for a ratio that is to be small."""
    print(f"{what:<66} {ratio:7.2f}  goal at most {goal:g}  {'met' if ratio <= goal else 'NOT MET'}")


def at_least(what: str, ratio: float, goal: float) -> None:
    """One line of the report, for a ratio that is to be large."""
    print(f"{what:<66} {ratio:7.2f}  goal at least {goal:g}  {'met' if ratio >= goal else 'NOT MET'}")
