"""The board ends clear of a roof below it.

Why: an edge that stands on the roofing draws up water and stays under snow. The next roof covers it, or is
cut short because of it.

passes
    details: {R1: {kind: roof_below, clearance: 2 in}}
fails WAT-07a at details.R1.clearance
    details: {R1: {kind: roof_below, clearance: 1/2 in}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WAT-07",
    "Clearance above a roof",
    remedy="End the board a minimum of {roof_below.clearance} above the roofing, back-wrapped, over flashing.",
    steps="board_layout",
    documents="D07 D08",
)

RULE.clause(
    "a",
    STOP,
    "The cladding ends {found} above the roofing; minimum {wanted}, or it draws up water.",
    when="water_detail.kind = roof_below and water_detail.clearance < limit",
    limit="roof_below.clearance",
)
