"""Every coat has its drying time before the next goes on.

Why: water shut in by the next coat comes out later as blisters, dull patches or a soft film. The
hours given are the least; cool or damp weather asks for more.

passes
    smoothing: {dry_hours: 24}
    primer: {dry_hours: 12}
    gloss: {dry_hours: 24}
fails FIN-03a at walls.W1.attachment.cure_hours
    walls: {W1: {attachment: {cure_hours: 12}}}
fails FIN-03b at walls.W1.base_coat.cure_hours
    walls: {W1: {base_coat: {cure_hours: 16}}}
fails FIN-03c at smoothing.dry_hours
    smoothing: {dry_hours: 12}
fails FIN-03d at primer.dry_hours
    primer: {dry_hours: 4}
fails FIN-03e at gloss.dry_hours
    gloss: {dry_hours: 12}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "FIN-03",
    "Drying time for every coat",
    remedy="Restore it; longer if cool or damp.",
    steps="boards second_pass smoothing_2 primer gloss",
    documents="D08 D14",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Adhesive is given {found} h; {wanted} h is the least.",
    each="walls",
    needs="walls.*.attachment.cure_hours",
    limit="adhesive.cure",
    step="boards",
)
def adhesive_hurried(wall: Any, limit: Any) -> Iterator[Found]:
    """The adhesive has less time than its least."""
    if less(wall.attachment.cure_hours, limit):
        yield found(wall.attachment.cure_hours, wanted=limit)


@RULE.clause(
    "b",
    STOP,
    "Base coat is given {found} h; {wanted} h is the least.",
    each="walls",
    needs="walls.*.base_coat.cure_hours",
    limit="base_coat.cure",
    step="second_pass",
)
def base_coat_hurried(wall: Any, limit: Any) -> Iterator[Found]:
    """The base coat has less time than its least."""
    if less(wall.base_coat.cure_hours, limit):
        yield found(wall.base_coat.cure_hours, wanted=limit)


@RULE.clause(
    "c",
    STOP,
    "Smoothing is given {found} h; {wanted} h is the least.",
    needs="smoothing.dry_hours",
    limit="smoothing.dry",
    step="smoothing_2",
)
def smoothing_hurried(project: Any, limit: Any) -> Iterator[Found]:
    """Smoothing has less time than its least."""
    if less(project.smoothing.dry_hours, limit):
        yield found(project.smoothing.dry_hours, wanted=limit)


@RULE.clause(
    "d",
    STOP,
    "Primer is given {found} h; {wanted} h is the least.",
    needs="primer.dry_hours",
    limit="primer.dry",
    step="primer",
)
def primer_hurried(project: Any, limit: Any) -> Iterator[Found]:
    """The primer has less time than its least."""
    if less(project.primer.dry_hours, limit):
        yield found(project.primer.dry_hours, wanted=limit)


@RULE.clause(
    "e",
    STOP,
    "Gloss is given {found} h; {wanted} h is the least.",
    needs="gloss.dry_hours",
    limit="gloss.dry",
    step="gloss",
)
def gloss_hurried(project: Any, limit: Any) -> Iterator[Found]:
    """The gloss coat has less time than its least."""
    if less(project.gloss.dry_hours, limit):
        yield found(project.gloss.dry_hours, wanted=limit)
