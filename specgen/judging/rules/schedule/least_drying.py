"""The least time from barrier or board to finished gloss is told, so that no plan is shorter than its coats dry.

Why: the hours of drying stand in six papers, and nobody adds them up before the scaffold is ordered.

passes
    smoothing: {coats: 0}
    primer: {dry_hours: 0}
    gloss: {coats: 1, dry_hours: 0}
    walls:
      W1:
        attachment: {cure_hours: 0}
        base_coat: {first_pass_dry_hours: 0, cure_hours: 0}
        mesh: {layers: [{kind: standard}]}
fails SCH-06a at schedule.spray_start
    smoothing: {between_hours: 8}
    gloss: {touch_dry_hours: 4}
    walls:
      W1:
        attachment: {cure_hours: 24}
        base_coat: {first_pass_dry_hours: 12, cure_hours: 24}
        mesh: {layers: [{kind: standard}]}
"""

from specgen.judging.rule import NOTE, Computed, Rule, Violations, violation
from specgen.model.typed_views import Wall
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "SCH-06",
    "Least drying time",
    remedy="Allow for work, days off, and weather in addition.",
    steps="gloss",
    documents="D14",
)


@RULE.test(
    "a",
    NOTE,
    "From the first layer over the substrate to the finished gloss, drying alone takes a minimum of {found}.",
    each="walls",
    at="schedule.spray_start",
    basis="computed practice",
)
def takes_at_least(wall: Wall, minimum_elapsed: Computed) -> Violations:
    """The drying of all coats of a wall, one after the other, without what the mockup waits for besides."""
    hours = next(step for step in minimum_elapsed().steps if step.unit == "h")
    if hours.value:
        yield violation(Quantity.of(repr(float(hours.value)), "h"))
