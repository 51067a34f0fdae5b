"""Adds values to the source of a file, each at its place; every other byte stays as it is."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from specgen.editing.edit import Added, Addition, Edit
from specgen.editing.line_starts import LineStarts
from specgen.editing.notes import write_note
from specgen.editing.outline import read_outline
from specgen.editing.placing import Insert, Placer
from specgen.editing.planning import Plan, plan_edit, value_at
from specgen.editing.read_back import check_edited, read_clean, read_edited
from specgen.editing.values import find_entry, is_same, read_typed
from specgen.model.field import Path, Schema
from specgen.reading.file_text import decode_source
from specgen.reading.positions import Text

_MARK = b"\xef\xbb\xbf"


def add_values(
    source: bytes, additions: Sequence[Addition], schema: Schema, shown: str, heads: Mapping[Path, str] | None = None
) -> Edit:
    """The file with what could be added to it, named `shown` in messages; `heads` are comments over new sections.

    Raises Refused for a file that is no YAML mapping, for a path that is no field, and where the edited file would not
    be read as the old one with the new values.
    """
    before = read_clean(source, shown)
    text = decode_source(source, shown).text
    lines = LineStarts(text)
    plan = plan_edit(before, read_outline(text, lines), schema, additions, heads or {})
    noted: list[Addition] = []
    inserts = [*_place(text, lines, plan), *_place_notes(text, lines, plan, schema, noted)]
    edited = insert_all(source, text, inserts)
    after = read_edited(edited, shown) if inserts else before
    remarks = check_edited(before, after, plan.taken, schema)
    added = [Added(path, after.places[path].line, one.text) for path, one in plan.taken.items()]
    added += [Added(addition.path, 0, "") for addition in noted]
    conflicts = tuple(one for one in plan.conflicts if not _is_met(after, one.path, one.offered, schema))
    return Edit(edited, tuple(added), conflicts, remarks)


def insert_all(source: bytes, text: str, inserts: Iterable[Insert]) -> bytes:
    """The source, of which this is the text, with all inserts; in their lines its own kind of line ends."""
    ending = next((end for end in ("\r\n", "\n", "\r") if end in text), "\n")
    done, parts = 0, []
    for insert in sorted(inserts, key=lambda one: (one.start, -one.depth)):
        parts += [text[done : insert.start], _end_lines(text, insert, ending)]
        done = insert.end
    return (_MARK if source.startswith(_MARK) else b"") + "".join([*parts, text[done:]]).encode()


def _place(text: str, lines: LineStarts, plan: Plan) -> Iterator[Insert]:
    placer = Placer(text, lines)
    for fill in plan.fills:
        yield from placer.fill(fill)
    for growth in plan.growths.values():
        yield from placer.grow(growth)


def _place_notes(text: str, lines: LineStarts, plan: Plan, schema: Schema, noted: list[Addition]) -> Iterator[Insert]:
    """The comments behind braces; what they tell of is put on `noted`."""
    placer = Placer(text, lines)
    for note in plan.notes.values():
        written, told = write_note(text, lines, note, schema)
        noted += told
        if written:
            yield placer.behind(note.outer.spot.end, len(note.outer.path), written, note.outer.column)


def _is_met(after: Text, path: Path, offered: str, schema: Schema) -> bool:
    """Whether the edited file says what could not be written of itself, as a section repeats another one."""
    field, value = find_entry(schema, path), value_at(after.data, path)
    return field is not None and value is not None and is_same(field, value, read_typed(field, offered))


def _end_lines(text: str, insert: Insert, ending: str) -> str:
    if not insert.whole:
        return insert.text
    lines = insert.text.replace("\n", ending)
    unended = insert.start == len(text) and not text.endswith(("\n", "\r"))
    return ending + lines if unended else lines + ending
