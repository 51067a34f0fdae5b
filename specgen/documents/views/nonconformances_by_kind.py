"""How often each clause fired on the site record, with the numbers of its nonconformances."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.records.faults import list_faults, span_numbers
from specgen.model.value_text import words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each clause."""
    numbers: dict[str, list[int]] = {}
    for one in context.recorded.nonconformances:
        numbers.setdefault(one.code, []).append(one.number)
    lines = tuple(
        (f"{fault.code} {fault.title}", words(fault.severity), str(fault.count), span_numbers(numbers[fault.code]))
        for fault in context.remember(list_faults)
    )
    return TableView(("Kind", "Weight", "Count", "Numbers"), lines, (48, 12, 10, 30))
