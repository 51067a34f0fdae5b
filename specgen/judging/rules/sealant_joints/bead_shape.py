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
    "Shape of the sealant bead",
    remedy="Correct width, rod or depth.",
    steps="sealant",
    documents="D06 D08",
)

RULE.clause(
    "a",
    CAUTION,
    "The joint is {found} wide; {wanted} is the usual least between EIFS edges: confirm.",
    when="joint.kind in between_eifs and joint.width < limit",
    limit="joint.width_between_eifs",
)

RULE.clause(
    "b",
    CAUTION,
    "The joint is {found} wide; {wanted} is the usual least here: confirm.",
    when="joint.kind not in between_eifs and joint.width < limit",
    limit="joint.width_elsewhere",
)

RULE.clause(
    "c",
    STOP,
    "The joint is {found} wide; {wanted} is the most for one sealant bead.",
    when="joint.width > limit",
    limit="joint.width_most",
)

RULE.clause(
    "d",
    STOP,
    "Open-cell rod holds water against the EIFS edge.",
    when="joint.rod_kind = open_cell",
    basis="guide_eifs_p21",
)


@RULE.test(
    "e",
    STOP,
    "The rod is {found} thick; 25 % over the joint width is {wanted}.",
    at="joint.rod_diameter",
    limit="joint.rod_oversize",
)
def thin_rod(joint: Joint, limit: Number) -> Violations:
    """The rod is too thin to stay put, and no tape stands in for it."""
    if all_known(lambda: less(*_rod(joint, limit)), lambda: not joint.bond_break_tape):
        rod, wanted = _rod(joint, limit)
        yield violation(rod, wanted=wanted)


RULE.clause(
    "f",
    CAUTION,
    "Without rod or tape the sealant sticks on three sides and tears: confirm.",
    when="joint.rod_kind = none and joint.bond_break_tape = no",
    basis="memory",
)

RULE.clause(
    "g",
    STOP,
    "The bead is {found} deep; {wanted} is the least.",
    when="joint.depth < limit",
    limit="joint.depth_least",
)

RULE.clause(
    "h",
    STOP,
    "The bead is {found} deep; {wanted} is the most.",
    when="joint.depth > limit",
    limit="joint.depth_most",
)

RULE.clause(
    "i",
    STOP,
    "The bead is {found} deep, more than the joint is wide ({wanted}).",
    when="joint.depth > joint.width",
    basis="textbook_joints",
)


@RULE.test(
    "j",
    CAUTION,
    "The rod is {found} thick; over {wanted}, 50 % more than the joint is wide, it kinks or is torn on its way in.",
    at="joint.rod_diameter",
    limit="joint.rod_oversize_most",
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
