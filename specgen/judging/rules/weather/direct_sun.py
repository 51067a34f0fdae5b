"""No coat is sprayed on a wall that stands in the sun.

Why: in direct sun the first pass skins over before the second wets it, and the gloss is dull and rough.

passes
    log: [{step: gloss, sun_on_wall: no}]
fails WEA-04a at log.0.sun_on_wall
    log: [{step: gloss, sun_on_wall: yes}]
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WEA-04",
    "No spraying in direct sun",
    remedy="Hang shade cloth or set a tent, or move the shift into the hours of the elevation's own shade.",
    steps="protection primer gloss",
    documents="D05 D08 D14",
)

RULE.clause(
    "a",
    STOP,
    "The wall is sprayed in direct sun.",
    when="log.step in sprayed and log.sun_on_wall = yes",
    basis="practice",
    remedy=(
        "Stop until the wall is in shade. View what was sprayed against the mockup, and recoat dull or rough panels "
        "to a natural break."
    ),
)
