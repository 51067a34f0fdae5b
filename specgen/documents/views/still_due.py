"""What is still to be done when a set is issued: signatures, action, releases, measures, and papers due later."""

import datetime
import re
from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.held import list_held
from specgen.documents.layout_release import find_layout_release
from specgen.documents.measures import list_measures, name_rules
from specgen.documents.mockup import find_ready_day
from specgen.documents.parties import tell_party
from specgen.documents.register import ITEMS, is_government
from specgen.documents.required_documents import list_measured
from specgen.documents.schedule_beside import find_open_smoothing
from specgen.documents.transmittal import find_governing_day, list_items_of
from specgen.documents.verifiers import find_signing_day, is_checked_by_engineer
from specgen.documents.views.calculation_review import CHECKER, SIGNING
from specgen.model.stage import STAGES
from specgen.model.value_text import long_date

# The days of the project by the work that a measure is taken before.
_DAYS = {
    "mockup": ("mockup", "planned_on"),
    "start of work": ("schedule", "work_start"),
    "spraying": ("schedule", "spray_start"),
}
_FRAMED = "free_standing"
_COMPLETION, _CARE = ("contract", "completion_date"), "D16"
_WARRANTY = re.compile("warrant", re.IGNORECASE)
Line = tuple[Any, Any, str]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each; none in a draft, which asks for what is open instead."""
    lines: list[Line] = []
    if not context.is_draft:
        lines += _list_signatures(context)
        closing = context.project.value(("package", "purpose")) == STAGES[-1]
        lines += () if closing else _list_reviews(context)
    return TableView(("Item", "By", "Before"), tuple(lines), (48, 30, 22))


def _list_reviews(context: DocumentContext) -> Iterator[Line]:
    yield from _list_action(context)
    yield from _list_release(context)
    yield from _list_measures(context)
    yield from _list_frame(context)
    yield from _list_open_coats(context)
    yield from _list_later(context)


def _list_signatures(context: DocumentContext) -> Iterator[Line]:
    """Who has still to sign the calculations."""
    for role, said in SIGNING.items():
        if find_signing_day(context.project, role):
            continue
        sealed = role == CHECKER and is_checked_by_engineer(context.project)
        asked = "signature, date, and seal" if sealed else "signature and date"
        path = ("package", f"{role}_by")
        who = context.display(path) if context.project.is_given(path) else "–"
        yield f"D06, {said.lower()}: {asked}", who, _tell_day("submittal", context.project.get(("package", "date")))


def _list_action(context: DocumentContext) -> Iterator[Line]:
    """Action of the reviewer on the items of the register, and on each deviation that is not approved."""
    governing, items = find_governing_day(context), list_items_of(context, "action")
    before = _tell_day(governing.waits, governing.day) if governing else "the work"
    party = tell_party(context, "owner" if is_government(context) else "architect")
    if items:
        yield f"Action on items {items}", party, before
    for mark in context.project.members.get(("deviations",), ()):
        if context.project.get(("deviations", mark, "approved_on")) is None:
            yield f"Approval of deviation {mark}, D03", party, before


def _list_release(context: DocumentContext) -> Iterator[Line]:
    """The joint layout, which nobody cuts or sets board by before it is released."""
    release = find_layout_release(context)
    if release is not None:
        before = _tell_day(release.follows, release.latest)
        yield "Release of the joint layout, D07", tell_party(context, "architect"), before


def _list_measures(context: DocumentContext) -> Iterator[Line]:
    """The measures of D05 by party and work."""
    together: dict[tuple[str, str], list[str]] = {}
    for one in list_measures(context.project, list_measured(context)):
        together.setdefault((one.by, one.before), []).append(name_rules(one.codes))
    for (by, before), codes in together.items():
        day = context.project.get(_DAYS[before]) if before in _DAYS else None
        yield f"Measures of D05: {', '.join(dict.fromkeys(codes))}", tell_party(context, by), _tell_day(before, day)


def _list_frame(context: DocumentContext) -> Iterator[Line]:
    """The design of the frame of a free-standing mockup, which carries its cloth or tent in the wind."""
    if context.project.get(("mockup", "kind")) != _FRAMED or context.project.get(("mockup", "accepted_on")) is not None:
        return
    engineer = context.project.is_given(("parties", "design_engineer", "name"))
    by = tell_party(context, "design_engineer" if engineer else "applicator")
    asked = "Signed design of the frame of the mockup, with what shades or encloses it, D09"
    ready = find_ready_day(context)
    yield asked, by, f"work on the frame{f', complete {long_date(ready)}' if ready else ''}"


def _list_open_coats(context: DocumentContext) -> Iterator[Line]:
    """How long a smoothing coat may stand open, where it waits for the season and nobody has said it."""
    begun = find_open_smoothing(context)
    if begun is not None and context.project.get(("smoothing", "most_open_days")) is None:
        product = context.project.get(("smoothing", "product")) or "the smoothing coat"
        asked = f"Written maximum for {product} to stand open in the weather before primer, D14"
        yield asked, tell_party(context, "finish_source"), _tell_day("first smoothing coat", begun)


def _list_later(context: DocumentContext) -> Iterator[Line]:
    """The items of the register that are due after this issue, and the warranty as executed."""
    project, issued = context.project, context.project.get(("package", "date"))
    titles = []
    for mark in project.members.get(ITEMS, ()):
        title, due = (project.get((*ITEMS, mark, name)) for name in ("title", "due_on"))
        if issued is not None and due is not None and due > issued:
            titles.append(str(title))
            yield f"{mark}: {title}", tell_party(context, "general_contractor"), long_date(due)
    if any(held.id == _CARE for held in list_held(context)):
        yield (
            f"Written washing instructions of the finish, {_CARE}",
            tell_party(context, "finish_source"),
            _tell_day("completion", project.get(_COMPLETION)),
        )
    warrantors = project.get(("contract", "warrantors")) or ()
    if warrantors and not any(map(_WARRANTY.search, titles)):
        named = "; ".join(tell_party(context, str(role)) for role in warrantors)
        yield "Executed warranty", named, _tell_day("completion", project.get(_COMPLETION))


def _tell_day(work: str, day: datetime.date | None) -> str:
    """`spraying, July 12, 2027`."""
    return f"{work}, {long_date(day)}" if day else work
