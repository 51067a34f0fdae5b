"""The board gives the continuous insulation that the energy code requires.

Why: what is missing is found at plan review, when joints and jambs are drawn for the thinner board and all
of them must move.

passes
    code: {required_r_value: R-7.5}
    walls: {W1: {insulation: {r_value: R-8, thickness: 2 in, rasp_allowance: 1/16 in}}}
fails INS-05b at walls.W1.layers
    gloss: {permeance: 0.1 perm}
    climate: {months: [{month: jan, mean_min: 10 F, mean_max: 26 F, mean_humidity: 70}]}
    walls:
      W1:
        layers:
          - {name: board, r_value: R-8, permeance: 30 perm}
          - {name: tight coat, r_value: R-0.1, permeance: 0.1 perm}
fails INS-05a at walls.W1.insulation.r_value
    code: {required_r_value: R-7.5}
    walls: {W1: {insulation: {r_value: R-5.6}}}
"""

from specgen.computing.board.board_thickness import rasped_r_value, required_r_value
from specgen.judging.rule import CAUTION, Computed, Rule, Violations, violation
from specgen.model.typed_views import Wall
from specgen.quantities.comparison import less
from specgen.quantities.quantity import round_quantity

RULE = Rule(
    "INS-05",
    "Continuous insulation and vapor",
    remedy="Use thicker board, or submit another compliance path of the energy code.",
    steps="boards",
    documents="D06",
)


@RULE.test(
    "a",
    CAUTION,
    "Insulation is {found}; minimum {wanted} by the energy code.",
    at="wall.insulation.r_value",
    basis="memory",
)
def too_little(wall: Wall) -> Violations:
    """The rasped board gives less than the energy code asks for; a code that asks for nothing is met."""
    required = required_r_value(wall)
    if required is None:
        return
    whole = wall.insulation.r_value
    # A board too thin as it comes is too thin whatever is rasped off.
    found = whole if less(whole, required) else rasped_r_value(wall)
    if less(found, required):
        yield violation(round_quantity(found), wanted=required)


@RULE.test(
    "b",
    CAUTION,
    "Vapor condenses in winter {found}.",
    at="wall.layers",
    basis="iso_13788",
    remedy="Add insulation, use coats of higher permeance, or submit a moisture analysis of a full year.",
    why="water that condenses in the wall weakens adhesive and sheathing",
)
def vapor_condenses(wall: Wall, wall_layers: Computed) -> Violations:
    """Between two layers the vapor pressure of winter is above saturation."""
    working = wall_layers()
    if working.secondary_steps[0].value > 0:
        wet = [step.name.partition(", ")[2] for step in working.secondary_steps[1:]]
        yield violation("; ".join(wet) or "at the inner face")
