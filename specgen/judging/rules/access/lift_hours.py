"""A lift leaves the wall's own shade alone to spray in, and the schedule counts with it.

Why: cloth hangs from a scaffold, and a lift has none. Who saves the scaffold pays with hours: the face is sprayed
while it lies in its own shade and the air is calm.

passes
    site: {latitude: 41.2 deg}
    elevations: {E1: {facing: S}}
    schedule: {shift_start: 06:00, shift_hours: 10, spray_start: 2027-06-07, spray_end: 2027-06-25}
    access: {A1: {elevation: E1, kind: frame_scaffold}}
    shade: {X1: {elevation: E1, kind: shade_cloth}}
fails ACC-02a at access.A1.kind
    site: {latitude: 41.2 deg}
    elevations: {E1: {facing: S}}
    schedule: {shift_start: 06:00, shift_hours: 10, spray_start: 2027-06-07, spray_end: 2027-06-25}
    access: {A1: {elevation: E1, kind: boom_lift}}
    shade: {X1: {elevation: E1, kind: natural}}
"""

from specgen.computing.time.usable_hours import SUNNY, list_usable_months, round_hours
from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.judging.three_valued import is_shaded
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, MeansOfAccess
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "ACC-02",
    "Hours that a lift leaves",
    remedy="Count fit days by D14 and add float, or use a scaffold with shade cloth.",
    steps="site_conditions",
    documents="D05 D14",
)

LIFTS = ("scissor_lift", "boom_lift")


@RULE.test(
    "a",
    CAUTION,
    "From the lift, the wall can be sprayed in its own shade and calm air alone: {found} of a shift of {wanted}.",
    at="means_of_access.kind",
    basis="practice computed",
)
def own_shade_alone(access: MeansOfAccess, project: Description) -> Violations:
    """A lift works at a face that the sun takes hours of, and no cloth hangs there."""
    if not all_known(
        lambda: access.kind in LIFTS,
        lambda: not is_shaded(access, project, ("shade_cloth", "tent")),
    ):
        return
    least = min(list_usable_months(access.elevation), key=lambda month: month.hours)
    if SUNNY in dict(least.lost):
        yield violation(round_hours(least.hours), wanted=Quantity.of(project.schedule.shift_hours, "h"))
