"""EPS board is of EIFS grade and aged before use, and any foam board is within the fire indexes of the code.

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
fails INS-03f at walls.W1.insulation.flame_spread
    code: {model: ibc, construction_type: IIB}
    walls: {W1: {insulation: {kind: polyiso, flame_spread: 40}}}
fails INS-03g at walls.W1.insulation.smoke_developed
    walls: {W1: {insulation: {kind: xps, smoke_developed: 500}}}
"""

from specgen.computing.foam_plastic import FOAM, RESTRICTED
from specgen.judging.rule import CAUTION, STOP, Limits, Rule, Violations, violation
from specgen.model.absence import if_given, read_all
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, Wall

RULE = Rule(
    "INS-03",
    "EIFS-grade board and its fire indexes",
    remedy="Use EIFS-grade EPS board of type I or better, and submit its certificate.",
    steps="boards",
    documents="D02 D18",
)

_OTHER_FOAM = tuple(kind for kind in FOAM if kind != "eps")

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


@RULE.test(
    "f",
    CAUTION,
    "Flame spread index of the board is {found}; maximum {wanted} for foam plastic.",
    at="wall.insulation.flame_spread",
    basis="ibc_foam_burning ibc_foam_indexes",
    remedy="Use board certified to a maximum flame spread index of {wanted}.",
    why="the code limits the flame spread of foam plastic",
)
def spreads_flame(wall: Wall, project: Description, limits: Limits, standards: Standards) -> Violations:
    """Foam other than EPS spreads flame beyond what the code allows any foam, or a wall of types I to IV."""
    kind, index = read_all(lambda: wall.insulation.kind, lambda: wall.insulation.flame_spread)
    any_foam, strict = (standards.limits[name] for name in ("foam.flame_spread", "board.flame_spread"))
    if kind not in _OTHER_FOAM or index <= limits(strict.name):
        return
    over_any = index > limits(any_foam.name)
    if if_given(lambda: _is_restricted(project)) if over_any else _is_restricted(project):
        yield violation(index, wanted=limits(strict.name), sources=(strict.source,), say=_RESTRICTED)
    elif over_any:
        yield violation(index, wanted=limits(any_foam.name), sources=(any_foam.source,))


_RESTRICTED = (
    "Flame spread index of the board is {found}; maximum {wanted} for foam plastic in an exterior wall of types I to "
    "IV."
)


def _is_restricted(project: Description) -> bool:
    """Whether the walls are those that the stricter section is about; raises Absent."""
    return project.code.model == "ibc" and project.code.construction_type in RESTRICTED


RULE.clause(
    "g",
    CAUTION,
    "Smoke-developed index of the board is {found}; maximum {wanted} for foam plastic.",
    when="wall.insulation.kind in {xps, polyiso, phenolic} and wall.insulation.smoke_developed > limit",
    limit="foam.smoke_developed",
    remedy="Use board certified to a maximum smoke-developed index of {foam.smoke_developed}.",
    why="the code limits the smoke of foam plastic",
)
