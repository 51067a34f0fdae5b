"""Writes another value in place of one that is given, where a command is asked for just that."""

from specgen.editing.add_values import insert_all
from specgen.editing.line_starts import LineStarts
from specgen.editing.outline import read_outline
from specgen.editing.placing import Insert
from specgen.editing.read_back import check_replaced, read_clean, read_edited
from specgen.editing.values import write_value
from specgen.model.field import Path, Schema, dotted_path
from specgen.model.problem import Problem, Refused
from specgen.reading.file_text import decode_source


def replace_value(source: bytes, path: Path, value: str, schema: Schema, shown: str) -> bytes:
    """The file with this value of a field, all else as it stands; raises Refused where it is not written there."""
    before, text = read_clean(source, shown), decode_source(source, shown).text
    field, spot, flow = schema.field_at(path), read_outline(text, LineStarts(text)), False
    hint = f"write {dotted_path(path)}: {value} by hand"
    for name in path:
        pair = spot.child(name)
        if pair is None:
            raise Refused(Problem("nothing was changed: this comes from elsewhere", hint, dotted_path(path), shown))
        flow, spot = spot.flow, pair[1]
    assert field is not None
    insert = Insert(spot.start, spot.end, 0, write_value(field, value, flow))
    edited = insert_all(source, text, [insert])
    check_replaced(before, read_edited(edited, shown), path, value)
    return edited
