"""Last of a number of working days: the day of the start is day 1, and rolls forward from a day off."""

from datetime import date

from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.time import _calendar
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.working import InputRow, Working
from specgen.reading.moment_texts import read_day

NOTES = ("The day of the start is day 1; a start on a day off moves to the next working day.",)


class FinishInputs(Inputs):
    """The day of the start, the working days, and the days off."""

    start: date = option_input("day of the start, such as 2026-06-29", read=read_day)
    working_days: int = given_input("w", "working days", "number", about="working days, 1 or more", within=(1, 10000))
    days_off: _calendar.DaysOff | None = option_input(
        _calendar.DAYS_OFF_ABOUT, read=_calendar.read_days_off, default=_calendar.USUAL
    )
    holidays: str | None = option_input(_calendar.HOLIDAYS_ABOUT, read=_calendar.read_holidays, default=None)


def finish(inputs: FinishInputs) -> Working:
    """The last working day, in days after the start, and as a date. Raises Refused."""
    if inputs.working_days != int(inputs.working_days):
        raise refuse("working_days is not a whole number of days", "write 5")
    days = _calendar.find_days(inputs.days_off, inputs.holidays)
    first, last = days.find_day(inputs.start), days.finish(inputs.start, int(inputs.working_days))
    off = (last - inputs.start).days + 1 - int(inputs.working_days)
    passed = InputRow("k", "days off from the start to the last day", float(off), "d", _calendar.CALENDAR)
    working = WorkingBuilder((*inputs.rows(), passed))
    working.step("f", f"last day, after {inputs.start:%a %Y-%m-%d}", "w + k - 1", "d")
    rolled = (f"Day 1 is {first:%a %Y-%m-%d}.",) if first != inputs.start else ()
    told = tuple(_calendar.tell_days(inputs.days_off, inputs.holidays, days, inputs.start, last))
    made = working.build("finish", "f", _calendar.SOURCES, rolled + told + NOTES)
    return made._replace(moment=last.isoformat())


PROVIDER = provide(
    "Last of a number of working days",
    FinishInputs,
    finish,
    order=40,
    example="start=2026-06-29 working_days=5",
)
