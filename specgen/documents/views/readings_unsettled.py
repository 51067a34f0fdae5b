"""The readings that are missing or not evaluated: those of the same entries and for the same reason in one row."""

from collections.abc import Iterable

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.records.entry_text import tell_span
from specgen.model.record import Entry
from specgen.model.record_judgment import Reading, ReadingState
from specgen.model.value_text import words

_Alike = tuple[str, str, str]  # collection, step or criterion, why it is not judged
_Field = tuple[_Alike, str]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for the fields of steps that share entries and reason, in the order of the entries."""
    lines: dict[tuple[str, str, str], tuple[list[str], list[Entry]]] = {}
    for (collection, step, reason), names, entries in _group(context.recorded.unsettled):
        fields = (context.project.schema.fields.get((collection, name)) for name in names)
        labels = [field.label if field else words(name) for field, name in zip(fields, names, strict=True)]
        told = ", ".join([labels[0], *(f"{label[:1].lower()}{label[1:]}" for label in labels[1:])])
        steps, of = lines.setdefault((collection, told, reason), ([], []))
        steps.append(words(step))
        of += entries
    told_rows = tuple(
        (told, _tell_place(steps, entries), reason, str(len(entries)), tell_span(entries))
        for (_, told, reason), (steps, entries) in lines.items()
    )
    header = ("Readings", "Step: elevations", "Why not judged", "Entries", "From, to")
    return TableView(header, told_rows, (32, 24, 14, 9, 21))


def _tell_place(steps: Iterable[str], entries: Iterable[Entry]) -> str:
    """`boards, rasp: E1 to E3`."""
    faces = span_marks({str(entry.get("elevation")) for entry in entries if entry.get("elevation")})
    return ": ".join(filter(None, (", ".join(filter(None, dict.fromkeys(steps))), faces)))


def _group(unsettled: Iterable[Reading]) -> list[tuple[_Alike, list[str], list[Entry]]]:
    """What is alike, the fields that are so in the same entries, and these."""
    of_field: dict[_Field, list[Entry]] = {}
    for reading in unsettled:
        entry = reading.entry
        why = words(reading.state.value) if reading.state is ReadingState.MISSING else reading.reason
        step = str(entry.get("step") or entry.get("criterion") or "")
        of_field.setdefault(((entry.collection, step, why), reading.field), []).append(entry)
    grouped: dict[tuple[_Alike, tuple[int, ...]], tuple[list[str], list[Entry]]] = {}
    for (alike, name), entries in of_field.items():
        same = tuple(entry.number for entry in entries)
        grouped.setdefault((alike, same), ([], entries))[0].append(name)
    return [(alike, names, entries) for (alike, _), (names, entries) in grouped.items()]
