"""Results that no limit stands against: quantities, films, areas, with what is bought for them."""

from typing import Any

from specgen.documents.calculations import CalculationValues, gather_calculations
from specgen.documents.comparisons import conclude
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import full_name, mark, marks
from specgen.documents.views.workings import result, total


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each calculation that nothing is compared in."""
    lines: list[tuple[Any, ...]] = []
    for calculation in gather_calculations(context):
        compared = any(conclude(context, calculation.provider, member) for member in calculation.workings)
        if calculation.workings and not compared:
            lines.append((calculation.provider.title, _members(context, calculation), _results(context, calculation)))
    return TableView(("Calculation", "Member", "Result"), tuple(lines), (38, 26, 36))


def _members(context: DocumentContext, calculation: CalculationValues) -> str:
    found = list(calculation.workings)
    return full_name(context, found[0]) if len(found) == 1 else marks([mark(member) for member in found])


def _results(context: DocumentContext, calculation: CalculationValues) -> str:
    """The common result, one for each of a few members, or the least and the greatest; the sum where it counts."""
    provider, workings = calculation.provider, list(calculation.workings.values())
    told = {mark(member): result(context, provider, working) for member, working in calculation.workings.items()}
    if len(set(told.values())) == 1:
        return next(iter(told.values()))
    if provider.adds:
        return total(context, calculation.workings)
    if len(told) <= 2:
        return "; ".join(f"{name} {text}" for name, text in told.items())
    low, high = (end(workings, key=lambda working: float(working.result)) for end in (min, max))
    return f"{result(context, provider, low)} to {result(context, provider, high)}"
