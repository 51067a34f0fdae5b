"""Checks on reading that days off are days and leave one to work on, and that a country has known holidays."""

import re
from collections.abc import Iterator
from contextlib import suppress
from datetime import date

from specgen.model.calendar import WEEK
from specgen.model.field import Path, dotted_path
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.quantities.number import quote
from specgen.reading.conversion import InvalidValue

_DAYS_OFF, _HOLIDAYS = ("schedule", "days_off"), ("schedule", "holidays")
_FORM = "write mon to sun, or a date such as 2027-07-05"
_SHORTEST = 2  # letters by which a day of the week is told


def read_day_off(text: str) -> str:
    """A day of the week as in WEEK, or a date; raises InvalidValue for any other text."""
    day = text.strip()
    if day in WEEK:
        return day
    if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", day):
        with suppress(ValueError):
            return date.fromisoformat(day).isoformat()
    from specgen.reading.date_words import read_dates  # imported here: most days are right

    letters = day.lower()[:3]
    named = [name for name in WEEK if len(letters) >= _SHORTEST and name.startswith(letters) and day.isalpha()]
    meant = [*named, *map(str, read_dates(day))]
    raise InvalidValue(f"{quote(text)} is not a day off", f"write {' or '.join(meant)}" if meant else _FORM)


def calendar_problems(project: Project) -> list[Problem]:
    """What is wrong with the days off and the holidays of a project."""
    return [*_find_wrong_days(project), *_find_unknown_holidays(project)]


def _find_wrong_days(project: Project) -> Iterator[Problem]:
    days = project.values.get(_DAYS_OFF, ())
    for day in days:
        try:
            read_day_off(day)
        except InvalidValue as invalid:
            yield _problem(project, _DAYS_OFF, invalid.message, invalid.hint)
    if set(WEEK) <= set(days):
        yield _problem(project, _DAYS_OFF, "every day of the week is off", "leave the working days out")


def _find_unknown_holidays(project: Project) -> Iterator[Problem]:
    code = project.values.get(_HOLIDAYS)
    if code is None:
        return
    # The holidays and their library are loaded only where a project names them.
    from specgen.resolving.public_holidays import find_holidays

    try:
        find_holidays(code)
    except Refused as refused:
        for problem in refused.problems:
            yield _problem(project, _HOLIDAYS, problem.message, problem.hint)


def _problem(project: Project, path: Path, message: str, hint: str) -> Problem:
    place = project.place(path)
    return Problem(message, hint, dotted_path(path), place.file, place.line, place.column)
