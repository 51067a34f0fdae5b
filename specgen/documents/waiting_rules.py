"""The rules that wait for a document alone."""

import re

from specgen.documents.context import DocumentContext
from specgen.documents.required_documents import list_pending

_RULE = re.compile(r"[A-Z]{3}-\d\d")


def list_waiting_rules(context: DocumentContext) -> list[str]:
    """The rules that are evaluated again when a document comes, and wait for no value."""
    unjudged = _list_unjudged(context)
    waiting = {entry.code[:6] for entry in list_pending(context) if _RULE.match(entry.code)}
    return sorted(waiting - unjudged)


def count_not_evaluated(context: DocumentContext) -> int:
    """How many rules wait for a value or for a document."""
    return len(_list_unjudged(context)) + len(list_waiting_rules(context))


def _list_unjudged(context: DocumentContext) -> set[str]:
    """The rules of which a clause waits for a value."""
    return {clause.rule for clause in context.judgment.not_judged}
