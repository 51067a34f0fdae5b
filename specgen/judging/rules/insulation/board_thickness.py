"""The board is no thicker than exterior use allows, and thick enough to cut aesthetic joints into.

Why: a thick board feeds a fire and strains its adhesive. A thin one is left with too little under a joint, and
cracks along every line.

passes
    walls: {W1: {drainage: {kind: none}, insulation: {thickness: 2 in, rasp_allowance: 1/8 in}}}
    aesthetic_joint: {depth: 1/2 in}
fails INS-04a at walls.W1.insulation.thickness
    walls: {W1: {insulation: {thickness: 5 in}}}
fails INS-04c at walls.W1.insulation.thickness
    walls: {W1: {drainage: {kind: none}, insulation: {thickness: 1-1/2 in, rasp_allowance: 1/8 in}}}
    aesthetic_joint: {depth: 3/4 in}
fails INS-04b at walls.W1.insulation.thickness
    walls: {W1: {insulation: {thickness: 3/4 in}}}
    aesthetic_joint: {depth: 1/4 in}
fails INS-04d at details.L1.depth
    walls: {W1: {insulation: {thickness: 3 in}}}
    elevations: {E1: {wall: W1}}
    details: {L1: {kind: ledge, elevation: E1, depth: 6 in, cap: no}}
"""

from specgen.computing.foam_plastic import foam_at_ledge
from specgen.judging.rule import CAUTION, STOP, Computed, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Wall, WaterDetail
from specgen.quantities.comparison import less
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "INS-04",
    "Board thickness",
    remedy="Use thicker board or a shallower joint: board thickness equals joint depth plus minimum "
    "{board.left_under_joint} plus the rasping allowance.",
    steps="boards aesthetic_joints",
    documents="D06 D07",
)

RULE.clause(
    "a",
    STOP,
    "Board is {found} thick; maximum {wanted} on the outside of the wall.",
    when="wall.insulation.thickness > limit",
    limit="board.thickness_most",
    remedy="Move insulation above {board.thickness_most} to the inside of the wall, or declare a deviation with "
    "a fire report of this thickness.",
)


@RULE.test(
    "b",
    STOP,
    "Board is {found} thick; minimum {wanted} where aesthetic joints are cut.",
    at="wall.insulation.thickness",
    limit="board.thickness_for_joints",
    step="aesthetic_joints",
    remedy="Use board a minimum of {board.thickness_for_joints} thick, or omit the aesthetic joints.",
    why="a joint cut into a thin board leaves too little of it",
)
def too_thin_for_joints(wall: Wall, project: Description, limit: Quantity) -> Violations:
    """Aesthetic joints are cut into a board too thin for them."""
    if all_known(lambda: less(wall.insulation.thickness, limit), lambda: project.aesthetic_joint.depth.amount > 0):
        yield violation(wall.insulation.thickness, wanted=limit)


@RULE.test(
    "c",
    STOP,
    "Board remaining under the aesthetic joint is {found}; minimum {wanted}.",
    at="wall.insulation.thickness",
    limit="board.left_under_joint",
    step="aesthetic_joints",
    why="a joint cut into a thin board leaves too little of it",
)
def little_left_under_joint(wall: Wall, remaining_board: Computed, limit: Quantity) -> Violations:
    """Rasping, groove and joint leave too little board."""
    left = remaining_board()
    if less(left.quantity, limit):
        yield violation(left.rounded, wanted=limit)


@RULE.test(
    "d",
    CAUTION,
    "Foam at the ledge is {found} thick with the board of the wall; maximum {wanted} on the outside of the wall, and "
    "surface burning is tested at the thickness used.",
    at="water_detail.depth",
    limit="board.thickness_most",
    step="boards",
    remedy="Frame the ledge out from the wall so that board and ledge stay within {board.thickness_most}, or obtain a "
    "surface burning report of this thickness and the acceptance of the authority having jurisdiction before boards "
    "are set.",
    why="foam as thick as wall and ledge together feeds a fire that no report of the board alone speaks of",
)
def thick_at_ledge(water_detail: WaterDetail, limit: Quantity) -> Violations:
    """A ledge shaped of added board makes the foam thicker than exterior use allows."""
    thickness = foam_at_ledge(water_detail)
    if thickness is not None and less(limit, thickness):
        yield violation(thickness, wanted=limit)
