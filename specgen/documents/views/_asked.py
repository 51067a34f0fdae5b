"""The values that somebody is asked for: what they are, who supplies them, and before what they are needed."""

from collections import defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from specgen.documents.calculations import gather_calculations
from specgen.documents.context import DocumentContext
from specgen.documents.required_documents import RequiredDocument, list_pending
from specgen.documents.views._fields import ask_by_code, find_field
from specgen.judging.registry import load_rules
from specgen.model.field import Field, dotted_path

# Answered before anybody disturbs an old coating.
_HAZARDS = ("lead_tested", "lead_found", "asbestos_tested", "asbestos_found", "built_year")
_HAZARD = (0, "any work on the old coating")
_DECISION = (1, "decision on the walls")
_SUBMITTAL = (2, "this submittal")
_START = (3, "start of work")
# What a document may be needed before that is no step.
_STAGES = {"submittal": _SUBMITTAL, "work starts": _START}
# The number of the first step of the work.
_FIRST_STEP = 4
_CLOSEOUT = (99, "closeout")
# The steps that come before any work on the walls.
_BEFORE_WORK = ("equipment", "site_conditions")
# A document that holds the values asked of a party, which are then asked for by its name alone.
_HELD_BY = {"SUB-01a": "package.contractor_review."}
# The list of documents itself: each of them is asked for by name.
_DOCUMENTS = "attachments"


class Asked(NamedTuple):
    """A value that is still to be given."""

    path: str  # dotted
    party: str  # the role of who supplies it
    order: int  # of what it is needed before
    before: str  # what it is needed before


class _Stages(NamedTuple):
    """What tells before what a value is needed."""

    deciding: frozenset[str]  # paths that a wall's verdict waits for
    owed: frozenset[str]  # paths owed for this submittal
    steps: dict[str, tuple[str, ...]]  # those that the rules waiting for a value are about, by its path
    titles: dict[str, str]  # of all steps, in the order of the work

    def find(self, path: str, field: Field) -> tuple[int, str]:
        """A hazard, the decision on a wall, the submittal, or the first step of the work that a value is about."""
        if field.path[-1] in _HAZARDS:
            return _HAZARD
        if path in self.deciding or field.ring == "verdict":
            return _DECISION
        if path in self.owed:
            return _SUBMITTAL
        order, steps = list(self.titles), self.steps.get(path, ())
        if field.ring == "mockup":
            return _FIRST_STEP + order.index("mockup"), "mockup"
        if field.ring == "closeout" and not steps:
            return _CLOSEOUT
        if not steps or not set(steps).isdisjoint(_BEFORE_WORK):
            return _START
        return _tell_step(self.titles, min(steps, key=order.index))


def list_asked(context: DocumentContext) -> list[Asked]:
    """Every open item, every value that a rule or a sum waits for, and every value in brackets, each once."""
    held = tuple(_HELD_BY[entry.code] for entry in list_pending(context) if entry.code in _HELD_BY)
    stages = _find_stages(context)
    found = []
    for path in ask_by_code(context, _find_paths(context)):
        field = find_field(context, path)
        if field is not None and path != _DOCUMENTS and not path.startswith(held or "\0"):
            found.append(Asked(path, field.owed_by, *stages.find(path, field)))
    return found


def _find_paths(context: DocumentContext) -> Iterator[str]:
    judgment = context.judgment
    yield from (item.path for item in judgment.open_items)
    yield from (need for clause in judgment.not_judged for need in clause.needs)
    yield from context.rest.asked
    for calculation in gather_calculations(context):
        for waiting in calculation.waiting:
            # Where a whole collection is missing, it is asked for, and none of its fields.
            yield from (dotted_path(path[: path.index("*")] if "*" in path else path) for path in waiting.paths)


def sort_document(context: DocumentContext, document: RequiredDocument) -> tuple[int, str]:
    """What a document is needed before: the decision on a wall that waits for it, the submittal, or a step."""
    deciding = {code for wall in context.judgment.walls.values() for code in wall.deciding}
    if document.code in deciding or document.code.startswith("COD"):
        return _DECISION
    if document.before in _STAGES:
        return _STAGES[document.before]
    return _tell_step({name: step.title for name, step in context.standards.steps.items()}, document.before)


def _tell_step(titles: dict[str, str], step: str) -> tuple[int, str]:
    """A step by its place in the order of the work and its title within a sentence."""
    title = titles[step]
    return _FIRST_STEP + list(titles).index(step), title[:1].lower() + title[1:]


def _find_stages(context: DocumentContext) -> _Stages:
    judgment = context.judgment
    of_rule = {rule.code: rule.steps for rule in load_rules()}
    steps: dict[str, tuple[str, ...]] = defaultdict(tuple)
    for clause in judgment.not_judged:
        for need in clause.needs:
            steps[need] += of_rule[clause.rule]
    return _Stages(
        frozenset(ask_by_code(context, (path for wall in judgment.walls.values() for path in wall.fields))),
        frozenset(item.path for item in judgment.open_items),
        steps,
        {name: step.title for name, step in context.standards.steps.items()},
    )
