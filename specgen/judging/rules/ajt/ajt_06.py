"""Aesthetic joints differ by no more than the eye forgives.

Why: Two lines side by side are compared at a glance.

passes
    {aesthetic_joint: {tolerance: 1/16 in}}
fails AJT-06a at aesthetic_joint.tolerance
    {aesthetic_joint: {tolerance: 1/8 in}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import more
from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "AJT-06",
    "Tolerance of aesthetic joints",
    remedy="One template; common datum round the building.",
    steps="aesthetic_joints",
    documents="D07 D10",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Joints may differ by {found}; above {wanted} they will not read as equal.",
    needs="aesthetic_joint.tolerance",
    limit="aesthetic_joint.tolerance",
)
def loose(project: Any, limit: Any) -> Iterator[Found]:
    """The tolerance is wider than joints that read as equal."""
    if more(project.aesthetic_joint.tolerance, limit):
        yield found(project.aesthetic_joint.tolerance, wanted=limit)
