"""Depth of the sealant in a joint: half the width, within a least and a greatest depth."""

from specgen.computing.inputs import Inputs, given_input, limit_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.problem import refuse
from specgen.model.source import InForce
from specgen.model.typed_views import Joint
from specgen.model.working import Working
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask
from specgen.standards import find_source

SAYS = "depth half the width, at least {least}, at most {most}"
NOTES = (
    "Measure depth at the center of the bead.",
    "Published rules differ for widths of {1/2 in|13 mm} to {1 in|25 mm}; a depth from minimum to maximum meets all.",
)


class BeadInputs(Inputs):
    """The joint, and the depths that any bead has."""

    width: Quantity = given_input("W", "joint width", "length", "joints.*.width")
    least: InForce = limit_input("joint.depth_least", "D_l", "minimum bead depth", says=SAYS)
    most: InForce = limit_input("joint.depth_most", "D_m", "maximum bead depth", says=SAYS)
    widest: InForce = limit_input("joint.width_most")


def joint_depth(inputs: BeadInputs) -> Working:
    """Least depth of the bead, in inches or millimeters, the greatest beside it. Raises Refused."""
    unit, width, least = "in" if inputs.system == "ip" else "mm", inputs.width, inputs.least.value
    if width < least:
        raise refuse(
            f"width is {format_quantity(width, width.unit)}",
            f"a sealant joint is {format_quantity(least, unit)} wide or more",
        )
    working = WorkingBuilder(inputs.rows())
    half = working.step("D_h", "half the width", "W / 2", unit)
    working.step("D", "minimum depth", "min(max(D_h, D_l), D_m)", unit)
    working.step("D_g", "maximum depth", "min(W, D_m)", unit)
    case = "the least depth of any bead" if half < working.known["D_l"] else "half the width"
    case = "the greatest depth of any bead" if half > working.known["D_m"] else case
    widest = inputs.widest.value
    wide = (f"Maximum width of one bead: {format_quantity(widest, unit)}.",) if width > widest else ()
    memory = find_source("astm_c1193_memory").quote("up to {1/2 in|13 mm} wide the bead may be as deep as it is wide")
    return working.build("joint-depth", "D", (inputs.limit_source("least"), memory), NOTES + wide, case, ("D_g",))


def compare_least(joint: Joint, ask: Ask) -> Comparison:
    """The least depth against the depth given."""
    return at_most(ask("joint-depth").quantity, joint.depth)


def compare_greatest(joint: Joint, ask: Ask) -> Comparison:
    """The depth given against the greatest depth."""
    (greatest,) = ask("joint-depth").secondary_steps
    return at_most(joint.depth, Quantity.of(repr(greatest.value), greatest.unit))


PROVIDER = provide(
    "Sealant depth",
    BeadInputs,
    joint_depth,
    each=("joints",),
    checks=(
        Check("minimum depth", "depth given", (), compare_least, "joints.*.depth"),
        Check("sealant depth given", "maximum depth", ("SLT-03h", "SLT-03i"), compare_greatest),
    ),
    columns=("D", "D_g"),
    order=20,
    example="width=3/4in",
)
