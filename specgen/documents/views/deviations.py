"""The deviation sheets: what is required, what is proposed and why, what it affects, and who approves it."""

import re
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deviations import name_paragraphs, tell_approval
from specgen.model.block import Blank
from specgen.model.value_text import words

_RULE = re.compile(r"[A-Z]{3}-\d\d[a-z]?")
_ASKED = {"Required": "demanded", "Proposed": "proposed", "Reason": "reason"}
_EFFECTS = {
    "cost": "cost",
    "time": "time",
    "fire": "fire safety",
    "warranty": "warranty",
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each entry of a sheet; the mark of the deviation stands in the first of them."""
    marks = context.project.members.get(("deviations",), ())
    lines = [
        (mark if not number else "", *entry)
        for mark in marks
        for number, entry in enumerate(_list_entries(context, mark))
    ]
    return TableView(("No.", "Subject", "Deviation"), tuple(lines), (9, 25, 66))


def _list_entries(context: DocumentContext, mark: str) -> list[tuple[str, Any]]:
    project, at = context.project, ("deviations", mark)
    lifted = _name_lifted(context, mark)
    entries: list[tuple[str, Any]] = [
        *_tell_kind(context, mark),
        (_title_answers(context, mark), name_paragraphs(project, mark) or context.display((*at, "answers"))),
        *((title, context.display((*at, name))) for title, name in _ASKED.items()),
        *_tell_effects(context, mark),
        *([("Conditions answered", lifted)] if lifted else []),
    ]
    if project.get((*at, "approved_on")):
        return [*entries, ("Approval", tell_approval(project, mark))]
    blanks = [Blank(f"Approved by, {mark}"), ", date ", Blank(f"Date of approval, {mark}", "date")]
    return [*entries, ("Approval", ["not approved; by ", *blanks])]


def _title_answers(context: DocumentContext, mark: str) -> str:
    """What a deviation answers: a paragraph of the specification, or nothing but rules."""
    answers = context.project.get(("deviations", mark, "answers")) or ()
    return "Rule" if answers and all(_RULE.fullmatch(str(one)) for one in answers) else "Specification paragraph"


def _tell_kind(context: DocumentContext, mark: str) -> list[tuple[str, Any]]:
    """What the heading does not say already: a substitution, or a kind still open."""
    kind = context.display(("deviations", mark, "kind"))
    if kind.raw == "deviation" and not kind.open:
        return []
    return [("Kind", kind if kind.open else words(str(kind.raw)).capitalize())]


def _tell_effects(context: DocumentContext, mark: str) -> list[tuple[str, Any]]:
    """The effects, those of which the same is said in one row: `Effect on cost, time`."""
    alike: dict[str, tuple[list[str], Any]] = {}
    for name, said in _EFFECTS.items():
        value = context.display(("deviations", mark, "effects", name))
        alike.setdefault(f"{said} {value}" if value.open else str(value), ([], value))[0].append(said)
    return [(f"Effect on {', '.join(named)}", value) for named, value in alike.values()]


def _name_lifted(context: DocumentContext, mark: str) -> str:
    """The codes of the rules whose stop the deviation turns into a caution; empty if there is none."""
    lifted = dict.fromkeys(f.code for f in context.judgment.findings if f.lifted_by == mark)
    return f"{', '.join(lifted)}, see D05" if lifted else ""
