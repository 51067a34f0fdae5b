"""The readings that are missing or not evaluated: those of a field that share place and reason in one row."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.records.entry_text import tell_span
from specgen.model.record import Entry
from specgen.model.record_judgment import Reading
from specgen.model.value_text import words

_Key = tuple[str, str, str, str, str]  # collection, elevation, step or criterion, field, state with its reason


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each field, elevation, step, and reason, in the order of the entries."""
    grouped: dict[_Key, list[Entry]] = {}
    for reading in context.recorded.unsettled:
        grouped.setdefault(_key(reading), []).append(reading.entry)
    fields = context.project.schema.fields
    lines = []
    for (collection, face, step, name, reason), entries in grouped.items():
        field = fields.get((collection, name))
        place = ", ".join(filter(None, (face, words(step) if step else "")))
        lines.append((field.label if field else words(name), place, reason, str(len(entries)), tell_span(entries)))
    header = ("Reading", "Elevation, step", "Why it is not judged", "Count", "From, to")
    return TableView(header, tuple(lines), (24, 20, 29, 8, 19))


def _key(reading: Reading) -> _Key:
    entry = reading.entry
    state, reason = words(reading.state.value), reading.reason
    told = reason if state in reason or not reason else f"{state}: {reason}"
    step = str(entry.get("step") or entry.get("criterion") or "")
    return entry.collection, str(entry.get("elevation") or ""), step, reading.field, told or state
