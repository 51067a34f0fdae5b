"""The matrix of substrates and attachments as text."""

from collections.abc import Iterable, Mapping, Sequence
from textwrap import fill
from typing import Any, NamedTuple

from specgen.model.value_text import words
from specgen.terminal.columns import align_columns

_WIDTH = 120  # of its lines of text; the table itself is wider
_NOTE = """
Assumed: a fluid-applied water-resistive barrier, a sound surface, and an existing coating that stays.
yes      no attachment rule says anything against it
measure  permitted with a measure: the rule named asks for it as a caution, and what it is stands below
no       the rule named stops it; below stands what to do in its place
"""


class PairAnswer(NamedTuple):
    """What the rules say of one substrate with one attachment: yes, measure or no, and the clause that decides it."""

    answer: str
    code: str = ""
    measure: str = ""  # of that clause


def format_matrix(methods: Sequence[str], answers: Mapping[str, Sequence[PairAnswer]]) -> str:
    """A column for each attachment, a row for each substrate with its answers, and what they mean."""
    rows = [
        [words(substrate), *(f"{one.answer} {one.code}".strip() for one in row)] for substrate, row in answers.items()
    ]
    return align_columns([["", *map(words, methods)], *rows]) + _NOTE + _format_measures(answers.values())


def matrix_to_data(methods: Sequence[str], answers: Mapping[str, Sequence[PairAnswer]]) -> dict[str, Any]:
    """The matrix as data: for each substrate the answer to each attachment, by the words of a project file."""
    rows = {
        substrate: {
            method: {"answer": one.answer, "rule": one.code or None, "measure": one.measure or None}
            for method, one in zip(methods, row, strict=True)
        }
        for substrate, row in answers.items()
    }
    return {"format": 1, "substrates": rows}


def _format_measures(rows: Iterable[Sequence[PairAnswer]]) -> str:
    """The measure of each clause that is named."""
    measures = {one.code: one.measure for row in rows for one in row if one.code}
    told = [
        fill(measures[code], _WIDTH, initial_indent=f"  {code}  ", subsequent_indent=" " * 11, break_on_hyphens=False)
        for code in sorted(measures)
    ]
    return "\n".join(["", "Measures (specgen rules CODE tells why):", *told, ""]) if told else ""
