"""A paper that counts only when signed is signed.

Why: an unsigned report or letter is a draft that nobody answers for. A reviewer sends it back.

passes
    attachments:
      A1: {kind: test_report, signed: yes}
      A2: {kind: data_sheet}
fails SUB-04a at attachments.A1.signed
    attachments: {A1: {kind: calculation, signed: no}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.choice_groups import SIGNED_PAPERS
from specgen.judging.rule import STOP, Found, Rule, found

RULE = Rule(
    "SUB-04",
    "Papers signed",
    remedy="Signature, name, date.",
    steps="site_conditions",
    documents="D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "A paper that counts only when signed is unsigned.",
    each="attachments",
    needs="attachments.*.kind attachments.*.signed",
    basis="review_memory",
)
def unsigned(paper: Any) -> Iterator[Found]:
    """A report, letter, certificate or calculation bears no signature."""
    if paper.kind in SIGNED_PAPERS and not paper.signed:
        yield found(paper.signed)
