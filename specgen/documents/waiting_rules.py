"""The rules that wait for a document, or for an answer that no field holds."""

import re

from specgen.documents.context import DocumentContext
from specgen.documents.required_documents import list_pending
from specgen.documents.untold_faces import PREPARED, list_untold_faces

_RULE = re.compile(r"[A-Z]{3}-\d\d")
_REVIEWED, _COMPLETE = "SUB-05", "SUB-09"


def list_waiting_rules(context: DocumentContext) -> list[str]:
    """The rules that are evaluated again when a document, an answer, the last value, or the review comes."""
    unjudged = _list_unjudged(context)
    waiting = {entry.code[:6] for entry in list_pending(context) if _RULE.match(entry.code)}
    if list_untold_faces(context):
        waiting.add(PREPARED)
    if awaits_review(context):
        waiting.add(_REVIEWED)
    if context.judgment.open_items and not _is_design_draft(context):
        waiting.add(_COMPLETE)
    return sorted(waiting - unjudged)


def awaits_review(context: DocumentContext) -> bool:
    """Whether a package that is to be submitted lists no paragraph of the specification yet."""
    return not _is_design_draft(context) and not context.project.members.get(("contract", "demands"))


def _is_design_draft(context: DocumentContext) -> bool:
    return bool(context.project.value(("package", "purpose")) == "design_draft")


def count_not_evaluated(context: DocumentContext) -> int:
    """How many rules wait for a value or for a document."""
    return len(_list_unjudged(context)) + len(list_waiting_rules(context))


def _list_unjudged(context: DocumentContext) -> set[str]:
    """The rules of which a clause waits for a value."""
    return {clause.rule for clause in context.judgment.not_judged}
