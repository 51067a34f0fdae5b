"""Every field the package owes is filled before the package goes out.

Why: a reader of the package cannot tell a value left open from one that was forgotten. In a draft
the gaps are listed; a set that is handed in may have none.

fails SUB-09a at walls.W1.insulation.kind
    package: {purpose: design_draft}
fails SUB-09b at walls.W1.insulation.kind
    package: {purpose: mockup_submittal}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import NOTE, STOP, Found, Rule

RULE = Rule(
    "SUB-09",
    "Every owed field filled",
    remedy="Fill, with source named.",
    steps="site_conditions",
    documents="D19",
    manual=__doc__,
)


@RULE.clause(
    "a",
    NOTE,
    "{path} is still open; it holds up {clauses}.",
    each="field",
    needs="package.purpose",
    basis="practice contract_review",
)
def open_in_draft(project: Any) -> Iterator[Found]:
    """Never run: open items are worked out apart, one for each field, with the clauses that wait for it."""
    yield from ()


@RULE.clause(
    "b",
    STOP,
    "{path} is still open; it holds up {clauses}.",
    each="field",
    lift="never",
    needs="package.purpose",
    basis="practice contract_review",
)
def open_in_submittal(project: Any) -> Iterator[Found]:
    """Never run: open items are worked out apart, one for each field, with the clauses that wait for it."""
    yield from ()
