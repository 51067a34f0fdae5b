"""The date by which each stage has its answers: that of the project, one counted back from it, or a blank."""

import datetime

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.submission import find_checked_before, find_issue, find_last_submission, find_worked_before
from specgen.documents.views._requests import list_requests
from specgen.documents.views._stages import DECISION, NAMING, SENDING, START, SUBMITTAL, find_last, find_next_package
from specgen.model.block import Blank
from specgen.model.field import Path
from specgen.model.value_text import long_date

LATER = "each later step"
_HEAD = 15
_AT_ONCE = "at once"
# The field that dates a stage behind the issue of the package.
_DATED_BY: dict[str, Path] = {"mockup": ("mockup", "planned_on"), START[1]: ("schedule", "work_start")}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row of dates below the stages before which something is asked, the steps of the work in one.

    None where the project dates no stage.
    """
    told = _list_stages(context)
    if _is_undated(told):
        return TableView((), (), ())
    heads = ("Needed before", *(f"{stage[:1].upper()}{stage[1:]}" for stage, _ in told))
    share = (100 - _HEAD) // len(told)
    widths = (100 - share * len(told), *([share] * len(told)))
    return TableView(heads, (("Reply by", *(date for _, date in told)),), widths)


def tell_undated(context: DocumentContext) -> str:
    """`first requests, at once; mockup; start of work`: the stages in order, where the project dates none of them."""
    told = _list_stages(context)
    stages = (f"{before}, {_AT_ONCE}" if date == _AT_ONCE else before for before, date in told)
    return "; ".join(stages) if _is_undated(told) else ""


def _list_stages(context: DocumentContext) -> list[tuple[str, object]]:
    """The stages before which something is asked, each with its date; the steps of the work in one."""
    stages = sorted({(request.order, request.before): None for request in list_requests(context)})
    dated = [(order, before) for order, before in stages if order <= SENDING[0] or before in _DATED_BY]
    told = [(before, _tell_date(context, order, before)) for order, before in dated]
    # Whoever is to do anything is asked first, though a hazard holds all work.
    told.sort(key=lambda stage: stage[0] != NAMING[1])
    return told + ([(LATER, Blank(f"Reply by, before {LATER}", "date"))] if len(dated) < len(stages) else [])


def _is_undated(told: list[tuple[str, object]]) -> bool:
    return all(isinstance(date, Blank) or date == _AT_ONCE for _, date in told)


def find_due(context: DocumentContext, order: int) -> datetime.date | None:
    """The date of the first stage that does not begin before the work of this order; None where none is dated.

    What the decision on the walls needs is due before it is made, and that before the package is issued.
    """
    if order == SENDING[0]:
        return find_last_submission(context) or context.project.get(("schedule", "submit_on"))
    if order <= SUBMITTAL[0]:
        days = context.remember(find_issue)
        if days is not None:
            return days.replied if order <= DECISION[0] else days.completed
        if context.project.get(("schedule", "submit_on")) is not None:
            return None
    return min((day for at, day in context.remember(_list_days) if at >= order), default=None)


def _tell_date(context: DocumentContext, order: int, before: str) -> object:
    """The date of a stage; a blank where none is dated, and for work on an old wall, agreed on site."""
    if order == NAMING[0]:
        return _AT_ONCE
    due = find_due(context, order) if order >= DECISION[0] else None
    return long_date(due) if due else Blank(f"Reply by, before {before}", "date")


def _find_date(context: DocumentContext, stage: str) -> datetime.date | None:
    """The last day on which a reply can be checked before a stage, or the working day before it where that is past.

    None where the project dates none, or the date of this draft is past it. Behind a draft the submittal for the
    mockup is issued when no item needed before the mockup is open.
    """
    issue = context.remember(find_issue) if stage == "mockup" and _is_submitted_next(context) else None
    if issue is not None:
        return issue.completed
    given, drafted = context.project.get(_DATED_BY[stage]), context.project.get(("package", "date"))
    if not isinstance(given, datetime.date) or (drafted is not None and given <= drafted):
        return None
    checked = find_checked_before(context, given)
    return checked if drafted is None or checked > drafted else find_worked_before(context, given)


def _is_submitted_next(context: DocumentContext) -> bool:
    """Whether the next submittal is that for the mockup."""
    return find_next_package(context) != SUBMITTAL


def _list_days(context: DocumentContext) -> tuple[tuple[int, datetime.date], ...]:
    """The dates of the stages behind the issue that have one, each behind the order of its stage."""
    orders = {"mockup": find_last(context, "mockup"), START[1]: START[0]}
    dated = ((order, _find_date(context, stage)) for stage, order in orders.items())
    return tuple((order, date) for order, date in dated if date is not None)
