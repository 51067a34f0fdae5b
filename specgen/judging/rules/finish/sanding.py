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

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.quantities.comparison import less, more

RULE = Rule(
    "FIN-02",
    "Smoothing sanded in time, fine and in circles",
    remedy="Fine block, circles, brush, then damp towel.",
    steps="smoothing_1 smoothing_2",
    documents="D08",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Sanding may start {found} min after application; {wanted} min is the least.",
    needs="smoothing.sand_after_least_minutes",
    limit="smoothing.sand_after_least",
)
def too_early(project: Any, limit: Any) -> Iterator[Found]:
    """Sanding may start before the skim has set."""
    if less(project.smoothing.sand_after_least_minutes, limit):
        yield found(project.smoothing.sand_after_least_minutes, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "Sanding may wait {found} min after application; {wanted} min is the most.",
    needs="smoothing.sand_after_most_minutes",
    limit="smoothing.sand_after_most",
)
def too_late(project: Any, limit: Any) -> Iterator[Found]:
    """Sanding may wait until the skim is hard."""
    if more(project.smoothing.sand_after_most_minutes, limit):
        yield found(project.smoothing.sand_after_most_minutes, wanted=limit)


@RULE.clause(
    "c",
    CAUTION,
    "A {found} abrasive leaves scratches that ghost through gloss.",
    needs="smoothing.abrasive",
    basis="practice",
)
def coarse(project: Any) -> Iterator[Found]:
    """The abrasive is too coarse."""
    if project.smoothing.abrasive not in ("fine", "very_fine"):
        yield found(project.smoothing.abrasive)


@RULE.clause(
    "d",
    CAUTION,
    "Straight sanding strokes may show through gloss.",
    needs="smoothing.motion",
    basis="practice",
)
def straight_strokes(project: Any) -> Iterator[Found]:
    """Sanding does not go in circles."""
    if project.smoothing.motion != "circular":
        yield found(project.smoothing.motion, wanted="circular")
