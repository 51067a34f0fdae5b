"""The rules on a wall that are not evaluated: those before the decision on it, and those that follow."""

from collections.abc import Iterable
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.required_documents import list_pending
from specgen.documents.untold_faces import PREPARED, list_untold_faces
from specgen.documents.views._concerned import concerns
from specgen.documents.views._document_stages import list_deciding
from specgen.documents.views._requests import list_requests
from specgen.documents.views._rules import list_undecided, strip_clause
from specgen.documents.views._stages import DECISION
from specgen.documents.waiting_rules import list_waiting_rules
from specgen.judging.verdict import OF_A_WALL
from specgen.model.value_text import count


class OpenRules(NamedTuple):
    """The codes of rules that are not evaluated."""

    before: tuple[str, ...]  # before the decision on the walls
    after: tuple[str, ...]  # at a later stage, as what they wait for is asked for then


def list_open_rules(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The rules on a wall that are not evaluated: those that lack a value, and those that wait for a document alone.

    A rule on the work is among them whose document the wall is decided by.
    """
    waiting = list_waiting_rules(context)
    open_ = {*waiting, *(clause.rule for clause in context.judgment.not_judged)}
    decides = {strip_clause(entry.code) for entry in list_deciding(context, mark)}
    of_wall = (rule for rule in waiting if rule[:3] in OF_A_WALL and _is_on(context, rule, mark))
    of_work = sorted(rule for rule in open_ & decides if rule[:3] not in OF_A_WALL)
    return (*list_undecided(context, mark), *of_wall, *of_work)


def _is_on(context: DocumentContext, rule: str, mark: str) -> bool:
    """Whether a document that a rule waits for, or an answer, is about a wall."""
    if rule == PREPARED and mark in list_untold_faces(context):
        return True
    return any(entry.code.startswith(rule) and concerns(context, entry, mark) for entry in list_pending(context))


def split_rules(context: DocumentContext, rules: Iterable[str]) -> OpenRules:
    """The rules by when all that they wait for is due."""
    late = context.remember(_find_late)
    told = tuple(rules)
    return OpenRules(tuple(r for r in told if r not in late), tuple(r for r in told if r in late))


def tell_split(context: DocumentContext, mark: str) -> str:
    """`27 rules not evaluated: 13 due before the decision, 14 after it`; empty for none."""
    rules = list_open_rules(context, mark)
    split = split_rules(context, rules)
    told = f"{count(len(rules), 'rule')} not evaluated" if rules else ""
    parts = f": {len(split.before)} due before the decision, {len(split.after)} after it"
    return told + parts if split.after else told


def _find_late(context: DocumentContext) -> frozenset[str]:
    """The rules that wait for something that is asked for later than the decision, and for no document before it."""
    late = (request for request in list_requests(context) if request.order > DECISION[0])
    decides = {strip_clause(one.code) for mark in context.judgment.walls for one in list_deciding(context, mark)}
    return frozenset(code for request in late for item in request.items for code in item.holds) - decides
