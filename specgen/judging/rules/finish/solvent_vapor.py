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

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "FIN-10",
    "VOC content within the local limit",
    remedy="Use a grade that complies with the local VOC limit; do not thin with solvent.",
    steps="smoothing_1 primer gloss",
    documents="D02 D18",
)

RULE.clause(
    "a",
    STOP,
    "The smoothing has a VOC content of {found}; the local limit is {wanted}.",
    when="smoothing.voc > code.voc_limit",
    basis="computed",
    step="smoothing_1",
    remedy="Use a smoothing grade that complies; do not thin with solvent.",
)

RULE.clause(
    "b",
    STOP,
    "The primer has a VOC content of {found}; the local limit is {wanted}.",
    when="primer.voc > code.voc_limit",
    basis="computed",
    step="primer",
    remedy="Use a primer grade that complies; do not thin with solvent.",
)

RULE.clause(
    "c",
    STOP,
    "The gloss has a VOC content of {found}; the local limit is {wanted}.",
    when="gloss.voc > code.voc_limit",
    basis="computed",
    step="gloss",
    remedy="Use a gloss grade that complies; do not thin with solvent.",
)
