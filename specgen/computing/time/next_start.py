"""Next start of work behind a drying time: drying goes on by the clock, work begins within a shift alone."""

from datetime import datetime, time, timedelta
from math import ceil

from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.time import _calendar
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.calendar import WorkCalendar, add_clock_time
from specgen.model.source import Kind, Source
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.reading.moment_texts import ShiftTimes, read_moment, read_shift, tell_moment

SOURCES = (
    Source(Kind.COMPUTED, "drying counts clock hours, nights and days off included; work begins at or within a shift"),
)
NOTES = (
    "Local time. A moment within the shift is a start; the end of the shift is not.",
    "Hours by the clock: those of a night on which the clocks change count as of any other.",
    "Cool or damp weather extends drying; the manufacturer's written instructions govern.",
)


class NextInputs(Inputs):
    """When the work was done, how long it dries, and when is worked."""

    done: datetime = option_input("end of the work that dries, such as 2026-07-02T15:00", read=read_moment)
    dry: Quantity = given_input(
        "T", "drying time", "time", about="drying time, in clock hours", bare="h", least=0, span=("0 h", "2000 h")
    )
    shift: ShiftTimes = option_input("start and end of the shift, such as 07:00-15:30", read=read_shift)
    days_off: _calendar.DaysOff | None = option_input(
        _calendar.DAYS_OFF_ABOUT, read=_calendar.read_days_off, default=_calendar.USUAL
    )
    holidays: str | None = option_input(_calendar.HOLIDAYS_ABOUT, read=_calendar.read_holidays, default=None)


def next_start(inputs: NextInputs) -> Working:
    """The next moment of work, in hours after the midnight before the work ended, and as such. Raises Refused."""
    done, day = inputs.done, datetime.combine(inputs.done.date(), time())
    days = _calendar.find_days(inputs.days_off, inputs.holidays)
    ready = add_clock_time(done, timedelta(seconds=ceil(inputs.dry.number("h") * 3600)))
    shift = WorkCalendar(days, inputs.shift.start, inputs.shift.length).find_shift(ready)
    start = max(ready, shift.start)
    ended = InputRow("t_d", f"{day:%a %Y-%m-%d}, midnight to end of work", _hours(done - day), "h")
    working = WorkingBuilder((ended, *inputs.rows()))
    working.step("t_r", "dry, after the same midnight", "t_d + T", "h")
    first = datetime.combine(shift.start.date(), time())
    working.add_inputs(
        InputRow("n", f"{first:%a %Y-%m-%d}, days until its shift", float((first - day).days), "d", _calendar.CALENDAR),
        InputRow("t_s", "start of the shift, after midnight", _hours(shift.start - first), "h"),
    )
    working.step("t", "next start, after the same midnight", "max(t_r, 24 * n + t_s)", "h")
    case = "drying" if start == ready else "the shift"
    told = tuple(_calendar.tell_days(inputs.days_off, inputs.holidays, days, ready.date(), start.date()))
    made = working.build("next-start", "t", SOURCES, told + NOTES, case)
    return made._replace(moment=tell_moment(start))


def _hours(stretch: timedelta) -> float:
    return stretch / timedelta(hours=1)


PROVIDER = provide(
    "Next start of work behind a drying time",
    NextInputs,
    next_start,
    order=30,
    example="done=2026-07-02T15:00 dry=24h shift=07:00-15:30",
)
