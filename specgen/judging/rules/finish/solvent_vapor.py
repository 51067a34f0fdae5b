"""Smoothing, primer and gloss keep within the local limit on solvent vapor.

Why: air rules limit the solvent in each coat as it is applied. Goods over the limit may not be used on the
site, and solvent added to thin them counts too.

passes
    code: {voc_limit: 100 g/L}
    smoothing: {voc: 100 g/L}
    primer: {voc: 90 g/L}
    gloss: {voc: 90 g/L}
fails FIN-10a at smoothing.voc
    code: {voc_limit: 50 g/L}
    smoothing: {voc: 90 g/L}
fails FIN-10b at primer.voc
    code: {voc_limit: 50 g/L}
    primer: {voc: 90 g/L}
fails FIN-10c at gloss.voc
    code: {voc_limit: 50 g/L}
    gloss: {voc: 90 g/L}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.quantities.comparison import more

RULE = Rule(
    "FIN-10",
    "Solvent vapor within the local limit",
    remedy="Source's compliant grade; do not thin with solvent.",
    steps="smoothing_1 primer gloss",
    documents="D02 D18",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The smoothing has {found}; the local limit is {wanted}.",
    needs="code.voc_limit smoothing.voc",
    basis="computed",
    step="smoothing_1",
)
def smoothing_over(project: Any) -> Iterator[Found]:
    """The smoothing gives off more than is allowed here."""
    yield from _over(project, project.smoothing)


@RULE.clause(
    "b",
    STOP,
    "The primer has {found}; the local limit is {wanted}.",
    needs="code.voc_limit primer.voc",
    basis="computed",
    step="primer",
)
def primer_over(project: Any) -> Iterator[Found]:
    """The primer gives off more than is allowed here."""
    yield from _over(project, project.primer)


@RULE.clause(
    "c",
    STOP,
    "The gloss has {found}; the local limit is {wanted}.",
    needs="code.voc_limit gloss.voc",
    basis="computed",
    step="gloss",
)
def gloss_over(project: Any) -> Iterator[Found]:
    """The gloss gives off more than is allowed here."""
    yield from _over(project, project.gloss)


def _over(project: Any, coat: Any) -> Iterator[Found]:
    """The figure of a coat against the local limit."""
    if more(coat.voc, project.code.voc_limit):
        yield found(coat.voc, wanted=project.code.voc_limit)
