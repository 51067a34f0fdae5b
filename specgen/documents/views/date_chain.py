"""The chain of dates from submittal to work: what each follows from, its float, and which one governs."""

from collections.abc import Iterator
from datetime import date
from typing import Any, NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.schedule import SPRAYED, find_schedule, is_short
from specgen.documents.views._cells import OPEN, ask_all
from specgen.documents.views.schedule_activities import tell_untold
from specgen.model.absence import Absent
from specgen.model.dates import days_after
from specgen.model.problem import Refused
from specgen.model.value_text import count, long_date
from specgen.model.working import Working

GOVERNS = "governs"
_WEATHER = ("schedule", "weather_days")
Line = tuple[str, Any, Any, str]


class _Days(NamedTuple):
    """The sum of the earliest start: its lines in days from the submission, and what governs the mockup."""

    submitted: date
    known: dict[str, float]
    case: str

    def tell(self, *symbols: str) -> str:
        """The date so many days behind the submission."""
        return long_date(days_after(self.submitted, round(sum(self.known[symbol] for symbol in symbols))))

    def spare(self, case: str, *symbols: str) -> str:
        """How long before the mockup it is, or that the mockup waits for it."""
        if self.case == case:
            return GOVERNS
        return count(round(self.known["M"] - sum(self.known[symbol] for symbol in symbols)), "day")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Submission, review, color, mockup, start of the work; at the stage of the work its end too."""
    lines: list[Line] = [("Submittal of this package", context.display(("schedule", "submit_on")), "", "")]
    try:
        lines += _list_before(context, _read_days(context, context.resolve((), "earliest-start")))
    except Absent as absent:
        lines.append(("Earliest start of work on the wall", OPEN, ask_all(context, absent.paths), ""))
    except Refused as refused:
        lines.append(("Earliest start of work on the wall", OPEN, refused.problems[0].message, ""))
    lines.append(_tell_planned(context))
    if not is_short(context):
        lines += _list_behind(context)
    return TableView(("Event", "Date", "Follows from", "Float"), tuple(lines), (32, 20, 36, 12))


def _read_days(context: DocumentContext, working: Working) -> _Days:
    known = {row.symbol: row.value for row in working.inputs} | {step.symbol: step.value for step in working.steps}
    return _Days(context.project.value(("schedule", "submit_on")), known, working.governing_case)


def _list_before(context: DocumentContext, days: _Days) -> Iterator[Line]:
    known = days.known
    waited = max(known["n"], known.get("n_v", 0))
    off = f" and {count(round(known['k']), 'day')} off" if known.get("k") else ""
    kind = "working " if "k" in known else ""
    review = f"{count(round(waited), f'{kind}day')} of review{off}{', with deviations' if 'n_v' in known else ''}"
    yield ("Review complete", days.tell("R"), review, days.spare("the review", "R"))
    if "o" in known:
        ordered = context.display(("schedule", "color_sample_order_on"))
        yield ("Order of sample color", ordered, "", "")
        lead = f"{count(round(known['l']), 'day')} of lead time"
        yield ("Sample color arrives", days.tell("A"), lead, days.spare("the sample color", "A"))
    if "P" in known:
        planned = context.display(("mockup", "planned_on"))
        yield ("Planned start of mockup", planned, "as planned", days.spare("the planned mockup start", "P"))
    yield ("Start of mockup", days.tell("M"), f"the latest of these: {days.case}", "")
    length = f"{count(round(known['D']), 'day')} of mockup, with drying and acceptance"
    yield ("Earliest start of work on the wall", days.tell("E"), length, "")


def _tell_planned(context: DocumentContext) -> Line:
    """The planned start of the work, and how it lies to the earliest one."""
    planned = context.project.get(("schedule", "work_start"))
    told = ""
    try:
        days = _read_days(context, context.resolve((), "earliest-start"))
    except (Absent, Refused):
        days = None
    if planned is not None and days is not None:
        spare = (planned - days_after(days.submitted, round(days.known["E"]))).days
        told = count(spare, "day") if spare >= 0 else f"{count(-spare, 'day')} too early"
    return ("Planned start of work on the wall", context.display(("schedule", "work_start")), "as planned", told)


def _list_behind(context: DocumentContext) -> list[Line]:
    """Season, last gloss, end of the work and completion of the contract, by their dates."""
    dated = [*_list_ends(context), _tell_end(context)]
    dated.sort(key=lambda one: one[0] or date.max)
    return [line for _, line in dated]


def _list_ends(context: DocumentContext) -> Iterator[tuple[date | None, Line]]:
    """The season as planned, the last gloss as scheduled, and the completion date."""
    schedule, project = find_schedule(context), context.project
    for name, said in (("spray_start", "Start of spray season"), ("spray_end", "End of spray season")):
        path = ("schedule", name)
        yield project.get(path), (said, context.display(path), "as planned", "")
    sprayed = [one.end for one in schedule.activities if one.step in SPRAYED] if schedule else []
    if sprayed:
        dry, told = max(sprayed).date(), _tell_spare(project.get(("schedule", "spray_end")), max(sprayed).date())
        yield dry, ("Gloss dry on the last elevation", long_date(dry), "activities below", told)
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
    return end, (said, long_date(end), told, _tell_spare(completion, end))


def _tell_spare(limit: date | None, day: date) -> str:
    """How many days a day lies before another, or behind it."""
    if limit is None:
        return ""
    spare = (limit - day).days
    return count(spare, "day") if spare >= 0 else f"{count(-spare, 'day')} late"
