"""A scaffold is tied where slender, designed where sheeted, watched by a named person, and clear of power lines.

Why: a slender scaffold tips and a sheeted one sails. The person who may stop the work must have a name
before the first frame is set. How close a power line may be goes by its voltage, and the utility knows it.

passes
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    site:
      surroundings: [power_lines]
      power_line_distance: 25 ft
      power_line_voltage: 138 kV
      power_line_insulated: no
    people: {P1: {role: competent_person}}
    elevations: {E1: {wall: W1}}
    access:
      A1: {kind: frame_scaffold, elevation: E1, height: 40 ft, base: 5 ft, tie_plan: A31, sheeted_design: A32}
    shade: {T1: {kind: tent, elevation: E1}}
    attachments: {A31: {kind: drawing}, A32: {kind: calculation, signed: yes}}
fails ACC-06a at access.A1.height
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    access: {A1: {kind: frame_scaffold, height: 40 ft, base: 5 ft}}
fails ACC-06c at access.A1.sheeted_design
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    elevations: {E1: {wall: W1}}
    access: {A1: {kind: frame_scaffold, elevation: E1}}
    shade: {T1: {kind: tent, elevation: E1}}
fails ACC-06e at people.*.role
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
    people: {P1: {role: foreman}}
fails ACC-06g at site.power_line_distance
    safety: {rules: us_osha}
    site: {power_line_distance: 12 ft, power_line_voltage: 138 kV, power_line_insulated: no}
fails ACC-06h at site.power_line_distance
    safety: {rules: other}
    site: {power_line_distance: 6 ft, power_line_voltage: 7200 V, power_line_insulated: no}
"""

from specgen.judging.choice_groups import SCAFFOLDS
from specgen.judging.papers import is_signed
from specgen.judging.rule import Computed, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_held, is_shaded
from specgen.model.absence import all_known, if_given
from specgen.model.typed_views import Description, MeansOfAccess
from specgen.quantities.comparison import less

RULE = Rule(
    "ACC-06",
    "Scaffold ties, sheeting design, and inspection",
    remedy="Tie the scaffold, have sheets designed, name a competent person, and keep clear of power lines.",
    steps="site_conditions",
    documents="D15",
)

SHEETED = ("tent", "shade_cloth")

RULE.safety_clauses(
    ("a", "b"),
    "The scaffold is {found} high, more than four times its base ({wanted}), and has no tie plan.",
    when="package.purpose != design_draft and means_of_access.tie_plan is not given and "
    "means_of_access.height > limit x means_of_access.base",
    limit="access.height_to_base",
    remedy="Provide a tie plan, or widen the base.",
)


@RULE.safety_tests(
    ("c", "d"),
    "The scaffold carries sheets, which catch wind, and no signed design is given.",
    at="means_of_access.sheeted_design",
    basis="osha_scaffold_design",
    remedy="Have a qualified person design the scaffold with its sheets, and attach the signed design.",
)
def sails(rules: str, access: MeansOfAccess, project: Description) -> Violations:
    """A sheeted scaffold has no signed design for the wind on its sheets."""
    design = if_given(lambda: access.sheeted_design)
    if not is_draft(project) and all_known(
        lambda: access.kind in SCAFFOLDS,
        lambda: is_shaded(access, project, SHEETED),
        lambda: design is None or not is_signed(design),
        lambda: project.safety.rules == rules,
    ):
        yield violation()


@RULE.safety_tests(
    ("e", "f"),
    "No competent person for the scaffold is named.",
    at="people.*.role",
    basis="osha_competent_person",
    remedy="Name the competent person who inspects the scaffold before each shift.",
)
def unwatched(rules: str, project: Description) -> Violations:
    """Nobody is named to watch the scaffold."""
    if not is_draft(project) and all_known(
        lambda: not is_held(project, "competent_person"), lambda: project.safety.rules == rules
    ):
        yield violation()


@RULE.safety_tests(
    ("g", "h"),
    "Power lines are {found} away; minimum {wanted} for their voltage.",
    at="site.power_line_distance",
    basis="osha_power_lines",
    remedy=(
        "Move the scaffold or lift, or have the utility de-energize, insulate, or move the lines, and get its"
        " answer in writing."
    ),
)
def reaches_line(rules: str, project: Description, power_line_distance: Computed) -> Violations:
    """Scaffold or lift come closer to a power line than its voltage allows."""
    if all_known(
        lambda: less(project.site.power_line_distance, power_line_distance().quantity),
        lambda: project.safety.rules == rules,
    ):
        yield violation(project.site.power_line_distance, wanted=power_line_distance().quantity)
