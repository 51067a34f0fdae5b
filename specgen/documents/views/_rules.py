"""How rules are named where a reader is to find them, and which of those not evaluated bear on a wall."""

import re
from collections.abc import Iterable
from typing import Any, cast

from specgen.computing.code.special_inspection_due import list_exempt
from specgen.documents.context import DocumentContext
from specgen.documents.standing_walls import list_solid
from specgen.documents.views._asked import DECISION, list_asked
from specgen.judging.registry import load_rules
from specgen.model.finding import Verdict

# Groups of rules on the wall itself that a design draft does not have to judge, and the decision on a wall asks for.
_OF_THE_FACE = ("PLN", "BAS")
_INSPECTION = "COD-04"
_CLAUSE = re.compile(r"([A-Z]{3}-\d\d)[a-z]")


def name_rules(codes: Iterable[str]) -> list[str]:
    """The rules of these codes, each once, by code and title: `HEA-05 Dark color over EPS`."""
    titles = {rule.code: rule.title for rule in load_rules()}
    return [f"{code} {titles[code]}" for code in dict.fromkeys(codes)]


def strip_clause(code: str) -> str:
    """The rule of a clause, `COD-03` of `COD-03a`; a section of the code, `COD, 2603.5.4`, as it is."""
    return _CLAUSE.sub(r"\1", code)


def list_undecided(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The rules not evaluated that the decision on a wall waits for: those that decide, and those on its face."""
    judged = context.judgment.walls[mark]
    if judged.verdict is not Verdict.NOT_YET_KNOWN:
        return judged.undecided
    # What lies behind a wall that stands is confirmed first.
    solid = list_solid(context)
    asked = {entry.path for entry in list_asked(context) if entry.order <= DECISION[0]}
    bearing = (
        clause.rule
        for clause in context.judgment.not_judged
        if clause.rule[:3] in _OF_THE_FACE and mark in clause.walls and not asked.isdisjoint(clause.needs)
    )
    exempt = _INSPECTION if mark in list_exempt(cast(Any, context.project.root())) and mark not in solid else ""
    return tuple(rule for rule in dict.fromkeys((*judged.undecided, *bearing)) if rule != exempt)
