"""The adhesive is spread on a barrier it is proved to bond to, never on a loose sheet or on bare sheathing.

Why: wrap and felt hang from a few staples, so board adhered to them is hardly held at all. Bare
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
    "Adhesive bond to the water-resistive barrier",
    remedy="Submit the bond report of this adhesive on this WRB, or change to a fluid-applied WRB that has one.",
    steps="wrb boards",
    documents="D02 D18",
)

RULE.clause(
    "a",
    STOP,
    "The adhesive would bond to a loose sheet, which does not hold board: {found}.",
    when="wall.attachment.method in adhesive and wall.wrb.kind in {building_wrap, felt}",
    basis="astm_e2570_memory",
    remedy="Change to a fluid-applied WRB with a bond report for this adhesive.",
)

RULE.clause(
    "b",
    STOP,
    "The sheathing has no water-resistive barrier (WRB): water reaches it, and the adhesive has no proven bond "
    "surface.",
    when="wall.attachment.method in adhesive and wall.substrate.kind in sheets and wall.wrb.kind = none",
    basis="astm_e2570_memory",
    remedy="Apply a fluid-applied WRB with a bond report for this adhesive over the sheathing.",
    why="bare sheathing takes in the water that gets behind the board",
)

RULE.clause(
    "c",
    STOP,
    "No report shows the bond of this adhesive to this water-resistive barrier (WRB).",
    when="package.purpose != design_draft and wall.attachment.method in adhesive and "
    "wall.wrb.kind in {fluid_applied, self_adhered_sheet} and wall.wrb.bond_report is not given",
    document="bond report of the adhesive on the WRB",
    basis="astm_e2570_memory",
    why="the board hangs from its adhesive alone, and only a test shows that this adhesive holds on this WRB",
)
