"""Where the end of a roof meets the face, a kick-out flashing turns its water away from the wall.

Why: step flashing carries the water of the roof down along the wall. At the eave it runs in behind the
cladding unless something turns it out. The residential code asks for that flashing and gives the size of
step flashing, not of the kick-out itself: it must reach past the finished face.

passes
    details: {R1: {kind: roof_end, diverter: yes}}
fails WAT-01a at details.R1.diverter
    details: {R1: {kind: roof_end, diverter: no}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WAT-01",
    "Kick-out flashing at roof ends",
    remedy="Install a kick-out flashing at the foot of step flashing minimum {roof_end.step_flashing} high and "
    "wide, sealed to the WRB and extending past the finished face; hold the cladding {roof_below.clearance} "
    "clear of the roof.",
    steps="flashings",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "The roof end has no kick-out flashing, so roof water runs behind the cladding.",
    when="water_detail.kind = roof_end and water_detail.diverter = no",
    found="",
    basis="wall_flashing irc_kickout irc_step_flashing",
    lift="never",
)
