"""How often each clause fired on the site record, with the numbers of its nonconformances."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.records.faults import list_faults
from specgen.model.value_text import words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each clause."""
    numbers: dict[str, list[int]] = {}
    for one in context.recorded.nonconformances:
        numbers.setdefault(one.code, []).append(one.number)
    lines = tuple(
        (f"{fault.code} {fault.title}", words(fault.severity), str(fault.count), _span(numbers[fault.code]))
        for fault in context.remember(list_faults)
    )
    return TableView(("Kind", "Weight", "Count", "Numbers"), lines, (48, 12, 10, 30))


def _span(numbers: list[int]) -> str:
    """`1 to 3, 7`: numbers that follow one another as a span."""
    spans: list[list[int]] = []
    for number in numbers:
        if spans and number == spans[-1][-1] + 1:
            spans[-1].append(number)
        else:
            spans.append([number])
    return ", ".join(
        str(span[0]) if len(span) == 1 else f"{span[0]}{' to ' if len(span) > 2 else ', '}{span[-1]}" for span in spans
    )
