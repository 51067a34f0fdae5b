"""What `check` tells of a side file by itself: what it is, what it gives, and what is still open in it."""

from collections.abc import Iterator, Sequence

from specgen.model.field import dotted_path
from specgen.model.finding import OpenItem
from specgen.model.value_text import count, words
from specgen.reading.side_file import SideFile
from specgen.terminal.next_command import quote

_NAMED_IN = {"firm": "firm: {0}", "coating_system": "coating_system: {0}", "record": "records: [{0}]"}


def format_side_file(side: SideFile, open_items: Sequence[OpenItem], named_by: Sequence[str]) -> str:
    """A side file without faults in a line, then what is open, which marks a project must have, and who names it."""
    given = count(len(side.given.values), "field")
    head = f"{side.name}: a {words(side.home)} file; no faults; {given} given, {len(open_items)} open"
    return "\n".join([head, *_list_open(open_items), *_list_sought(side), "", _tell_next(side, named_by)]) + "\n"


def _list_open(open_items: Sequence[OpenItem]) -> Iterator[str]:
    if open_items:
        yield ""
        yield f"Open items ({len(open_items)}):"
    for item in open_items:
        yield f"  {item.path}: {item.label} ({words(item.owed_by)})"


def _list_sought(side: SideFile) -> Iterator[str]:
    if side.sought:
        yield ""
        yield f"Looked up in the files of a project ({len(side.sought)}):"
    for path, mark in side.sought.items():
        yield f"  {dotted_path(path)}: {mark}"


def _tell_next(side: SideFile, named_by: Sequence[str]) -> str:
    if named_by:
        return f"Named by {', '.join(named_by)}. Next: specgen check {quote(named_by[0])}"
    line = _NAMED_IN[side.home].format(side.name)
    return f"No project file beside it names it. Next: write `{line}` in one, then check that."
