"""The chain of dates from submittal to work: what each follows from, its float, and which one governs."""

from collections.abc import Iterator
from datetime import date
from typing import Any, NamedTuple

from specgen.computing.time.earliest_start import is_later, is_ordered_behind_review
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deviations import tell_longer_review
from specgen.documents.layout_release import find_layout_release
from specgen.documents.mockup import name_base, tell_base_age
from specgen.documents.schedule import SPRAYED, find_schedule, is_short
from specgen.documents.submission import find_worked_before
from specgen.documents.views._cells import OPEN, ask_all
from specgen.documents.views.schedule_activities import tell_untold
from specgen.model.absence import Absent
from specgen.model.dates import days_after
from specgen.model.problem import Refused
from specgen.model.value_text import count, long_date
from specgen.model.working import Working

GOVERNS = "governs"
_ACCEPTED = ("mockup", "accepted_on")
_KIND = ("contract", "review_day_kind")
_WEATHER = ("schedule", "weather_days")
Line = tuple[str, Any, Any, str]


class _Days(NamedTuple):
    """The sum of the earliest start: its lines in days from the submission, and the day of acceptance where given."""

    submitted: date
    known: dict[str, float]
    accepted: date | None = None

    def find(self, *symbols: str) -> date:
        """The date so many days behind the submission."""
        return days_after(self.submitted, round(sum(self.known[symbol] for symbol in symbols)))

    @property
    def last(self) -> date:
        """The last day of the mockup, on which it is accepted if all goes as planned."""
        return days_after(self.submitted, round(self.known["E"]) - 1)

    @property
    def earliest(self) -> date:
        """The first day on which the wall may be worked at."""
        return self.accepted or self.find("E")

    def spare(self, *symbols: str, colored: bool = False) -> str:
        """How long the sum of these can be late without moving the mockup, or its coats in the color; or it governs."""
        behind = self.known.get("c", 0) if colored else 0
        days = round(self.known["M"] + behind - sum(self.known[symbol] for symbol in symbols))
        to = "first primer of mockup" if behind else "start of mockup"
        return f"{count(days, 'day')}, to {to}" if days else GOVERNS

    def spare_of_review(self) -> str:
        """The same of the review, which the mockup waits for, and a color that is ordered behind it."""
        known = self.known
        if is_ordered_behind_review(known) and known["l"] >= known.get("c", 0):
            return self.spare("R", "l", colored=True)
        return self.spare("R")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Submission, review, color, mockup, start of the work; at the stage of the work its end too."""
    lines: list[Line] = [("Submittal of this package", context.display(("schedule", "submit_on")), "", "")]
    days = None
    try:
        days = _read_days(context, context.resolve((), "earliest-start"))
        before = [*_list_before(context, days), *_list_release(context, before=days.earliest)]
        lines += [line for _, line in sorted(before, key=lambda one: one[0])]
    except Absent as absent:
        lines.append(("Earliest start of work on the wall", OPEN, ask_all(context, absent.paths), ""))
    except Refused as refused:
        lines.append(("Earliest start of work on the wall", OPEN, refused.problems[0].message, ""))
    lines.append(_tell_planned(context, days))
    lines += _list_second_review(context, days)
    if not is_short(context):
        lines += _list_behind(context, days)
    return TableView(("Event", "Date", "Follows from", "Float"), tuple(lines), (28, 18, 32, 22))


def _read_days(context: DocumentContext, working: Working) -> _Days:
    known = {row.symbol: row.value for row in working.inputs} | {step.symbol: step.value for step in working.steps}
    project = context.project
    return _Days(project.value(("schedule", "submit_on")), known, project.get(_ACCEPTED))


def _list_before(context: DocumentContext, days: _Days) -> Iterator[tuple[date, Line]]:
    """What lies before the work on the wall, each with its date."""
    known = days.known
    waited = max(known[length] for length in ("n", "n_v") if length in known)
    off = f" and {count(round(known['k']), 'day')} off" if known.get("k") else ""
    kind = "working " if context.project.get(_KIND) == "working" else ""
    longer = f",{tell_longer_review(context.project)}" if "n_v" in known else ""
    own = f"{count(round(known['g']), 'working day')} of the contractor's own review, " if "g" in known else ""
    review = f"{own}{count(round(waited), f'{kind}day')} of review{off}{longer}"
    yield days.find("R"), ("Review complete", long_date(days.find("R")), review, days.spare_of_review())
    if "o" in known:
        yield from _list_color(context, days, is_ordered_behind_review(known))
    meeting = ("schedule", "meeting_on")
    if context.project.get(meeting) is not None:
        yield context.project.value(meeting), ("Preinstallation meeting", context.display(meeting), "as planned", "")
    if "P" in known:
        planned = context.display(("mockup", "planned_on"))
        yield days.find("P"), ("Planned start of mockup", planned, "as planned", days.spare("P"))
    ready = f"{name_base(context)} of the mockup complete, latest"
    worked = find_worked_before(context, days.find("M"))
    told = ["last working day before start of mockup", *tell_base_age(context)]
    yield worked, (ready, long_date(worked), told, "")
    yield days.find("M"), ("Start of mockup", long_date(days.find("M")), _tell_latest(known), "")
    yield from _list_accepted(context, days)


def _list_color(context: DocumentContext, days: _Days, behind: bool) -> Iterator[tuple[date, Line]]:
    ordered = context.display(("schedule", "color_sample_order_on"))
    follows = "review complete" if behind else "as planned, before review is complete, at the applicator's risk"
    spare = days.spare("A", colored=True)
    yield days.find("o"), ("Order of sample color", ordered, follows, spare)
    lead = f"{count(round(days.known['l']), 'day')} of lead time"
    yield days.find("A"), ("Sample color arrives", long_date(days.find("A")), lead, spare)
    if is_later(days.known):
        needed = days.find("M", "c")
        yield needed, ("First primer of mockup, in the color", long_date(needed), "drying before it, Document D09", "")


def _tell_latest(known: dict[str, float]) -> str:
    """What the mockup waits for: `latest of review, arrival of sample color, planned start`."""
    waits = {"R": "review", "A": "arrival of sample color", "P": "planned start"}
    if is_later(known) and known["A"] - known["c"] < known["M"]:
        waits.pop("A")  # it is there before its first coat
    told = [words for symbol, words in waits.items() if symbol in known]
    return f"latest of {', '.join(told)}" if len(told) > 1 else told[0]


def _list_accepted(context: DocumentContext, days: _Days) -> Iterator[tuple[date, Line]]:
    """Acceptance of the mockup, on the day given once it is, and the first day of work behind it."""
    length = f"{count(round(days.known['D']), 'day')} of mockup, with drying and acceptance"
    if days.accepted:
        yield days.accepted, ("Acceptance of the mockup", context.display(_ACCEPTED), "as accepted", "")
    else:
        yield days.last, ("Acceptance of the mockup", long_date(days.last), length, "")
    yield (
        days.earliest,
        ("Earliest start of work on the wall", long_date(days.earliest), "acceptance of the mockup", ""),
    )


def _tell_planned(context: DocumentContext, days: _Days | None) -> Line:
    """The planned start of the work, and how it lies to the earliest one."""
    planned = context.project.get(("schedule", "work_start"))
    told = ""
    if planned is not None and days is not None:
        spare = (planned - days.earliest).days
        told = f"{count(spare, 'day')} after earliest start" if spare >= 0 else f"{count(-spare, 'day')} too early"
    return ("Planned start of work on the wall", context.display(("schedule", "work_start")), "as planned", told)


def _list_second_review(context: DocumentContext, days: _Days | None) -> Iterator[Line]:
    """The start of the work if the set must be resubmitted, and how the planned one lies to it."""
    planned = context.project.get(("schedule", "work_start"))
    if days is None or "E_2" not in days.known or days.accepted:
        return
    start, told = days.find("E_2"), ""
    if planned is not None:
        late = (start - planned).days
        told = f"{count(late, 'day')} past planned start" if late > 0 else f"{count(-late, 'day')}, to planned start"
    kind = "working " if context.project.get(_KIND) == "working" else ""
    again = f"{count(round(days.known['n_2']), f'{kind}day')} of second review; resubmitted on the day of return"
    yield "If resubmitted: earliest start of work on the wall", long_date(start), again, told


def _list_release(context: DocumentContext, *, before: date) -> Iterator[tuple[date, Line]]:
    """By when the joint layout is released, where that is before the work on the wall."""
    release = find_layout_release(context)
    if release is not None and release.latest < before:
        told = long_date(release.latest)
        yield release.latest, ("Release of the joint layout, latest", told, release.follows, "")


def _list_behind(context: DocumentContext, days: _Days | None) -> list[Line]:
    """Release of the layout, season, last gloss, end of the work and completion of the contract, by their dates."""
    dated: list[tuple[date | None, Line]] = [*_list_ends(context), _tell_end(context)]
    release = find_layout_release(context)
    if release is not None and (days is None or release.latest >= days.earliest):
        dated += _list_release(context, before=date.max)
    dated.sort(key=lambda one: one[0] or date.max)
    return [line for _, line in dated]


def _list_ends(context: DocumentContext) -> Iterator[tuple[date | None, Line]]:
    """The window as planned, the first cut, the last gloss as scheduled, and the completion date."""
    schedule, project = find_schedule(context), context.project
    for name, said in (("spray_start", "First day of spray window"), ("spray_end", "Last day of spray window")):
        path = ("schedule", name)
        yield project.get(path), (said, context.display(path), "as planned", "")
    sprayed = [one.end for one in schedule.activities if one.step in SPRAYED] if schedule else []
    if sprayed:
        dry, told = (
            max(sprayed).date(),
            _tell_spare(project.get(("schedule", "spray_end")), max(sprayed).date(), "end of window"),
        )
        by = "activities below, without weather days" if project.get(_WEATHER) else "activities below"
        yield dry, ("Gloss dry on the last elevation", long_date(dry), by, told)
    path = ("contract", "completion_date")
    if project.get(path) is not None:
        yield project.get(path), ("Completion date of the contract", context.display(path), "", "")


def _tell_end(context: DocumentContext) -> tuple[date | None, Line]:
    """The end of all activities, and how it lies to the completion date."""
    schedule, said = find_schedule(context), "End of the work"
    if schedule is None or schedule.missing:
        return None, (said, OPEN, tell_untold(context), "")
    end, completion = schedule.end.date(), context.project.get(("contract", "completion_date"))
    told = "activities below, weather days included" if context.project.get(_WEATHER) else "activities below"
    if schedule.untimed:
        told += ", without the steps for which no output is given"
        said += ", earliest"
    return end, (said, long_date(end), told, _tell_spare(completion, end, "completion"))


def _tell_spare(limit: date | None, day: date, to: str) -> str:
    """How many days a day lies before another, of which it is said what it is; or behind it."""
    if limit is None:
        return ""
    spare = (limit - day).days
    return f"{count(spare, 'day')}, to {to}" if spare >= 0 else f"{count(-spare, 'day')} late"
