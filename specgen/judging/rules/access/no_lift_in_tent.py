"""An elevation that is tented or hung with cloth is reached from a scaffold, not from a lift.

Why: a lift swings and drives where a tent has its frame, and beside a lift nothing stands to hang cloth from but
the building. Who hires lifts first finds no day to spray once the tent is asked for.

passes
    elevations: {E1: {wall: W1}}
    access: {A1: {kind: frame_scaffold, elevation: E1}}
    shade: {T1: {kind: tent, elevation: E1}}
fails ACC-01a at access.A1.kind
    elevations: {E1: {wall: W1}}
    access: {A1: {kind: boom_lift, elevation: E1}}
    shade: {T1: {kind: tent, elevation: E1}}
fails ACC-01b at access.A1.kind
    elevations: {E1: {wall: W1}}
    access: {A1: {kind: boom_lift, elevation: E1}}
    shade: {T1: {kind: shade_cloth, elevation: E1}}
"""

from functools import partial

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.judging.three_valued import is_shaded, shades_at
from specgen.model.absence import all_known, any_of, if_given
from specgen.model.typed_views import Description, MeansOfAccess, Shading

RULE = Rule(
    "ACC-01",
    "No lifts inside tents",
    remedy=(
        "Use a scaffold with a tent or cloth, hang the cloth from the building, or spray from the lift only "
        "while the wall is in shade."
    ),
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
    remedy="Use a scaffold inside the tent, or spray from the lift without a tent while the wall is in shade.",
)
def lift_in_tent(access: MeansOfAccess, project: Description) -> Violations:
    """A lift is to work where a tent stands."""
    if all_known(lambda: access.kind in LIFTS, lambda: is_shaded(access, project, ("tent",))):
        yield violation(access.kind)


@RULE.test(
    "b",
    CAUTION,
    "Shade cloth is planned where a lift works.",
    at="means_of_access.kind",
    basis="practice",
    step="protection",
    remedy=(
        "Hang the cloth from the building, clear of the lift, or spray without it while the wall is in shade: then "
        "take it out of the shading planned, so that schedule and fit days count the hours left."
    ),
)
def cloth_without_scaffold(access: MeansOfAccess, project: Description) -> Violations:
    """A lift is to work where cloth hangs, and nobody says that it hangs from the building."""
    if all_known(
        lambda: access.kind in LIFTS,
        lambda: any_of(shades_at(access, project), partial(_hangs_free, access)),
    ):
        yield violation(access.kind)


def _hangs_free(access: MeansOfAccess, shade: Shading) -> bool:
    return all_known(
        lambda: shade.kind == "shade_cloth",
        lambda: if_given(lambda: shade.hung_from_building) is not True,
        lambda: shade.elevation == access.elevation,
    )
