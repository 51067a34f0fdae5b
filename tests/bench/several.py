"""What two cores save where many projects are checked."""

import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.bench.measuring import at_least
from tests.support import ROOT

CLEAN = ROOT / "project_examples" / "clean"
PROJECTS = 200
TIMES = 3


def measure() -> None:
    """Time on one core over time on two, by the clock, as only that tells; for a machine at rest."""
    cores = sorted(os.sched_getaffinity(0))[:2]
    if len(cores) < 2:
        print(f"check of {PROJECTS} projects on one core / on two: this machine has one core")
        return
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for number in range(PROJECTS):
            shutil.copy(CLEAN / "project.yaml", folder / f"{number:03}.yaml")
        for beside in ("firm.yaml", "coating-system.yaml"):
            shutil.copy(CLEAN / beside, folder)
        alone, shared = (_take(folder, kept) for kept in (cores[:1], cores))
    at_least(f"check of {PROJECTS} projects on one core / on two", alone / shared, 1.8)


def _take(folder: Path, cores: list[int]) -> float:
    """The least time of a check of the folder on these cores, in seconds."""
    best = float("inf")
    for _ in range(TIMES):
        start = time.perf_counter()
        subprocess.run(  # noqa: S603
            [sys.executable, "-m", "specgen", "--quiet", "check", str(folder)],
            check=True,
            cwd=ROOT,
            stdout=subprocess.DEVNULL,
            preexec_fn=lambda: os.sched_setaffinity(0, cores),
        )
        best = min(best, time.perf_counter() - start)
    return best
