"""A sealant bead is neither too narrow, too wide, too thin nor too deep, and rests on rod or tape.

Why: a narrow bead is strained past its class, and one deeper than wide tears at its bond. The rod
sets the depth and keeps the sealant off the back of the joint.

passes
    joints:
      J1:
        kind: eifs_to_eifs
        width: 3/4 in
        depth: 3/8 in
        rod_kind: closed_cell
        rod_diameter: 15/16 in
        bond_break_tape: no
fails SLT-03a at joints.J1.width
    joints: {J1: {kind: eifs_to_eifs, width: 5/8 in}}
fails SLT-03b at joints.J1.width
    joints: {J1: {kind: opening_perimeter, width: 3/8 in}}
fails SLT-03c at joints.J1.width
    joints: {J1: {width: 2-1/4 in}}
fails SLT-03d at joints.J1.rod_kind
    joints: {J1: {rod_kind: open_cell}}
fails SLT-03e at joints.J1.rod_diameter
    joints: {J1: {width: 3/4 in, rod_diameter: 3/4 in, bond_break_tape: no}}
fails SLT-03f at joints.J1.bond_break_tape
    joints: {J1: {rod_kind: none, bond_break_tape: no}}
fails SLT-03g at joints.J1.depth
    joints: {J1: {depth: 3/16 in}}
fails SLT-03h at joints.J1.depth
    joints: {J1: {depth: 5/8 in}}
fails SLT-03i at joints.J1.depth
    joints: {J1: {width: 3/8 in, depth: 1/2 in}}
fails SLT-03j at joints.J1.rod_diameter
    joints: {J1: {width: 3/4 in, rod_diameter: 2 in}}
"""

from fractions import Fraction

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.model.absence import all_known, read_all
from specgen.model.typed_views import Joint, Number
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "SLT-03",
    "Sealant bead shape",
    remedy="Widen the joint to a minimum of {joint.width_between_eifs}, or submit the sealant manufacturer's "
    "acceptance of this width.",
    steps="sealant",
    documents="D06 D08",
)

RULE.clause(
    "a",
    CAUTION,
    "The joint is {found} wide; usual minimum {wanted} between EIFS edges.",
    when="joint.kind in between_eifs and joint.width < limit",
    limit="joint.width_between_eifs",
)

RULE.clause(
    "b",
    CAUTION,
    "The joint is {found} wide; usual minimum {wanted} at a joint of this kind.",
    when="joint.kind not in between_eifs and joint.width < limit",
    limit="joint.width_elsewhere",
    remedy="Widen the joint to a minimum of {joint.width_elsewhere}, or submit the sealant manufacturer's "
    "acceptance of this width.",
)

RULE.clause(
    "c",
    STOP,
    "The joint is {found} wide; maximum {wanted} for one sealant bead.",
    when="joint.width > limit",
    limit="joint.width_most",
    remedy="Narrow the joint to a maximum of {joint.width_most}, or divide its movement between two joints.",
)

RULE.clause(
    "d",
    STOP,
    "The backer rod is open-cell and holds water against the EIFS edge.",
    when="joint.rod_kind = open_cell",
    basis="guide_eifs_p21",
    remedy="Use closed-cell backer rod.",
    why="an open-cell rod soaks up water and holds it against the EIFS edge",
)


@RULE.test(
    "e",
    STOP,
    "Backer rod diameter is {found}; minimum {wanted}, {joint.rod_oversize} over the joint width.",
    at="joint.rod_diameter",
    limit="joint.rod_oversize",
    remedy="Use the next stock size of rod at or above {wanted}, or bond-breaker tape.",
    why="a rod that is not compressed slips, and the depth of the sealant with it",
)
def thin_rod(joint: Joint, limit: Number) -> Violations:
    """The rod is too thin to stay put, and no tape stands in for it."""
    if all_known(lambda: less(*_rod(joint, limit)), lambda: not joint.bond_break_tape):
        rod, wanted = _rod(joint, limit)
        yield violation(rod, wanted=wanted)


RULE.clause(
    "f",
    CAUTION,
    "Without rod or tape the sealant bonds on three sides and tears.",
    when="joint.rod_kind = none and joint.bond_break_tape = no",
    basis="memory",
    remedy="Install closed-cell backer rod, or bond-breaker tape where the joint is too shallow for rod.",
    why="a sealant that bonds on three sides cannot stretch",
)

RULE.clause(
    "g",
    STOP,
    "Sealant depth is {found}; minimum {wanted}.",
    when="joint.depth < limit",
    limit="joint.depth_least",
    remedy="Set the rod for a minimum sealant depth of {joint.depth_least}.",
)

RULE.clause(
    "h",
    STOP,
    "Sealant depth is {found}; maximum {wanted}.",
    when="joint.depth > limit",
    limit="joint.depth_most",
    remedy="Set the rod for a maximum sealant depth of {joint.depth_most}.",
)

RULE.clause(
    "i",
    STOP,
    "Sealant depth is {found}, greater than the joint width of {wanted}.",
    when="joint.depth > joint.width",
    basis="textbook_joints",
    remedy="Set the rod for a sealant depth no greater than the joint width.",
)


@RULE.test(
    "j",
    CAUTION,
    "Backer rod diameter is {found}; maximum {wanted}, {joint.rod_oversize_most} over the joint width, or the "
    "rod kinks or tears.",
    at="joint.rod_diameter",
    limit="joint.rod_oversize_most",
    remedy="Use rod {joint.rod_oversize} to {joint.rod_oversize_most} larger than the joint width.",
)
def thick_rod(joint: Joint, limit: Number) -> Violations:
    """The rod is too thick to be set without harm."""
    rod, most = _rod(joint, limit)
    if more(rod, most):
        yield violation(rod, wanted=most)


def _rod(joint: Joint, oversize: Number) -> tuple[Quantity, Quantity]:
    """The diameter of the rod, and that of one `oversize` percent thicker than the joint is wide."""
    rod, width = read_all(lambda: joint.rod_diameter, lambda: joint.width)
    return rod, width * (1 + Fraction(oversize) / 100)
