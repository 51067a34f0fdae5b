"""The deviation sheets: what is required, what is proposed and why, what it affects, and who approves it."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deviations import name_paragraphs, tell_approval
from specgen.model.block import Blank
from specgen.model.value_text import words

_ASKED = {"Required": "demanded", "Proposed": "proposed", "Reason": "reason"}
_EFFECTS = {
    "cost": "Effect on cost",
    "time": "Effect on time",
    "fire": "Effect on fire safety",
    "warranty": "Effect on warranty",
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
    kind = context.display((*at, "kind"))
    entries: list[tuple[str, Any]] = [
        ("Kind", kind if kind.open else words(str(kind.raw)).capitalize()),
        ("Requirement, rules answered", name_paragraphs(project, mark) or context.display((*at, "answers"))),
        *((title, context.display((*at, name))) for title, name in _ASKED.items()),
        *((title, context.display((*at, "effects", name))) for name, title in _EFFECTS.items()),
        ("Rules lifted", _name_lifted(context, mark)),
    ]
    if project.get((*at, "approved_on")):
        return [*entries, ("Approval", tell_approval(project, mark))]
    blanks = [Blank(f"Approved by, {mark}"), ", date ", Blank(f"Date of approval, {mark}", "date")]
    return [*entries, ("Approval", ["not approved; by ", *blanks])]


def _name_lifted(context: DocumentContext, mark: str) -> str:
    """The codes of the rules whose stop the deviation turns into a caution."""
    lifted = dict.fromkeys(f.code for f in context.judgment.findings if f.lifted_by == mark)
    return f"{', '.join(lifted)}, see D05" if lifted else "none"
