"""Flake is kept in suspension, and is laid down by a light first pass where the manufacturer allows it.

Why: metal flake is heavier than the paint around it. In a tank at rest it sinks, and the last panels of a
fill are darker or brighter than the first.

passes
    colors: {C1: {metallic: yes}}
    tank: {agitation: agitator}
    gloss: {first_pass: light}
fails FIN-14a at tank.agitation
    colors: {C1: {metallic: yes}}
    tank: {agitation: none}
fails FIN-14b at gloss.first_pass
    colors: {C1: {metallic: yes}}
    gloss: {first_pass: full}
"""

from specgen.judging.rule import CAUTION, NOTE, Rule

RULE = Rule(
    "FIN-14",
    "Flake suspension",
    remedy="Keep the flake suspended, and lay it as on the accepted mockup.",
    steps="setup gloss",
    documents="D08 D12a",
)

RULE.clause(
    "a",
    CAUTION,
    "The tank is not agitated, so the flake settles in tank and hose.",
    when="color.metallic = yes and tank.agitation = none",
    basis="practice",
    remedy="Fit a slow agitator; empty the line before each break.",
)

RULE.clause(
    "b",
    NOTE,
    (
        "The first gloss pass is a full one; a light first pass lets the flake lie evenly, where the "
        "manufacturer allows it."
    ),
    when="color.metallic = yes and gloss.first_pass = full",
    basis="practice",
    step="gloss",
    remedy="Spray the first pass as accepted on the mockup.",
    why="in a full wet coat the flakes sink and gather",
)
