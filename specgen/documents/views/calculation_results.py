"""Summary of the calculations: what is compared, member by member that governs, with ratio and status."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.calculations import CalculationValues, gather_calculations, weigh
from specgen.documents.comparisons import OK, Conclusion, conclude
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import full_name
from specgen.documents.page_figures import settle
from specgen.model.block import Strong, Text, Value
from specgen.model.capacity import Check
from specgen.quantities.comparison import Sense


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each comparison and status, with the member that governs."""
    lines: list[tuple[Any, ...]] = []
    for calculation in gather_calculations(context):
        for check in calculation.provider.checks:
            lines += _of_check(context, calculation, check)
    heads = ("Calculation", "Member", "Demand or required", "Capacity or provided", "Ratio or margin", "Status")
    return TableView(heads, tuple(lines), (27, 22, 13, 22, 9, 7))


def _of_check(context: DocumentContext, calculation: CalculationValues, check: Check) -> Iterator[tuple[Any, ...]]:
    first_check = check is calculation.provider.checks[0]
    name = calculation.provider.title if first_check else check.demand[:1].upper() + check.demand[1:]
    by_status: dict[str, list[Conclusion]] = {}
    for member in calculation.workings:
        for one in conclude(context, calculation.provider, member):
            if one.check is check:
                by_status.setdefault(one.status, []).append(one)
    for status, found in by_status.items():
        first = max(found, key=lambda one: (one.use, weigh(calculation.workings[one.member])))
        demand, limit, ratio = first.sides(context.first)
        named: Any = first.pending
        if first.comparison is None and first_check:
            working = calculation.workings[first.member]
            demand = settle(working.result, working.unit, context.first)
        if first.comparison is not None:
            named = [Value(limit, first.source, about=check.limit, row=first.row), f" {check.limit}"]
        # What a minimum asks for is required, and what is held against it provided.
        least = first.comparison is not None and first.comparison.sense is Sense.AT_LEAST
        yield (
            name,
            full_name(context, first.member) + (f" (of {len(found)})" if len(found) > 1 else ""),
            *((named, demand) if least else (demand, named)),
            ratio,
            status if status == OK else Strong((Text(status),)),
        )
