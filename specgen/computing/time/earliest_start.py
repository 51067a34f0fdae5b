"""Earliest start of the work: review of the package or arrival of the sample color, then the mockup.

A design draft is issued for review no sooner than the walls can be decided on.

The color is needed for the first coat of primer of the mockup, so many days behind its start as earlier coats dry.
"""

import datetime
from collections.abc import Iterator, Mapping
from itertools import count

from specgen.computing.calendars import find_work_days, is_weekend_taken
from specgen.computing.mockup_days import count_days_to_primer
from specgen.computing.submittal_days import REVIEWING, count_contractor_days, find_first_issue
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import read_all
from specgen.model.calendar import WEEKEND_TAKEN
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.dates import days_after
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Description
from specgen.model.value_text import long_date
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Ask, Provider

SOURCES = (
    Source(Kind.COMPUTED, "review, the sample color by the first coat of primer, then the mockup with its acceptance"),
)
NOTE = "Mockup duration is in calendar days."
_OFF = "days off in the calendar"
_DECIDED = "checking, reviews, and decision, from the date of this draft"
_COLOR = {False: "A", True: "A - c"}  # the first start of the mockup by its color


def for_project(project: Description, ask: Ask) -> Working:
    """Days from submission to the first day of work on the wall; dates stand in the notes. Raises Absent, Refused."""
    submitted = _require_all(project)
    working = WorkingBuilder(_rows(project, submitted))
    waits = "max(n, n_v)" if "n_v" in working.known else "n"
    before = (symbol for symbol in ("b", "g") if symbol in working.known)
    working.step("R", "review complete", " + ".join((*before, waits, *(["k"] if "k" in working.known else []))), "d")
    colored = "o" in working.known
    if colored:
        working.step("A", "sample color arrives", "o + l", "d")
    _add_days_to_primer(working, project, submitted)
    ready = [*(["P"] if "P" in working.known else []), "R", *([_COLOR[is_later(working.known)]] if colored else [])]
    starts = "starts" if "P" in working.known else "can start"
    working.step("M", f"mockup {starts}", f"max({', '.join(ready)})" if len(ready) > 1 else "R", "d")
    working.step("E", "work can start", "M + D", "d")
    _add_second_review(working, project, submitted)
    case = _find_case(working.known)
    told = _tell_dates(project, submitted, working.known)
    taken = (WEEKEND_TAKEN,) if "k" in working.known and is_weekend_taken(project) else ()
    notes = (*told, *taken, _tell_resubmittal(project, submitted, working.known), NOTE)
    beside = ("M", *(("E_2",) if "E_2" in working.known else ()))
    return working.build("earliest-start", "E", SOURCES, notes, case, beside)


def is_later(days: Mapping[str, float]) -> bool:
    """Whether the sample color is needed only for a coat behind the start of the mockup."""
    return "c" in days


def _add_days_to_primer(working: WorkingBuilder, project: Description, submitted: datetime.date) -> None:
    """Adds the days of the mockup before its first coat of primer, where a color is waited for and they are told."""
    days = working.known
    if "A" not in days:
        return
    before = count_days_to_primer(project, days_after(submitted, round(max(days["R"], days.get("P", 0)))))
    if before:
        # However short the time given to the mockup, its coats are on by its end.
        needed = float(min(before, project.mockup.duration_days))
        origin = "drying before it and days off, Document D09"
        working.add_inputs(InputRow("c", "first coat of primer of the mockup, behind its start", needed, "d", origin))


def _find_case(days: Mapping[str, float]) -> str:
    """What the start of the mockup waits for."""
    waits = {"the review": days["R"], "the planned mockup start": days.get("P", 0)}
    if "A" in days:
        waits = {"the review": days["R"], "the sample color": days["A"] - days.get("c", 0), **waits}
    return max(waits, key=lambda name: waits[name])


def _require_all(project: Description) -> datetime.date:
    """The day of submission; raises Absent with all that is not given at once."""
    read_all(
        lambda: project.schedule.submit_on,
        lambda: project.contract.review_days,
        lambda: project.contract.review_day_kind,
        lambda: [color.kind for color in project.colors],
        lambda: project.mockup.duration_days,
    )
    submitted: datetime.date = project.schedule.submit_on
    return submitted


def _rows(project: Description, submitted: datetime.date) -> Iterator[InputRow]:
    yield from _list_review(project, submitted)
    custom = [color for color in project.colors if color.kind == "custom"]
    if custom:
        ordered = (project.schedule.color_sample_order_on - submitted).days
        slowest = max(custom, key=lambda color: color.lead_time_days)
        lead = f"colors.{slowest.mark}.lead_time_days"
        yield InputRow("o", "sample color order", float(ordered), "d", "order date minus submission date")
        yield InputRow("l", f"lead time of color {slowest.mark}", float(slowest.lead_time_days), "d", lead)
    planned = project.mockup.get("planned_on")
    if planned is not None:
        yield InputRow("P", "planned mockup start", float((planned - submitted).days), "d", "mockup.planned_on")
    yield InputRow(
        "D",
        "mockup duration, with drying and acceptance",
        float(project.mockup.duration_days),
        "d",
        "mockup.duration_days",
    )


def _list_review(project: Description, submitted: datetime.date) -> Iterator[InputRow]:
    """The days up to the end of the review: the decision on the walls, both reviews, and the days off within them."""
    contract, first, own = project.contract, find_first_issue(project), count_contractor_days(project)
    held = max((first - submitted).days, 0) if first else 0
    if held:
        yield InputRow("b", "decision on the walls, behind the planned submittal", float(held), "d", _DECIDED)
    if own:
        source = find_limit(REVIEWING, project.project).source
        yield InputRow("g", "contractor's own review", float(own), "d", source=source, limit=REVIEWING)
    days = [contract.review_days]
    yield InputRow("n", "review", float(days[0]), "d", "contract.review_days")
    if list(project.deviations):
        days.append(contract.variation_review_days)
        yield InputRow("n_v", "review with deviations", float(days[1]), "d", "contract.variation_review_days")
    counted = own + (max(days) if contract.review_day_kind == "working" else 0)
    if counted:
        off = find_work_days(project).count_off(days_after(submitted, held), counted)
        yield InputRow("k", "days off within the review", float(off), "d", _OFF)


def _tell_dates(project: Description, submitted: datetime.date, days: Mapping[str, float]) -> tuple[str, ...]:
    """The days as dates, and how the planned start lies to them."""
    held, first, then = (days_after(submitted, round(days.get(symbol, 0))) for symbol in ("b", "M", "E"))
    late = f"The walls are not decided on by {long_date(submitted)}, the planned submittal. " if "b" in days else ""
    starts = "starts" if "P" in days else "can start"
    said = f"{late}Submitted on {long_date(held)}, the mockup {starts} on {long_date(first)}, "
    told = [f"{said}work on the wall on {long_date(then)}."]
    planned = project.schedule.get("work_start")
    if planned is not None:
        left = (planned - then).days
        lies = f"{_count(left)} later" if left > 0 else f"{_count(-left)} too early" if left else "the same day"
        told.append(f"Work is planned for {long_date(planned)}, {lies}.")
    return tuple(told)


def is_ordered_behind_review(days: Mapping[str, float]) -> bool:
    """Whether the sample color is ordered once the review is over, so that a longer review moves the order.

    Days by the symbol that this calculation gives them.
    """
    return "o" in days and days["o"] >= days["R"]


def _add_second_review(working: WorkingBuilder, project: Description, submitted: datetime.date) -> None:
    """Adds the start behind one more review, where its days are given; an order behind the review moves with it."""
    more, days = project.contract.get("resubmittal_days"), working.known
    if more is None:
        return
    working.add_inputs(InputRow("n_2", "review of a resubmittal", float(more), "d", "contract.resubmittal_days"))
    own, second = round(days.get("g", 0)), "g + n_2" if "g" in days else "n_2"
    counted = own + (more if project.contract.review_day_kind == "working" else 0)
    if counted:
        off = find_work_days(project).count_off(days_after(submitted, round(days["R"])), counted)
        working.add_inputs(InputRow("k_2", "days off within it", float(off), "d", _OFF))
        second = f"{second} + k_2"
    color = _COLOR[is_later(days)]
    color = f"{color} + {second}" if is_ordered_behind_review(days) else color
    ready = [*(["P"] if "P" in days else []), f"R + {second}", *([color] if "A" in days else [])]
    last = f"max({', '.join(ready)})" if len(ready) > 1 else ready[0]
    first = working.step("M_2", "mockup can start, after a resubmittal", last, "d")
    begin, work = days_after(submitted, round(first)), find_work_days(project)
    off = next(number for number in count() if work.is_worked(days_after(begin, number)))
    if off:
        working.add_inputs(InputRow("w", "days off before its first working day", float(off), "d", _OFF))
    working.step("E_2", "work can start, after a resubmittal", f"M_2 + {'w + ' if off else ''}D", "d")


def _tell_resubmittal(project: Description, submitted: datetime.date, days: Mapping[str, float]) -> str:
    """By how much one more review moves the start, and whether the days left before the planned one hold it."""
    if "E_2" not in days:
        return "Assumes one review; each resubmittal adds another."
    late, planned = round(days["E_2"] - days["E"]), project.schedule.get("work_start")
    left = None if planned is None else (planned - days_after(submitted, round(days["E"]))).days
    short = f", more than the {_count(left)} left" if left is not None and 0 <= left < late else ""
    order = " and order of the sample color" if is_ordered_behind_review(days) else ""
    moves = f"moves the start by {_count(late)}{short}" if late > 0 else "does not move the start"
    more = _count(round(days["n_2"]), "working " if project.contract.review_day_kind == "working" else "")
    again = f"Assumes one review; a resubmittal of {more}, sent on the day of return, moves review{order}"
    return f"{again}, and {moves}{_tell_left(left, late)}."


def _tell_left(left: int | None, late: int) -> str:
    """The days that are left to prepare the resubmittal, where there are any."""
    return f"; {_count(left - late)} of the {left} left to prepare it" if left is not None and left > late > 0 else ""


def _count(days: int, kind: str = "") -> str:
    return f"{days} {kind}day{'' if days == 1 else 's'}"


def compare_start(project: Description, ask: Ask) -> Comparison:
    """The earliest start against the start planned."""
    submitted, planned = project.schedule.submit_on, project.schedule.work_start
    days = ask("earliest-start").quantity
    start = days_after(submitted, round(days.number("d")))
    return at_most(days, Quantity.of((planned - submitted).days, "d"), words=(long_date(start), long_date(planned)))


PROVIDER = Provider(
    name="earliest-start",
    title="Earliest start of work",
    each=(),
    compute=for_project,
    reads=("schedule.submit_on", "contract.review_days", "contract.review_day_kind", "colors", "mockup.duration_days"),
    checks=(Check("earliest start", "planned start", ("SCH-01a",), compare_start, "schedule.work_start"),),
    order=10,
)
