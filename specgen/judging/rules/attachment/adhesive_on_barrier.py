"""The adhesive is spread on a barrier it is proved to bond to, never on a loose sheet or on bare sheathing.

Why: wrap and felt hang from a few staples, so a board glued to them is hardly held at all. Bare
sheathing takes in the water that gets behind the board.

passes
    walls: {W1: {substrate: {kind: glass_mat_gypsum}, wrb: {kind: fluid_applied}}}
fails ATT-07a at walls.W1.wrb.kind
    walls: {W1: {substrate: {kind: plywood}, wrb: {kind: building_wrap}}}
fails ATT-07b at walls.W1.wrb.kind
    walls: {W1: {substrate: {kind: glass_mat_gypsum}, wrb: {kind: none}}}
fails ATT-07c at walls.W1.wrb.bond_report
    package: {purpose: mockup_submittal}
    walls: {W1: {substrate: {kind: glass_mat_gypsum}, wrb: {kind: fluid_applied}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ATT-07",
    "Adhesive on a barrier it bonds to",
    remedy="Fluid-applied barrier with a bond result for this adhesive.",
    steps="wrb boards",
    documents="D02 D18",
)

RULE.clause(
    "a",
    STOP,
    "The adhesive would hang on a loose sheet: {found}.",
    when="wall.attachment.method in adhesive and wall.wrb.kind in {building_wrap, felt}",
    basis="astm_e2570_memory",
)

RULE.clause(
    "b",
    STOP,
    "Sheathing without a weather barrier lets water behind the board and gives the adhesive no proven skin.",
    when="wall.attachment.method in adhesive and wall.substrate.kind in sheets and wall.wrb.kind = none",
    basis="astm_e2570_memory",
)

RULE.clause(
    "c",
    STOP,
    "Bond of this adhesive to this weather barrier is not shown.",
    when="package.purpose != design_draft and wall.attachment.method in adhesive and "
    "wall.wrb.kind in {fluid_applied, self_adhered_sheet} and wall.wrb.bond_report is not given",
    document="bond report of the adhesive on the barrier",
    basis="astm_e2570_memory",
)
