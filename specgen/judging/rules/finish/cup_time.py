"""Primer and gloss are read in one kind of cup, and thinned into one window of cup time.

Why: thick material spits and leaves orange peel, thin material runs and lets the flakes drift. Only one
cup and one window make every pail like that of the mockup.

passes
    primer: {cup: zahn_4, cup_least: 25 s, cup_most: 35 s}
    gloss: {cup: zahn_4, cup_least: 25 s, cup_most: 35 s}
fails FIN-05a at primer.cup
    primer: {cup: ford_4}
fails FIN-05b at gloss.cup
    gloss: {cup: zahn_2}
fails FIN-05c at primer.cup_least
    primer: {cup_least: 20 s}
fails FIN-05d at gloss.cup_least
    gloss: {cup_least: 20 s}
fails FIN-05e at primer.cup_most
    primer: {cup_most: 40 s}
fails FIN-05f at gloss.cup_most
    gloss: {cup_most: 40 s}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "FIN-05",
    "One cup and one window of cup time",
    remedy="Thin or warm until the cup time is within its limits; another cup only by letter of the manufacturer.",
    steps="setup primer gloss",
    documents="D08 D12b",
)

RULE.clause(
    "a",
    STOP,
    "The primer is read in {found}; {wanted} is due.",
    when="primer.cup != limit",
    limit="primer.cup",
    step="primer",
)

RULE.clause(
    "b",
    STOP,
    "The gloss is read in {found}; {wanted} is due.",
    when="gloss.cup != limit",
    limit="gloss.cup",
    step="gloss",
)

RULE.clause(
    "c",
    STOP,
    "The least cup time of the primer is {found}; it is {wanted}.",
    when="primer.cup_least < limit",
    limit="primer.cup_least",
    step="primer",
)

RULE.clause(
    "d",
    STOP,
    "The least cup time of the gloss is {found}; it is {wanted}.",
    when="gloss.cup_least < limit",
    limit="gloss.cup_least",
    step="gloss",
)

RULE.clause(
    "e",
    STOP,
    "The most cup time of the primer is {found}; it is {wanted}.",
    when="primer.cup_most > limit",
    limit="primer.cup_most",
    step="primer",
)

RULE.clause(
    "f",
    STOP,
    "The most cup time of the gloss is {found}; it is {wanted}.",
    when="gloss.cup_most > limit",
    limit="gloss.cup_most",
    step="gloss",
)
