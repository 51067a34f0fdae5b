"""An elevation that is tented is reached from a scaffold, not from a lift.

Why: a lift swings and drives where a tent has its frame. Who hires lifts first finds no day to spray once
the tent is asked for.

passes
    elevations: {E1: {wall: W1}}
    access: {A1: {kind: frame_scaffold, elevation: E1}}
    shade: {T1: {kind: tent, elevation: E1}}
fails ACC-01a at access.A1.kind
    elevations: {E1: {wall: W1}}
    access: {A1: {kind: boom_lift, elevation: E1}}
    shade: {T1: {kind: tent, elevation: E1}}
"""

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.three_valued import is_shaded
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, MeansOfAccess

RULE = Rule(
    "ACC-01",
    "No lift inside a tent",
    remedy="Scaffold with tent, or lift with shade hours only.",
    steps="site_conditions protection",
    documents="D08 D14",
)

LIFTS = ("scissor_lift", "boom_lift")


@RULE.test(
    "a",
    STOP,
    "A lift cannot work inside a tent.",
    at="means_of_access.kind",
    basis="practice",
    step="protection",
)
def lift_in_tent(access: MeansOfAccess, project: Description) -> Violations:
    """A lift is to work where a tent stands."""
    if all_known(lambda: access.kind in LIFTS, lambda: is_shaded(access, project, ("tent",))):
        yield violation(access.kind)
