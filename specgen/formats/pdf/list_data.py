"""Items that follow one another as nested lists for the page template."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from specgen.formats.keeping import NOTES
from specgen.formats.pdf.line_data import describe_line
from specgen.model.block import Item


@dataclass
class _Entry:
    """An item with those below it; `data` is that of its own words."""

    data: dict[str, Any]
    below: list["_Entry"] = field(default_factory=list)


def describe_list(items: Sequence[Item], kept: Sequence[bool], changed: Sequence[bool]) -> Iterator[dict[str, Any]]:
    """The lists of a run of items; where its end stays with what is below a long run, that is a list of its own."""
    marked = list(zip(items, kept, changed, strict=True))
    cut = len(marked) - _count_last(items) if kept[-1] else len(marked)
    for part, keep in ((marked[:cut], False), (marked[cut:], True)):
        if part:
            top: list[_Entry] = []
            for item, stays, mark in part:
                data = {"number": item.number, "words": describe_line(item.content), "kept": stays, "changed": mark}
                _find_list(top, item.level).append(_Entry(data))
            yield {"is": "list", "items": [_flatten(entry) for entry in top], "kept": keep, "changed": False}


def _count_last(items: Sequence[Item]) -> int:
    """How many items at the end stay together with what is below them: all of a few, else the last of a level."""
    if len(items) <= NOTES:
        return len(items)
    return 2 if items[-1].level == items[-2].level else 1


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
