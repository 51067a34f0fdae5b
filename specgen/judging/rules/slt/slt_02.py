"""A sealant joint is as wide as its movement and the class of its sealant need.

Why: a joint that is too narrow strains its sealant past its class in the first season.

passes
    joints: {J1: {elevation: E1, sealant: S1, width: 1 in}}
fails SLT-02a at joints.J1.width
    joints: {J1: {elevation: E1, sealant: S1, width: 1/4 in}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less
from ....vocabulary.quantity import Quantity
from ...rule import STOP, Found, Rule, found

RULE = Rule(
    "SLT-02",
    "Joint width against movement",
    remedy="Widen the joint, add joints, or take a sealant of a higher class.",
    steps="sealant",
    documents="D06 D08",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The joint is {found} wide; its movement and the sealant class need {wanted}.",
    each="joints",
    needs="calc.joint_width joints.*.width",
    basis="joint_width_course",
)
def too_narrow_for_movement(joint: Any, resolve: Any) -> Iterator[Found]:
    """The width given is less than the width computed."""
    working = resolve("joint-width")
    needed = Quantity.of(repr(working.result), working.unit)
    if less(joint.width, needed):
        yield found(joint.width, wanted=needed)
