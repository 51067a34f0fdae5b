"""The matrix of substrates and attachments as text."""

from collections.abc import Mapping, Sequence

from specgen.model.value_text import words
from specgen.terminal.columns import align_columns

_NOTE = """
Assumed: a fluid-applied water-resistive barrier, a sound surface, and an old coating that stays.
yes: no exception under the attachment rules; measure: permitted with the measure of the rule; no: stopped by a rule.
specgen rules CODE tells why.
"""


def format_matrix(methods: Sequence[str], answers: Mapping[str, Sequence[str]]) -> str:
    """A column for each attachment, a row for each substrate with its answers, and what they mean."""
    rows = [[words(substrate), *row] for substrate, row in answers.items()]
    return align_columns([["", *map(words, methods)], *rows]) + _NOTE
