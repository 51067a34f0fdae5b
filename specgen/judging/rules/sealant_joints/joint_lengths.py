"""A length given for a joint is that of the elevation it stands on.

Why: sealant is bought by the length, and a joint is sized by the stretch that moves into it. A figure typed long ago
stays when the drawing moves.

passes
    elevations: {E1: {width: 20 ft, height: 24 ft, openings: {}}}
    joints: {J1: {elevation: E1, runs: horizontal, at: 12 ft, length: 20 ft, panel_length: 12 ft}}
fails SLT-09a at joints.J1.length
    elevations: {E1: {width: 20 ft, height: 24 ft, openings: {}}}
    joints: {J1: {elevation: E1, runs: horizontal, at: 12 ft, length: 25 ft}}
fails SLT-09b at joints.J1.panel_length
    elevations: {E1: {width: 20 ft, height: 24 ft, openings: {}}}
    joints: {J1: {elevation: E1, runs: horizontal, at: 12 ft, panel_length: 8 ft}}
"""

from collections.abc import Callable

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.typed_views import Joint
from specgen.quantities.quantity import Quantity

Measured = Callable[[], Quantity]

RULE = Rule(
    "SLT-09",
    "Joint lengths as drawn",
    remedy="Correct the length, or the elevation and its openings; without a length it is taken from the elevation.",
    steps="sealant",
    documents="D06 D13",
)


@RULE.test(
    "a",
    CAUTION,
    "The joint is given as {found} long; it runs {wanted} on its elevation.",
    at="joint.length",
    limit="joint.length_difference",
)
def other_length(joint: Joint, joint_run: Measured, limit: int) -> Violations:
    """The length given is not that of the runs; a joint with parts left open may be shorter."""
    given = joint.get("length")
    if given is None:
        return
    run = joint_run()
    shorter = given < run and joint.get("left_open")
    if not shorter and _differs(given, run, limit):
        yield violation(given, wanted=run)


@RULE.test(
    "b",
    CAUTION,
    "The moving length is given as {found}; the longest stretch that moves into the joint is {wanted}.",
    at="joint.panel_length",
    limit="joint.length_difference",
    remedy="Correct the moving length, or submit the engineer's reason for it.",
)
def other_moving_length(joint: Joint, moving_run: Measured, limit: int) -> Violations:
    """The moving length given is not that of the elevation."""
    given = joint.get("panel_length")
    if given is not None and _differs(given, run := moving_run(), limit):
        yield violation(given, wanted=run)


def _differs(given: Quantity, run: Quantity, percent: int) -> bool:
    return abs((given - run).amount) * 100 > run.amount * percent
