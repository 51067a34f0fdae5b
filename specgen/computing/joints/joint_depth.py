"""Depth of the sealant in a joint: half the width, within a least and a greatest depth."""

from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.format import printed
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

LEAST, MOST, WIDEST = Quantity.of("1/4", "in"), Quantity.of("1/2", "in"), Quantity.of(2, "in")
SOURCES = (
    Source(
        Kind.PUBLISHED,
        "architectural detailing textbook, sealant joints: depth half the width, at least 1/4 in, at most 1/2 in",
    ),
    Source(Kind.MEMORY, "ASTM C1193: up to 1/2 in wide the bead may be as deep as it is wide"),
)
NOTES = (
    "Depth is read at the middle of the bead; at its faces it is more.",
    "Rules differ from 1/2 in (13 mm) to 1 in (25 mm) of width; a depth between the two figures meets them.",
)


def joint_depth(width: Quantity, system: str = "ip") -> Working:
    """Least depth of the bead, in inches or millimeters, the greatest beside it; source: `SOURCES`. Raises Refused."""
    unit = "in" if system == "ip" else "mm"
    if width < LEAST:
        raise refuse(
            f"width is {printed(width, width.unit)}", f"a sealant joint is {printed(LEAST, unit)} wide or more"
        )
    made = Sum(
        (
            Given("W", "width of the joint", width.number(unit), unit),
            Given("D_l", "least depth of any bead", LEAST.number(unit), unit, source=SOURCES[0]),
            Given("D_m", "greatest depth of any bead", MOST.number(unit), unit, source=SOURCES[0]),
        )
    )
    made.step("D_h", "half the width", "W / 2", unit)
    depth = made.step("D", "least depth", "min(max(D_h, D_l), D_m)", unit)
    made.step("D_g", "greatest depth, no deeper than wide", "min(W, D_m)", unit)
    half = made.known["D_h"]
    governs = "the least depth of any bead" if half < made.known["D_l"] else "half the width"
    governs = "the greatest depth of any bead" if half > made.known["D_m"] else governs
    wide = (f"One bead is not made wider than {printed(WIDEST, unit)}.",) if width > WIDEST else ()
    return Working("joint-depth", made.given, tuple(made.steps), depth, unit, SOURCES, NOTES + wide, governs, ("D_g",))


def for_joint(joint: View, ask: Ask) -> Working:
    """The depth of a joint of the project, by the width it is given."""
    return joint_depth(joint.width, joint.project.system)


PROVIDER = Provider(
    "joint-depth",
    "Depth of a sealant joint",
    ("joints",),
    for_joint,
    reads=("joints.*.width",),
    direct=joint_depth,
    units=("in", "mm"),
    order=20,
    origins={"W": "joints.*.width"},
    keys=(Key("width", "length", "width of the joint"),),
)
