"""Smoothing is sanded within its time, with a fine block and in circles.

Why: sanded too early the skim tears, and too late it is hard and takes scratches. Straight strokes
line up with one another and show through gloss.

passes
    smoothing: {sand_after_least_minutes: 15, sand_after_most_minutes: 30, abrasive: fine, motion: circular}
fails FIN-02a at smoothing.sand_after_least_minutes
    smoothing: {sand_after_least_minutes: 5}
fails FIN-02b at smoothing.sand_after_most_minutes
    smoothing: {sand_after_most_minutes: 60}
fails FIN-02c at smoothing.abrasive
    smoothing: {abrasive: medium}
fails FIN-02d at smoothing.motion
    smoothing: {motion: straight}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "FIN-02",
    "Smoothing sanded in time, fine and in circles",
    remedy="Fine block, circles, brush, then damp towel.",
    steps="smoothing_1 smoothing_2",
    documents="D08",
)

RULE.clause(
    "a",
    CAUTION,
    "Sanding may start {found} min after application; {wanted} min is the least.",
    when="smoothing.sand_after_least_minutes < limit",
    limit="smoothing.sand_after_least",
)

RULE.clause(
    "b",
    CAUTION,
    "Sanding may wait {found} min after application; {wanted} min is the most.",
    when="smoothing.sand_after_most_minutes > limit",
    limit="smoothing.sand_after_most",
)

RULE.clause(
    "c",
    CAUTION,
    "A {found} abrasive leaves scratches that ghost through gloss.",
    when="smoothing.abrasive not in {fine, very_fine}",
    basis="practice",
)

RULE.clause(
    "d",
    CAUTION,
    "Straight sanding strokes may show through gloss.",
    when="smoothing.motion != circular",
    wanted="circular",
    basis="practice",
)
