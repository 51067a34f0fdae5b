"""No pail holds more water than the manufacturer allows, and all pails of a coat hold the same.

Why: water thins the film and lets the flakes drift. Two pails of different water are two shades on the wall.

passes
    gloss: {max_water: 5}
    log: [{step: gloss, coat: 1, elevation: E1, water: 4}, {step: gloss, coat: 1, elevation: E1, water: 4}]
    elevations: {E1: {wall: W1}}
fails FIN-06a at log.0.water
    primer: {max_water: 5}
    log: [{step: primer, water: 6}]
fails FIN-06b at log.0.water
    gloss: {max_water: 5}
    log: [{step: gloss, water: 6}]
fails FIN-06c at log.1.water
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, coat: 1, elevation: E1, water: 4}, {step: gloss, coat: 1, elevation: E1, water: 5}]
"""

from specgen.judging.choice_groups import SPRAYED
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import if_given, read_all
from specgen.model.typed_views import SiteRecordEntry
from specgen.recording.history import History

RULE = Rule(
    "FIN-06",
    "Water in the pails",
    remedy="Measure water with a jug, put the same share into each pail, and box the pails of a face.",
    steps="setup primer gloss",
    documents="D12b",
)

TOO_WET = (
    "Do not spray this pail; box it with unthinned pails of the same batch down to {wanted} % or less. Recoat to a "
    "natural break what was sprayed from it."
)

RULE.clause(
    "a",
    STOP,
    "The pail of primer holds {found} % water; maximum {wanted} %.",
    when="log.step = primer and log.water > primer.max_water",
    basis="practice",
    step="primer",
    remedy=TOO_WET,
)

RULE.clause(
    "b",
    STOP,
    "The pail of gloss holds {found} % water; maximum {wanted} %.",
    when="log.step = gloss and log.water > gloss.max_water",
    basis="practice",
    step="gloss",
    remedy=TOO_WET,
)


@RULE.test(
    "c",
    STOP,
    "The pail holds {found} % water; the first pail of this coat held {wanted} %.",
    at="log.water",
    basis="practice",
    step="gloss",
    remedy=(
        "Do not spray this pail; box it with the others of the face until all hold {wanted} %. Recoat to a natural "
        "break what was sprayed from it."
    ),
    why="a pail with more water than the one before shows as a lighter band",
)
def unequal_water(log: SiteRecordEntry, history: History) -> Violations:
    """A pail holds more or less water than the first one of the same coat at the same place."""
    if log.step not in SPRAYED:
        return
    water, face = read_all(lambda: log.water, lambda: log.elevation)
    area, coat = if_given(lambda: log.area) or "", if_given(lambda: log.coat)
    first = history.find_first_with("water", face.mark, log.step, area, coat)
    if first is not None and first.values["water"] != water:
        yield violation(water, wanted=first.values["water"])
