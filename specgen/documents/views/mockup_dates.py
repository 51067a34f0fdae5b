"""The dates around the mockup, in the order of the calendar of the job."""

from collections.abc import Iterator
from datetime import date
from typing import Any

from specgen.computing.submittal_days import REVIEWING
from specgen.documents.composing import Composer, letter_here
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deviations import tell_longer_review
from specgen.documents.display_values import DisplayValue
from specgen.documents.layout_release import find_layout_release
from specgen.documents.mockup import find_day_behind, find_ready_day, find_start, name_base, tell_base_age
from specgen.documents.mockup_days import find_last_day, find_mockup_day
from specgen.documents.submission import find_issue, find_worked_before
from specgen.judging.rule import is_draft
from specgen.model.dates import days_after
from specgen.model.typed_views import root_of
from specgen.model.value_text import count, long_date, words

_DAY = "calendar day"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Decision and submittal, reviews, color, mockup, start of the work."""
    lines: list[tuple[Any, ...]] = [*_list_submittal(context), ("Review period", _review(context))]
    start = find_start(context)
    events = sorted(_list_events(context), key=lambda event: event[0] or date.min)
    behind = [event for event in events if start and event[0] and event[0] > start]
    lines += [(name, said) for day, name, said in events if (day, name, said) not in behind]
    lines += [
        ("Start of mockup", _tell_start(context, start)),
        ("Duration of mockup, evaluation included", _duration(context, composer)),
        *((name, said) for _, name, said in behind),
        ("Last day of mockup", _end(context)),
        *_list_spare(context),
        ("Start of work on the wall", _tell_work(context)),
    ]
    return TableView(("Event", "Date"), tuple(lines), (55, 45))


def _list_submittal(context: DocumentContext) -> Iterator[tuple[str, Any]]:
    """The day of the submittal; of a draft, with the decision on the walls before it, and the contractor's review."""
    path, days = ("schedule", "submit_on"), find_issue(context)
    held, reviewed = find_day_behind(context, "b"), find_day_behind(context, "b", "g")
    if not is_draft(root_of(context.project.root())):
        yield "Submittal of this package", context.display(path)
    elif held is not None and held > context.project.value(path):
        yield "Decision on the walls, earliest", long_date(find_worked_before(context, held))
        planned = long_date(context.project.value(path))
        yield "Submittal for the mockup", f"{long_date(held)}, earliest; {planned}, as planned, cannot be held"
    else:
        if days is not None:
            yield "Replies needed for the decision on the walls, latest", long_date(days.replied)
            yield "Decision on the walls, latest", long_date(days.decided)
        yield "Submittal for the mockup", context.display(path)
    if reviewed != held:
        yield "Contractor's own review", [letter_here(context.limit(REVIEWING)), " working days"]


def _tell_start(context: DocumentContext, start: date | None) -> Any:
    """The planned day; a later one where what the mockup waits for is not there by then."""
    path = ("mockup", "planned_on")
    if start is None or start == context.project.value(path):
        return context.display(path)
    return f"{long_date(start)}, earliest; {long_date(context.project.value(path))}, as planned, cannot be held"


def _tell_work(context: DocumentContext) -> Any:
    """The planned start of the work, and that it cannot be held where the mockup ends behind it."""
    path, end = ("schedule", "work_start"), find_day_behind(context, "E")
    planned, accepted = context.project.get(path), context.project.get(("mockup", "accepted_on"))
    if planned is None or end is None or accepted is not None or planned >= end:
        return context.display(path)
    return f"{long_date(end)}, earliest; {long_date(planned)}, as planned, cannot be held"


def _list_events(context: DocumentContext) -> Iterator[tuple[date | None, str, Any]]:
    """What comes before and within the mockup, each with its date: review, its coating, releases, meeting."""
    project = context.project
    customs = [m for m in project.members.get(("colors",), ()) if project.get(("colors", m, "kind")) == "custom"]
    named = ", ".join(customs)
    yield from ((day, "Review complete", long_date(day)) for day in _dates_behind(context, "R"))
    if customs:
        path = ("schedule", "color_sample_order_on")
        yield project.get(path), f"Order of sample color ({named})", [context.display(path), _name_risk(context)]
        arrivals = _dates_behind(context, "o", "l")
        yield from ((day, f"Arrival of sample color ({named})", long_date(day)) for day in arrivals)
        primed = find_mockup_day(context, Composer(), "primer")
        if primed is not None:
            yield primed, f"First primer, sample color needed ({named})", long_date(primed)
    ready = find_ready_day(context)
    if ready is not None:
        yield ready, f"{name_base(context)} complete, latest", [long_date(ready), *tell_base_age(context)]
    release = find_layout_release(context)
    if release is not None:
        told = f"{long_date(release.latest)}, {release.follows}"
        yield release.latest, "Release of the joint layout, latest", told
    path = ("schedule", "meeting_on")
    if project.is_given(path):
        yield project.get(path), "Preinstallation meeting", context.display(path)


def _review(context: DocumentContext) -> list[Any]:
    """`14 calendar days; 21 days with deviations`, and why where these are approved; what is not given in brackets."""
    days, kind = (("contract", name) for name in ("review_days", "review_day_kind"))
    counted, word = context.project.get(days), context.project.get(kind)
    if counted is None or word is None:
        return [context.display(days), ", ", context.display(kind)]
    longer = context.project.get(("contract", "variation_review_days"))
    said = f"{counted} {words(str(word))} day{'' if counted == 1 else 's'}"
    with_deviations = tell_longer_review(context.project)
    return [f"{said}; {count(longer, 'day')}{with_deviations}" if longer and with_deviations else said]


def _end(context: DocumentContext) -> Any:
    start, days = find_start(context), context.project.get(("mockup", "duration_days"))
    if start is None or days is None:
        return DisplayValue("[follows from start and duration]", open=True)
    return long_date(days_after(start, days - 1))


def _list_spare(context: DocumentContext) -> list[tuple[str, str]]:
    """The days between the mockup and the work; no row where a date is open or none are left."""
    start, days = find_start(context), context.project.get(("mockup", "duration_days"))
    work = context.project.get(("schedule", "work_start"))
    left = (work - days_after(start, days)).days if start and days and work else 0
    return [("Left for weather, holds, and a second viewing", count(left, _DAY))] if left > 0 else []


def _duration(context: DocumentContext, composer: Composer) -> Any:
    """`24 calendar days`, as the earliest start counts them; where the order of work needs more, how many."""
    path = ("mockup", "duration_days")
    days, needed = context.project.get(path), find_last_day(context, composer)
    if days is None:
        return context.display(path)
    least = f"; the order of work takes a minimum of {count(needed, _DAY)}" if needed and needed > days else ""
    return f"{count(days, _DAY)}{least}"


def _name_risk(context: DocumentContext) -> str:
    """At whose risk the sample color is ordered where its review is not over by then."""
    ordered = context.project.get(("schedule", "color_sample_order_on"))
    reviewed = _dates_behind(context, "R")
    return (
        ", before review is complete, at the applicator's risk"
        if ordered and min(reviewed, default=ordered) > ordered
        else ""
    )


def _dates_behind(context: DocumentContext, *symbols: str) -> list[date]:
    """The date that lies as many days behind the submission as the earliest start says; none where it is open."""
    day = find_day_behind(context, *symbols)
    return [] if day is None else [day]
