"""How rules are named where a reader is to find them, and which of those not evaluated bear on a wall."""

import re
from collections.abc import Iterable
from typing import Any, cast

from specgen.computing.code.special_inspection_due import list_exempt
from specgen.documents.context import DocumentContext
from specgen.documents.standing_walls import list_solid
from specgen.judging.registry import load_rules
from specgen.judging.verdict import list_unjudged

_INSPECTION = "COD-04"
_CLAUSE = re.compile(r"([A-Z]{3}-\d\d)[a-z]")


def name_rules(codes: Iterable[str]) -> list[str]:
    """The rules of these codes, each once, by code and title: `HEA-05 Dark color over EPS`."""
    titles = {rule.code: rule.title for rule in load_rules()}
    return [f"{code} {titles[code]}" for code in dict.fromkeys(codes)]


def strip_clause(code: str) -> str:
    """The rule of a clause, `COD-03` of `COD-03a`; a section of the code, `COD 2603.5.4`, as it is."""
    return _CLAUSE.sub(r"\1", code)


def list_undecided(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The rules on a wall that are not evaluated, whether or not its verdict waits for them."""
    # What lies behind a wall that stands is confirmed first.
    exempt = mark in context.remember(_find_exempt)
    return tuple(rule for rule in list_unjudged(context.judgment, mark) if rule != _INSPECTION or not exempt)


def _find_exempt(context: DocumentContext) -> set[str]:
    """The walls that need no special inspection whatever the others need, and of which nothing is to be confirmed."""
    return set(list_exempt(cast(Any, context.project.root()))) - set(list_solid(context))
