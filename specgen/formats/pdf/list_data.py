"""Items that follow one another as nested lists for the page template."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from specgen.formats.pdf.line_data import describe_line
from specgen.model.block import Item

# A list of so many items stays whole with what is below it.
_FEW = 3


@dataclass
class _Entry:
    """An item with those below it; `data` is that of its own words."""

    data: dict[str, Any]
    below: list["_Entry"] = field(default_factory=list)


def describe_list(items: Sequence[Item], kept: Sequence[bool], changed: Sequence[bool]) -> Iterator[dict[str, Any]]:
    """The lists of a run of items; where the last stays with what is below the run, it is a list of its own."""
    top: list[_Entry] = []
    for item, keep, mark in zip(items, kept, changed, strict=True):
        data = {"number": item.number, "words": describe_line(item.content), "kept": keep, "changed": mark}
        _find_list(top, item.level).append(_Entry(data))
    cut = (len(top) - 1 if len(top) > _FEW else 0) if kept[-1] else len(top)
    for entries, keep in ((top[:cut], False), (top[cut:], True)):
        if entries:
            yield {"is": "list", "items": [_flatten(entry) for entry in entries], "kept": keep, "changed": False}


def _find_list(top: list[_Entry], level: int) -> list[_Entry]:
    """The list that an item of a level belongs to; one that begins deeper stands in an item without words."""
    entries = top
    for _ in range(level):
        if not entries:
            entries.append(_Entry({"number": "", "words": "", "kept": False, "changed": False}))
        entries = entries[-1].below
    return entries


def _flatten(entry: _Entry) -> dict[str, Any]:
    return entry.data | {"items": [_flatten(below) for below in entry.below]}
