"""How a job grows: what a check costs with more walls and more of anything else, and a package of fifty walls."""

import math
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from specgen.pipeline import check
from specgen.terminal.report import format_report
from tests.bench.many import bare_walls, lay_out, many_of, whole_again, whole_walls
from tests.bench.measuring import at_most, process, seconds

WALLS = (250, 500, 1_000, 2_000)
WHOLE = (50, 100, 200, 400)  # more of them, with all that hangs on them, have more panels than one file may hold
MEMBERS = (250, 2_000)
FEWER = {"elevations": (50, 400)}  # more have more panels than one file may hold
PACKAGE = 50  # walls
# What may be many, and how many of it the example has.
MANY = {
    "elevations": 3,
    "details": 6,
    "joints": 5,
    "guns": 1,
    "hoses": 3,
    "instruments": 19,
    "people": 6,
    "crews": 3,
    "access": 3,
    "shade": 3,
    "colors": 1,
    "sealants": 1,
    "attachments": 19,
    "deviations": 1,
    "mockup.criteria": 13,
    "contract.demands": 4,
    "contract.items": 12,
    "contract.spec_sections": 2,
}


def measure() -> None:
    """The exponent of growth of each, and the processor time of the package."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        _grows(folder, "walls, little known of them", bare_walls, WALLS)
        _grows(folder, "walls alike", whole_walls, WHOLE)
        _grows(folder, "walls unlike", lambda count: whole_walls(count, different=True), WHOLE)
        _grows(folder, "the whole example, 10 to 80 times", whole_again, (10, 20, 40, 80))
        for what, held in MANY.items():
            sizes = tuple(count // held for count in FEWER.get(what, MEMBERS))
            _grows(folder, what, lambda times, what=what: many_of(what, times), sizes)  # type: ignore[misc]
        for different in (False, True):
            _package(folder, different)


def _grows(folder: Path, what: str, make: Callable[[int], str], sizes: tuple[int, ...]) -> None:
    costs = [_cost(lay_out(folder, make(size))) for size in sizes]
    at_most(f"check, exponent of growth: {what}", fit_exponent(sizes, costs), 1.1)


def _cost(file: Path) -> float:
    def judge() -> None:
        case = check(file)
        format_report(case.project, case.judgment)

    return seconds(judge, 2)


def fit_exponent(sizes: tuple[int, ...], costs: list[float]) -> float:
    """The slope of the line through the logarithms, by least squares."""
    across, up = [math.log(size) for size in sizes], [math.log(cost) for cost in costs]
    middle, height = sum(across) / len(across), sum(up) / len(up)
    rise = sum((x - middle) * (y - height) for x, y in zip(across, up, strict=True))
    return rise / sum((x - middle) ** 2 for x in across)


def _package(folder: Path, different: bool) -> None:
    file = lay_out(folder, whole_walls(PACKAGE, different))
    command = [sys.executable, "-m", "specgen", "build", str(file), "--draft", "--out", str(folder / "out")]
    used = process(*command, "--formats", "docx,html,txt", times=3)
    at_most(f"CPU seconds of a package of {PACKAGE} walls {'unlike' if different else 'alike'}", used, 6)
