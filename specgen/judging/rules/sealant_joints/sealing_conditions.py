"""Joints are sealed in fit weather, tooled dry, and pulled by hand at the first of them.

Why: soap and frost stay in the bond, and heat opens the joint just when it is filled. The first pull tests
show it while it can still be put right.

passes
    sealants: {S1: {tooling: dry, field_tests: 10}}
    joints: {J1: {install_low: 50 F, install_high: 80 F}}
fails SLT-08a at sealants.S1.tooling
    sealants: {S1: {tooling: wet}}
fails SLT-08b at joints.J1.install_low
    joints: {J1: {install_low: 35 F}}
fails SLT-08c at joints.J1.install_high
    joints: {J1: {install_high: 100 F}}
fails SLT-08d at sealants.S1.field_tests
    sealants: {S1: {field_tests: 4}}
fails SLT-08e at climate.months.0.mean_max
    climate: {months: [{month: jul, mean_max: 85 F}]}
    schedule: {spray_start: 2027-07-12, spray_end: 2027-08-20}
    joints: {J1: {install_high: 80 F}}
"""

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.judging.season import is_in_season
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Month
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "SLT-08",
    "Sealing conditions and field tests",
    remedy="Install sealant between {sealant.install_cold} and {sealant.install_hot}.",
    steps="sealant",
    documents="D08 D11",
)

RULE.clause(
    "a",
    CAUTION,
    "Sealant is tooled wet, which leaves soap in the bond.",
    when="sealant.tooling = wet",
    basis="guide_eifs_p25",
    remedy="Tool the sealant dry, to a concave profile.",
)

RULE.clause(
    "b",
    CAUTION,
    "Sealing is planned down to {found}; minimum {wanted}.",
    when="joint.install_low < limit",
    limit="sealant.install_cold",
)

RULE.clause(
    "c",
    CAUTION,
    "Sealing is planned up to {found}; maximum {wanted}.",
    when="joint.install_high > limit",
    limit="sealant.install_hot",
)

RULE.clause(
    "d",
    CAUTION,
    "Pull tests planned in the first {sealant.field_test_length}: {found}; usual minimum {wanted}.",
    when="sealant.field_tests < limit",
    limit="sealant.field_tests",
    remedy="Plan one pull test in each {sealant.field_test_spacing} of the first {sealant.field_test_length}, "
    "then one in each {sealant.field_test_later}.",
    why="early pull tests show a poor bond before all joints have it",
)


@RULE.test(
    "e",
    CAUTION,
    "Days in a month of spraying and sealing reach {found}; joints are sealed at a maximum of {wanted}.",
    at="month.mean_max",
    basis="practice",
    remedy="Seal in the hours of Document D14, out of direct sun; read the joint surface before each bead, and shade "
    "it or stop where it is hotter.",
)
def hot_afternoons(month: Month, project: Description) -> Violations:
    """The air of an afternoon is hotter than one of the joints may be sealed at."""

    def find_least() -> Quantity:
        return min((joint.install_high for joint in project.joints), key=lambda high: high.amount)

    if all_known(
        lambda: is_in_season(month, project),
        lambda: len(project.joints),
        lambda: more(month.mean_max, find_least()),
    ):
        yield violation(month.mean_max, wanted=find_least())
