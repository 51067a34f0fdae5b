"""What the symbols at the head of a table of members mean, on one line."""

from os.path import commonprefix
from typing import Any

from specgen.documents.calculations import Instances
from specgen.documents.expression_text import spell_formula
from specgen.documents.views.workings import in_columns
from specgen.resolving.provider import Provider


def name_symbols(provider: Provider, workings: Instances) -> list[Any]:
    """`p` wall facing; `N` day of the year: the inputs that vary, as far as their names agree."""
    told: list[Any] = []
    for row in in_columns(provider, workings):
        names = {own.name for working in workings.values() for own in working.inputs if own.symbol == row.symbol}
        # `day of the year, 21 Sep` of one member and `day of the year, 21 Jul` of another.
        shared = row.name if len(names) == 1 else commonprefix(sorted(names)).rpartition(",")[0]
        told += ["; " if told else "", *spell_formula(row.symbol), f" {shared or row.name}"]
    return told[1:]
