"""A project twice as large costs twice as much: counted in calls, function by function, never by a clock."""

import cProfile
import sys
from collections import Counter
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from types import CodeType
from typing import Any

import pytest

from specgen.building import build
from specgen.documents import no_break
from specgen.documents.composing import Composer
from specgen.model.problem import Refused
from specgen.model.value_text import count
from specgen.pipeline import check, make_resolver, read
from specgen.recording.status import Asked, find_status
from specgen.standards import load_standards
from specgen.terminal.report import format_report
from specgen.terminal.screen import Screen, show_lines
from specgen.terminal.status_text import list_status_lines
from tests.bench.many import bare_walls, lay_out, many_of, whole_again, whole_walls
from tests.recording.records import job, log, release

# Doubling what is added doubles the calls of a linear function, a little more where marks grow longer, and makes four
# times those of a quadratic one.
MOST, FEW = 2.5, 60
SMALL = (4, 8, 16)
# A table of few rows is kept on one page and so looked at more closely: what looks at it grows by steps, up and down.
# Crews that wait for each other ask the calendar more often up to some sixteen faces, from there on in proportion; the
# days that a row can wait are counted only where it can.
BY_STEPS = ("documents/columns.py", "documents/plain_text.py", "formats/keeping.py")
_COUNT = f"model/value_text.py:{count.__code__.co_firstlineno} count"
BY_STEPS += ("model/calendar.py", "model/hour_calendar.py", _COUNT, "scheduling/")
BY_STEPS += ("documents/figures/_bar_sheet.py",)
FROM_THERE = (32, 64, 128)


def _count_calls(work: Callable[[], object]) -> Counter[CodeType]:
    """How often each function is entered, a generator at each of its turns."""
    before = sys.getprofile()
    profiler = cProfile.Profile(subcalls=False, builtins=False)
    try:
        profiler.runcall(work)
    finally:
        sys.setprofile(before)
    return Counter({entry.code: entry.callcount for entry in profiler.getstats() if isinstance(entry.code, CodeType)})


def _growing(counts: list[Counter[CodeType]]) -> dict[str, tuple[int, ...]]:
    """The functions called out of proportion, with their calls at each size."""
    first, second, third = counts
    return {
        f"{code.co_filename.rpartition('specgen/')[2]}:{code.co_firstlineno} {code.co_name}": tuple(
            count[code] for count in counts
        )
        for code in third
        if "specgen" in code.co_filename and third[code] - second[code] > MOST * (second[code] - first[code]) + FEW
    }


def _judge(file: Path) -> None:
    try:
        case = check(file)
    except Refused:
        return
    format_report(case.project, case.judgment)


def _wrong_marks(count: int) -> str:
    """Faces on walls that there are not, each a near miss of one there is."""
    return bare_walls(count) + "elevations:\n" + "".join(f"  E{n}: {{wall: V{n}}}\n" for n in range(1, count + 1))


def _demands_on_walls(count: int) -> str:
    """As many requirements as walls, each of them on every wall."""
    demand = '    - {paragraph: "%d", field: walls.*.insulation.kind, relation: in, value: "eps, xps"}\n'
    walls = bare_walls(count).replace("adhesive_full_bed}}", "adhesive_full_bed}, insulation: {kind: eps}}")
    return walls + "contract:\n  demands:\n" + "".join(demand % number for number in range(count))


PROJECTS: dict[str, tuple[Callable[[int], str], tuple[int, ...]]] = {
    "walls of which little is known": (bare_walls, SMALL),
    "walls alike": (whole_walls, SMALL),
    "the whole example again and again": (whole_again, (1, 2, 4)),
    "requirements on every wall": (_demands_on_walls, SMALL),
    "wrong marks": (_wrong_marks, (110, 220, 440)),
} | {
    name: (lambda times, name=name: many_of(name, times), SMALL)  # type: ignore[misc]  a default bound in a loop
    for name in ("guns", "attachments", "contract.demands")
}


@pytest.mark.parametrize("name", PROJECTS)
def test_judging_calls_no_function_out_of_proportion(name: str, tmp_path: Path) -> None:
    make, sizes = PROJECTS[name]
    _judge(lay_out(tmp_path, make(3)))
    counts = [_count_calls(lambda size=size: _judge(lay_out(tmp_path, make(size)))) for size in sizes]  # type: ignore[misc]
    assert _growing(counts) == {}


def test_a_package_of_walls_unlike_calls_no_function_out_of_proportion(tmp_path: Path) -> None:
    def package(size: int) -> None:
        no_break._find_kept.cache_clear()  # else a smaller package pays for texts that a larger one has again
        build(lay_out(tmp_path, whole_walls(size, different=True)), tmp_path / f"out{size}", draft=True)

    package(3)
    growing = _growing([_count_calls(lambda size=size: package(size)) for size in SMALL])  # type: ignore[misc]
    assert {name: calls for name, calls in growing.items() if not name.startswith(BY_STEPS)} == {}


def test_the_schedule_of_many_faces_calls_no_function_out_of_proportion(tmp_path: Path) -> None:
    def schedule(size: int) -> None:
        make_resolver(read(lay_out(tmp_path, whole_walls(size, different=True))))((), "schedule")

    schedule(3)
    assert _growing([_count_calls(lambda size=size: schedule(size)) for size in FROM_THERE]) == {}  # type: ignore[misc]


def test_walls_alike_share_the_words_of_their_steps(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    rendered = Counter[int]()
    render = Composer.text

    def count(composer: Composer, *words: Any) -> str:
        rendered[size] += 1
        return render(composer, *words)

    monkeypatch.setattr(Composer, "text", count)
    for size in (4, 8):
        build(lay_out(tmp_path, whole_walls(size)), tmp_path / f"out{size}", only=("D08",), draft=True)
    assert rendered[4] == rendered[8]


def _many_areas(times: int) -> list[dict[str, Any]]:
    """Two steps on each of many areas, each area with its crew and its release."""
    entries = []
    for number in range(times):
        area, day = f"area {number}", f"2027-06-{1 + number % 20:02}"
        entries += [
            log(day, "mesh", "07:00-09:00", area=area, crew=f"crew {number}", panels=(f"P{number}",)),
            release(day, "mesh", "20:00", area=area),
            log(day, "second_pass", "21:00-22:00", area=area),
        ]
    return entries


def _many_rounds(times: int) -> list[dict[str, Any]]:
    """One face worked anew again and again, each time after a release."""
    days = [(datetime(2027, 1, 1) + timedelta(days=number)).date().isoformat() for number in range(times)]
    return [one for day in days for one in (log(day, "mesh", "07:00-09:00"), release(day, "mesh", "20:00"))]


@pytest.mark.parametrize("make", [_many_areas, _many_rounds])
def test_status_calls_no_function_out_of_proportion(
    make: Callable[[int], list[dict[str, Any]]], tmp_path: Path
) -> None:
    standards = load_standards()

    def tell(size: int) -> None:
        found = find_status(cases[size], standards, Asked())
        show_lines(list_status_lines(found, Screen()), Screen())

    cases = {size: job(tmp_path, *make(size)) for size in (40, 80, 160)}
    tell(40)
    assert _growing([_count_calls(lambda size=size: tell(size)) for size in cases]) == {}  # type: ignore[misc]
