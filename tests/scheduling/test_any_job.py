"""Whatever a job is told to be, its schedule keeps the rules of crews, shifts and drying. Rules of our own."""

import tempfile
from datetime import datetime, timedelta
from itertools import pairwise
from pathlib import Path
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from specgen import pipeline
from specgen.computing.calendars import find_calendar
from specgen.model.hour_calendar import HourCalendar
from specgen.model.problem import Refused
from specgen.model.project import Project
from specgen.model.schedule import Activity, Schedule
from specgen.model.typed_views import root_of
from specgen.scheduling.spray_hours import find_spray_hours
from specgen.standards import load_standards
from tests.scheduling.jobs import EVERY, TWO_FACES
from tests.support import merged, project_of

HOURS = st.integers(0, 60)
SIDES = st.integers(3, 60)
RATES = st.integers(40, 500)
STEPS = st.sampled_from([*EVERY, "release_primer", "acceptance"])


@st.composite
def changes(draw: st.DrawFn) -> dict[str, Any]:
    """A job with one to three faces and crews, other hours, rates, coats, waits, shifts and days off."""
    faces = {
        f"E{n}": {
            "width": f"{draw(SIDES)} ft",
            "height": f"{draw(SIDES)} ft",
            "openings": {},
            "facing": draw(st.sampled_from("NESW")),
        }
        for n in range(1, draw(st.integers(1, 3)) + 1)
    }
    crews = {
        name: {"steps": EVERY, "rates": {step: f"{draw(RATES)} ft2/h" for step in EVERY}}
        for name in ("red", "blue")[: draw(st.integers(1, 2))]
    }
    wall = {"attachment": {"cure_hours": draw(HOURS)}, "base_coat": {"first_pass_dry_hours": draw(HOURS)}}
    gap = st.fixed_dictionaries({"from_step": STEPS, "to_step": STEPS, "hours": st.integers(0, 100)})
    return {
        "site": draw(st.sampled_from([{}, *({"latitude": f"{north} deg"} for north in (0, 41, 60))])),
        "elevations": faces | ({"E2": "drop"} if "E2" not in faces else {}),
        "crews": crews,
        "walls": {"W1": wall},
        "smoothing": {"coats": draw(st.integers(0, 3)), "between_hours": draw(st.integers(0, 9))},
        "primer": {"coats": draw(st.integers(0, 2)), "dry_hours": draw(HOURS)},
        "gloss": {"coats": draw(st.integers(0, 3)), "touch_dry_hours": draw(st.integers(1, 9))},
        "schedule": {
            "shift_start": f"{draw(st.integers(0, 23)):02}:00",
            "shift_hours": draw(st.integers(1, 24)),
            "days_off": draw(st.lists(st.sampled_from(["mon", "wed", "sat", "sun", "2027-06-29"]), unique=True)),
            "weather_days": draw(st.integers(0, 3)),
            "gaps": draw(st.lists(gap, max_size=2)),
        },
    }


def dated(change: dict[str, Any]) -> tuple[Project, Schedule]:
    with tempfile.TemporaryDirectory() as folder:
        project = project_of(Path(folder), merged(TWO_FACES, change))
    try:
        schedule: Schedule = pipeline.make_resolver(project)((), "schedule")
    except Refused as refused:  # by day, or by the sun, the shift has no hour for a coat
        assume("no usable spray hours in any month" not in refused.problems[0].message)
        raise
    return project, schedule


@settings(deadline=None, max_examples=60)
@given(changes())
def test_any_job_keeps_crews_apart_and_works_in_shifts(change: dict[str, Any]) -> None:
    project, schedule = dated(change)
    calendar = find_calendar(root_of(project.root()))
    work = [one for one in schedule.activities if one.kind == "work"]
    for crew in change["crews"]:
        of_crew = sorted((one.start, one.end) for one in work if one.crew == crew)
        assert all(before[1] <= after[0] for before, after in pairwise(of_crew))
    for one in work:
        shift = calendar.find_shift(one.start)
        assert shift.start <= one.start < shift.end
        if one.end > one.start:
            last = calendar.find_shift(one.end - timedelta(minutes=1))
            assert last.start < one.end <= last.end


@settings(deadline=None, max_examples=60)
@given(changes())
def test_in_any_job_steps_follow_one_another_behind_their_drying(change: dict[str, Any]) -> None:
    _, schedule = dated(change)
    order = list(load_standards().steps)
    ends = {one.mark: one.end for one in schedule.activities}
    assert all(ends[other] <= one.start for one in schedule.activities for other in one.after)
    for face in {one.elevation for one in schedule.activities} - {""}:
        of_face = [one for one in schedule.activities if one.elevation == face]
        in_order = [one for one in of_face if ".wait." not in one.mark]
        assert [order.index(one.step) for one in in_order] == sorted(order.index(one.step) for one in in_order)
        assert all(before.end <= after.start for before, after in pairwise(in_order))
    for step, hours in (("boards", change["walls"]["W1"]["attachment"]["cure_hours"]), ("primer", change["primer"])):
        wanted = timedelta(hours=hours["dry_hours"] if isinstance(hours, dict) else hours)
        assert all(one.end - one.start == wanted for one in _drying(schedule, step))


def _drying(schedule: Schedule, step: str) -> list[Activity]:
    return [one for one in schedule.activities if one.step == step and one.mark.endswith(f"{step}.dry")]


@settings(deadline=None, max_examples=60)
@given(changes())
def test_in_any_job_coats_are_begun_and_ended_in_the_hours_of_their_face(change: dict[str, Any]) -> None:
    project, schedule = dated(change)
    calendar = find_calendar(root_of(project.root()))
    for one in schedule.activities:
        if one.kind != "work" or one.step not in ("primer", "gloss"):
            continue
        spray = find_spray_hours(project.view(("elevations", one.elevation)))
        hours = spray.set_up
        if hours and one.end > one.start:
            narrow = HourCalendar(calendar.days, calendar.shift_start, calendar.shift, hours)
            assert narrow.find_shift(one.start).start <= one.start
            last = narrow.find_shift(one.end - timedelta(minutes=1))
            assert last.start < one.end <= last.end


@settings(deadline=None, max_examples=60)
@given(changes())
def test_any_job_ends_with_its_chain(change: dict[str, Any]) -> None:
    _, schedule = dated(change)
    by_mark = {one.mark: one for one in schedule.activities}
    assert len(by_mark) == len(schedule.activities)
    assert by_mark[schedule.chain[-1]].end == schedule.end == max(one.end for one in schedule.activities)
    assert all(by_mark[after].driven_by == before for before, after in pairwise(schedule.chain))
    assert by_mark[schedule.chain[0]].driven_by == ""
    assert min(one.start for one in schedule.activities) >= datetime(2027, 6, 28)
    assert all(one.spare.days >= 0 for one in schedule.activities)
    assert min(one.spare.days for one in schedule.activities) == 0
