"""EPS board is of EIFS grade, aged before use, and within the usual fire indexes.

Why: board made for other uses varies in density and flatness, and fresh board goes on shrinking
after it is adhered. Both show as lines and waves under gloss.

passes
    walls:
      W1:
        insulation: {kind: eps, c578_type: I, e2430: yes, aged: yes, flame_spread: 25, smoke_developed: 450}
fails INS-03a at walls.W1.insulation.c578_type
    walls: {W1: {insulation: {kind: eps, c578_type: XI}}}
fails INS-03b at walls.W1.insulation.e2430
    walls: {W1: {insulation: {kind: eps, e2430: no}}}
fails INS-03c at walls.W1.insulation.aged
    walls: {W1: {insulation: {kind: eps, aged: no}}}
fails INS-03d at walls.W1.insulation.flame_spread
    walls: {W1: {insulation: {kind: eps, flame_spread: 75}}}
fails INS-03e at walls.W1.insulation.smoke_developed
    walls: {W1: {insulation: {kind: eps, smoke_developed: 500}}}
"""

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "INS-03",
    "EIFS-grade EPS board",
    remedy="Use EIFS-grade EPS board of type I or better, and submit its certificate.",
    steps="boards",
    documents="D02 D18",
)

RULE.clause(
    "a",
    STOP,
    "EPS board type is {found}; minimum type {wanted} for EIFS.",
    when="wall.insulation.kind = eps and wall.insulation.c578_type in {XI, not_stated}",
    wanted="I",
    basis="astm_c578_memory guide_eifs_board",
)

RULE.clause(
    "b",
    STOP,
    "The board does not conform to the EIFS board standard, ASTM E2430.",
    when="wall.insulation.kind = eps and wall.insulation.e2430 = no",
    basis="astm_e2430_memory",
    remedy="Use board certified to ASTM E2430, and submit its certificate.",
)

RULE.clause(
    "c",
    STOP,
    "The board is not aged before use and shrinks after it is adhered.",
    when="wall.insulation.kind = eps and wall.insulation.aged = no",
    basis="guide_eifs_board",
    remedy="Use board aged as the EIFS manufacturer requires, and submit its certificate.",
)

RULE.clause(
    "d",
    CAUTION,
    "Flame spread index of the board is {found}; maximum {wanted} in an exterior wall of types I to IV.",
    when="wall.insulation.kind = eps and wall.insulation.flame_spread > limit",
    limit="board.flame_spread",
    remedy="Use board certified to a maximum flame spread index of {board.flame_spread}.",
    why="the code limits the flame spread of foam plastic",
)

RULE.clause(
    "e",
    CAUTION,
    "Smoke-developed index of the board is {found}; maximum {wanted} in an exterior wall.",
    when="wall.insulation.kind = eps and wall.insulation.smoke_developed > limit",
    limit="board.smoke_developed",
    remedy="Use board certified to a maximum smoke-developed index of {board.smoke_developed}.",
    why="the code limits the smoke of foam plastic",
)
