"""The nonconformances with their state: lifted, for information, or waiting for a disposition."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.records.closeout import tell_state
from specgen.documents.records.faults import span_numbers
from specgen.model.record_judgment import Nonconformance

_OPEN = "open: disposition not entered"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for all of a clause that say the same and stand alike, in the order of their first number."""
    grouped: dict[tuple[str, str, str], list[Nonconformance]] = {}
    for one in context.recorded.nonconformances:
        state = tell_state(one) or _OPEN
        grouped.setdefault((one.code, one.message, state), []).append(one)
    lines = tuple(
        (
            code,
            span_numbers(one.number for one in found),
            span_marks({str(one.entry.get("elevation")) for one in found if one.entry.get("elevation")}) or "–",
            message,
            state,
        )
        for (code, message, state), found in grouped.items()
    )
    return TableView(("Clause", "Numbers", "Elevations", "What was found", "State"), lines, (14, 10, 11, 37, 28))
