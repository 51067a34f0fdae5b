"""Comments behind braces, about keys without a value that belong into them: put inside they would change the line."""

from collections.abc import Iterator

from specgen.editing.edit import Addition
from specgen.editing.line_starts import LineStarts
from specgen.editing.lines import write_comment
from specgen.editing.planning import Note
from specgen.model.field import Path, Schema, dotted_path

HEAD = "Missing in the braces above; write each inside them:"
_MOST = 80  # letters of names in a line


def write_note(source: str, lines: LineStarts, note: Note, schema: Schema) -> tuple[list[str], list[Addition]]:
    """The lines of a comment without their ends, and the keys it tells of; none where it stands there already."""
    told = _comment_behind(lines, lines.behind(note.outer.spot.end))
    fields: dict[Path, list[Addition]] = {}
    for addition in note.additions:
        if not _is_told(_name(note, addition), told):
            fields.setdefault(schema.node(addition.path).path, []).append(addition)
    wanted = [one for same in fields.values() for one in same]
    if not wanted:
        return [], []
    texts = "\n".join(line for same in fields.values() for line in _write_field(note, same))
    head = [] if HEAD in told else [HEAD]
    return [*write_comment("\n".join([*head, texts]), note.outer.column)], wanted


def _write_field(note: Note, same: list[Addition]) -> Iterator[str]:
    """What is asked of one field, and the keys of all members that lack it."""
    yield from (f"  {line}" for line in same[0].comment.splitlines())
    line = " "
    for place, addition in enumerate(same):
        name = _name(note, addition)
        if len(line) > _MOST:
            yield line
            line = " "
        line += f" {name}{':' if place == len(same) - 1 else ','}"
    yield line


def _name(note: Note, addition: Addition) -> str:
    return dotted_path(addition.path[len(note.outer.path) :])


def _comment_behind(lines: LineStarts, start: int) -> str:
    """The comment lines from here on, as one text."""
    found = []
    while start < len(lines.source) and lines.line(start).lstrip().startswith("#"):
        found.append(lines.line(start).strip())
        start = lines.behind(start)
    return "\n".join(found)


def _is_told(name: str, told: str) -> bool:
    return f" {name}," in told or f" {name}:" in told
