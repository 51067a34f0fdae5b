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
    "Sanding of the smoothing coats",
    remedy="Sand with a fine block in circles, brush off, then wipe with a damp towel.",
    steps="smoothing_1 smoothing_2",
    documents="D08",
)

RULE.clause(
    "a",
    CAUTION,
    "Sanding may start {found} min after application; minimum {wanted} min.",
    when="smoothing.sand_after_least_minutes < limit",
    limit="smoothing.sand_after_least",
    remedy="Let the skim dry at least {smoothing.sand_after_least} before sanding.",
)

RULE.clause(
    "b",
    CAUTION,
    (
        "Sanding may wait until {found} min after application; maximum {wanted} min, after which the skim is "
        "too hard to level."
    ),
    when="smoothing.sand_after_most_minutes > limit",
    limit="smoothing.sand_after_most",
    remedy="Sand within {smoothing.sand_after_most} of application.",
)

RULE.clause(
    "c",
    CAUTION,
    "A {found} abrasive leaves scratches that show through the gloss.",
    when="smoothing.abrasive not in {fine, very_fine}",
    basis="practice",
    remedy="Sand with a fine or very fine abrasive.",
)

RULE.clause(
    "d",
    CAUTION,
    "Straight sanding strokes show through the gloss.",
    when="smoothing.motion != circular",
    wanted="circular",
    basis="practice",
    remedy="Sand in circles.",
)
