"""The mockup shows every detail that is looked at later.

Why: what the mockup leaves out has no accepted standard. Then each side has its own picture of how
a corner or a joint should look.

passes
    mockup:
      includes:
        - full_panel
        - joint_crossing
        - outside_corner
        - opening
        - sealant_joint
        - each_mesh_zone
        - each_color
fails MOC-03a at mockup.includes
    mockup: {includes: [full_panel, joint_crossing, opening]}
"""

from specgen.judging.rule import STOP, Rule, Violations, lacks, violation
from specgen.model.typed_views import Description

RULE = Rule(
    "MOC-03",
    "Every detail in the mockup",
    remedy=(
        "Add these details to the mockup, or declare the omission as a deviation; what the mockup does not "
        "show is disputed on the wall."
    ),
    steps="mockup",
    documents="D09",
)

DETAILS = (
    "full_panel",
    "joint_crossing",
    "outside_corner",
    "opening",
    "sealant_joint",
    "each_mesh_zone",
    "each_color",
)


@RULE.test(
    "a",
    STOP,
    "The mockup omits: {found}.",
    at="mockup.includes",
    basis="practice memory",
)
def details_left_out(project: Description) -> Violations:
    """Details are left out that the wall has."""
    missing = lacks(project.mockup.includes, DETAILS)
    if missing:
        yield violation(missing)
