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
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from specgen.judging.choice_groups import BETWEEN_EIFS
from specgen.judging.rule import CAUTION, STOP, Found, Rule, found
from specgen.judging.three_valued import every
from specgen.quantities.comparison import less, more

RULE = Rule(
    "SLT-03",
    "Shape of the sealant bead",
    remedy="Correct width, rod or depth.",
    steps="sealant",
    documents="D06 D08",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The joint is {found} wide; {wanted} is the usual least between EIFS edges: confirm.",
    each="joints",
    needs="joints.*.kind joints.*.width",
    limit="joint.width_between_eifs",
)
def narrow_between_eifs(joint: Any, limit: Any) -> Iterator[Found]:
    """The joint between EIFS edges is narrower than usual."""
    if every(lambda: joint.kind in BETWEEN_EIFS, lambda: less(joint.width, limit)):
        yield found(joint.width, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "The joint is {found} wide; {wanted} is the usual least here: confirm.",
    each="joints",
    needs="joints.*.kind joints.*.width",
    limit="joint.width_elsewhere",
)
def narrow_elsewhere(joint: Any, limit: Any) -> Iterator[Found]:
    """The joint at an opening, penetration or other material is narrower than usual."""
    if every(lambda: joint.kind not in BETWEEN_EIFS, lambda: less(joint.width, limit)):
        yield found(joint.width, wanted=limit)


@RULE.clause(
    "c",
    STOP,
    "The joint is {found} wide; {wanted} is the most for one sealant bead.",
    each="joints",
    needs="joints.*.width",
    limit="joint.width_most",
)
def too_wide(joint: Any, limit: Any) -> Iterator[Found]:
    """The joint is too wide for one bead."""
    if more(joint.width, limit):
        yield found(joint.width, wanted=limit)


@RULE.clause(
    "d",
    STOP,
    "Open-cell rod holds water against the EIFS edge.",
    each="joints",
    needs="joints.*.rod_kind",
    basis="guide_eifs_p21",
)
def open_cell(joint: Any) -> Iterator[Found]:
    """The rod takes up water."""
    if joint.rod_kind == "open_cell":
        yield found(joint.rod_kind)


@RULE.clause(
    "e",
    STOP,
    "The rod is {found} thick; 25 % over the joint width is {wanted}.",
    each="joints",
    needs="joints.*.rod_diameter joints.*.width joints.*.bond_break_tape",
    at="joints.*.rod_diameter",
    limit="joint.rod_oversize",
)
def thin_rod(joint: Any, limit: Any) -> Iterator[Found]:
    """The rod is too thin to stay put, and no tape stands in for it."""
    if every(
        lambda: less(joint.rod_diameter, _thick_enough(joint, limit)),
        lambda: not joint.bond_break_tape,
    ):
        yield found(joint.rod_diameter, wanted=_thick_enough(joint, limit))


@RULE.clause(
    "f",
    CAUTION,
    "Without rod or tape the sealant sticks on three sides and tears: confirm.",
    each="joints",
    needs="joints.*.rod_kind joints.*.bond_break_tape",
    basis="memory",
)
def three_sides(joint: Any) -> Iterator[Found]:
    """Neither rod nor tape keeps the sealant off the back of the joint."""
    if every(lambda: joint.rod_kind == "none", lambda: not joint.bond_break_tape):
        yield found(joint.bond_break_tape)


@RULE.clause(
    "g",
    STOP,
    "The bead is {found} deep; {wanted} is the least.",
    each="joints",
    needs="joints.*.depth",
    limit="joint.depth_least",
)
def too_thin(joint: Any, limit: Any) -> Iterator[Found]:
    """The bead is less deep than it must be."""
    if less(joint.depth, limit):
        yield found(joint.depth, wanted=limit)


@RULE.clause(
    "h",
    STOP,
    "The bead is {found} deep; {wanted} is the most.",
    each="joints",
    needs="joints.*.depth",
    limit="joint.depth_most",
)
def too_deep(joint: Any, limit: Any) -> Iterator[Found]:
    """The bead is deeper than it may be."""
    if more(joint.depth, limit):
        yield found(joint.depth, wanted=limit)


@RULE.clause(
    "i",
    STOP,
    "The bead is {found} deep, more than the joint is wide ({wanted}).",
    each="joints",
    needs="joints.*.width joints.*.depth",
    basis="textbook_joints",
)
def deeper_than_wide(joint: Any) -> Iterator[Found]:
    """The bead is deeper than the joint is wide."""
    if more(joint.depth, joint.width):
        yield found(joint.depth, wanted=joint.width)


def _thick_enough(joint: Any, oversize: Any) -> Any:
    """The diameter of a rod that is `oversize` percent thicker than the joint is wide."""
    return joint.width * (1 + Fraction(oversize) / 100)
