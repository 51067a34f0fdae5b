"""Board and base coat are those the system was tested with: EPS and class PB.

Why: every report of the system speaks of one build-up. Another board or another class of base coat burns,
moves and cracks in its own way, and none of those reports covers it.

passes
    walls: {W1: {insulation: {kind: eps}, base_coat: {class: PB}}}
fails INS-02a at walls.W1.insulation.kind
    walls: {W1: {insulation: {kind: polyiso}}}
fails INS-02b at walls.W1.base_coat.class
    walls: {W1: {base_coat: {class: PM}}}
"""

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.typed_views import Wall

RULE = Rule(
    "INS-02",
    "EPS board and class PB base coat, as tested",
    remedy="Change to EPS board, or declare a deviation with test reports and the EIFS manufacturer's letter "
    "for this build-up.",
    steps="boards",
    documents="D03 D18",
)

RULE.clause(
    "a",
    CAUTION,
    "Insulation is {found}, outside the tested EPS system.",
    when="wall.insulation.kind in {xps, polyiso, phenolic}",
    basis="astm_e2430_memory",
)


@RULE.test(
    "b",
    CAUTION,
    "Base coat is class {found}, outside the tested class PB system.",
    at="wall.base_coat.class",
    basis="astm_c1397",
    remedy="Change to a class PB base coat, or declare a deviation with test reports and the EIFS "
    "manufacturer's letter for this build-up.",
)
def other_class(wall: Wall) -> Violations:
    """The base coat is of another class than PB."""
    if wall.base_coat["class"] != "PB":
        yield violation(wall.base_coat["class"], wanted="PB")
