"""The mockup stands until the work is complete, and cut tests are made beside it.

Why: the last panel is judged by it as the first one was. A mockup that is gone, or cut up, leaves only what
people remember.

passes
    mockup: {kept_to: 2027-10-29, destructive_area_apart: yes}
    contract: {completion_date: 2027-10-29}
fails MOC-07a at mockup.kept_to
    mockup: {kept_to: 2027-08-01}
    contract: {completion_date: 2027-10-29}
fails MOC-07b at mockup.destructive_area_apart
    mockup: {destructive_area_apart: no}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "MOC-07",
    "Mockup kept whole to the end",
    remedy="Keep to completion; cut tests beside it.",
    steps="mockup",
    documents="D09",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The mockup stands to {found}; the work ends on {wanted}.",
    needs="contract.completion_date mockup.kept_to",
    basis="memory",
)
def gone_too_soon(project: Any) -> Iterator[Found]:
    """The mockup is taken down before the work is complete."""
    if less(project.mockup.kept_to, project.contract.completion_date):
        yield found(project.mockup.kept_to, wanted=project.contract.completion_date)


@RULE.clause(
    "b",
    CAUTION,
    "Cut tests will damage the face that is to be kept.",
    needs="mockup.destructive_area_apart",
    basis="memory",
)
def cut_up(project: Any) -> Iterator[Found]:
    """Cut tests are made on the face that is kept."""
    if not project.mockup.destructive_area_apart:
        yield found(project.mockup.destructive_area_apart)
