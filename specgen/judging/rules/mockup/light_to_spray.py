"""A tent or a night shift has light enough to see the film.

Why: a wet edge, a sag or a dry stripe is seen in the minute it is made, or not until it is dry. One lamp
from one side hides half of them.

passes
    shade: {T1: {kind: tent, light: 800 lx}}
fails MOC-08a at shade.T1.light
    shade: {T1: {kind: tent, light: 200 lx}}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "MOC-08",
    "Lighting for spraying",
    remedy="Provide even light of at least {spray.light} from both sides, on the mockup as in the work.",
    steps="mockup protection",
    documents="D08 D09",
)

RULE.clause(
    "a",
    CAUTION,
    "The light on the wall is {found}; below {wanted} the film cannot be judged while it is sprayed.",
    when="(shading.kind = tent or schedule.night_work = yes) and shading.light < limit",
    limit="spray.light",
)
