"""A sealant moves with the joint, does not sag, and is soft enough for the edge of the lamina.

Why: a joint of this wall opens and shuts with every sunny day. A stiff sealant pulls harder than
the thin edge of the lamina can bear, and a self-leveling one runs out of the joint.

passes
    sealants: {S1: {c920_type: S, c920_grade: NS, c920_class: 50, modulus: low}}
fails SLT-04a at sealants.S1.c920_class
    sealants: {S1: {c920_class: 12.5}}
fails SLT-04b at sealants.S1.c920_grade
    sealants: {S1: {c920_grade: P}}
fails SLT-04c at sealants.S1.c920_type
    sealants: {S1: {c920_type: other}}
fails SLT-04d at sealants.S1.modulus
    sealants: {S1: {modulus: high}}
"""

from fractions import Fraction

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.model.typed_views import Number, Sealant
from specgen.quantities.comparison import less

RULE = Rule(
    "SLT-04",
    "Sealant suited to EIFS edges",
    remedy="Use a sealant of class {sealant.class_least} or higher; class 50 is usual.",
    steps="sealant",
    documents="D02 D06",
)


@RULE.test(
    "a",
    STOP,
    "Sealant is class {found}; minimum class {wanted}.",
    at="sealant.c920_class",
    limit="sealant.class_least",
)
def low_class(sealant: Sealant, limit: Number) -> Violations:
    """The sealant bears less movement than the least class."""
    if less(_movement(sealant.c920_class), limit):
        yield violation(sealant.c920_class, wanted=limit)


RULE.clause(
    "b",
    STOP,
    "Sealant grade: {found}; grade {wanted}, which does not sag on a wall, is required.",
    when="sealant.c920_grade != NS",
    wanted="NS",
    basis="guide_eifs_p21",
    remedy="Use a nonsag sealant, grade NS.",
    why="a sealant that sags leaves the joint thin at its top",
)

RULE.clause(
    "c",
    STOP,
    "Sealant type: {found}; type S or M is required.",
    when="sealant.c920_type not in {S, M}",
    basis="guide_eifs_p21",
    remedy="Use a sealant of type S or M.",
)

RULE.clause(
    "d",
    CAUTION,
    "Sealant modulus is {found}, which may tear the lamina edge.",
    when="sealant.modulus != low",
    wanted="low",
    basis="memory",
    remedy="Use a low-modulus sealant, or submit its stress at 50% below the strength of the lamina.",
    why="a stiff sealant pulls on the edge of the lamina at every movement",
)


def _movement(movement_class: str) -> Fraction:
    """The percent of its width a class bears, the lesser of stretch and squeeze: 50 for 100/50."""
    return min(map(Fraction, movement_class.split("/")))
