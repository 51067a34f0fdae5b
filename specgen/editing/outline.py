"""The outline of a YAML file: each mapping, list and value with the place of its text.

It is taken from the events of the loader. A composed tree gives an alias the place of its anchor, and a section the
place where the next one begins; here an alias stands where it is written, and a section ends with its last value.
"""

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from specgen.editing.line_starts import LineStarts
from specgen.reading.positions import Loader

# What may stand before a value: the name that others repeat it by, and its kind.
_BEFORE = re.compile(r"(?:[&!]\S*\s+)*")


@dataclass(slots=True)
class Spot:
    """A value and the span of its text, from behind an anchor on; `target` is what an alias repeats.

    A mapping has pairs of key and value, a list has items; `flow` is whether they stand in braces or brackets, `inner`
    the place right behind the opening one. `style` is the quote or block sign of a text.
    """

    kind: str  # text, mapping, list or alias
    start: int
    end: int
    column: int
    text: str = ""
    style: str = ""
    flow: bool = False
    inner: int = 0
    pairs: list[tuple["Spot", "Spot"]] = field(default_factory=list)
    items: list["Spot"] = field(default_factory=list)
    target: "Spot | None" = None
    named: dict[str, tuple["Spot", "Spot"]] = field(default_factory=dict)

    def followed(self) -> "Spot":
        """What stands here, behind an alias too."""
        return self.target.followed() if self.target is not None else self

    def child(self, name: str) -> "tuple[Spot, Spot] | None":
        """The own key and value of a name or index; an entry of a list stands for its key too."""
        if not self.named:
            self.named = {key.text: (key, value) for key, value in self.pairs if not is_merge(key)}
            self.named |= {str(place): (item, item) for place, item in enumerate(self.items)}
        return self.named.get(name)

    def merged(self) -> list["Spot"]:
        """The mappings that a merge key takes in."""
        values = [value.followed() for key, value in self.pairs if is_merge(key)][:1]
        return [one.followed() for value in values for one in (value.items if value.kind == "list" else [value])]


def is_merge(key: Spot) -> bool:
    """Whether a key takes in other mappings."""
    return key.text == "<<" and not key.style


def read_outline(source: str, lines: LineStarts) -> Spot:
    """The outline of a text that is known to be YAML with one mapping at its top."""
    loader = Loader(source)
    try:
        return _Builder(loader, source, lines).build()
    finally:
        loader.dispose()


class _Builder:
    def __init__(self, loader: Any, source: str, lines: LineStarts) -> None:
        self.loader, self.source, self.lines = loader, source, lines
        self.anchors: dict[str, Spot] = {}

    def build(self) -> Spot:
        event = self.loader.get_event()
        while not isinstance(event, yaml.NodeEvent):
            event = self.loader.get_event()
        return self.spot(event)

    def spot(self, event: Any) -> Spot:
        start, end, column = event.start_mark.index, event.end_mark.index, event.start_mark.column
        anchor: str = event.anchor or ""
        if isinstance(event, yaml.AliasEvent):
            return Spot("alias", start, end, column, anchor, target=self.anchors[anchor])
        if isinstance(event, yaml.ScalarEvent):
            spot = self.value(event, start, end, column)
        else:
            kind = "mapping" if isinstance(event, yaml.MappingStartEvent) else "list"
            spot = Spot(kind, start, end, column, flow=bool(event.flow_style), inner=end)
        if anchor:
            self.anchors[anchor] = spot
        if spot.kind != "text":
            self.fill(spot)
        return spot

    def value(self, event: Any, start: int, end: int, column: int) -> Spot:
        spot = Spot("text", start, end, column, event.value, event.style or "")
        if spot.style in ("|", ">"):
            spot.end = self.end_of_block(start, end)
        if not event.value and not spot.style:
            spot.start = end
        elif self.source[start] in "&!":
            found = _BEFORE.match(self.source, start, end)
            spot.start = found.end() if found else start
        return spot

    def fill(self, spot: Spot) -> None:
        event = self.loader.get_event()
        while not isinstance(event, yaml.CollectionEndEvent):
            child = self.spot(event)
            if spot.kind == "mapping":
                spot.pairs.append((child, self.spot(self.loader.get_event())))
            else:
                spot.items.append(child)
            event = self.loader.get_event()
        if spot.flow:
            spot.end = _end(event)
        else:
            self.settle(spot)

    def settle(self, spot: Spot) -> None:
        """Put the end of a section written in lines behind its last value, and its column to that of its keys."""
        first = spot.pairs[0][0] if spot.pairs else spot.items[0]
        sign = "?" if spot.pairs else "-"
        if self.source[spot.start] != sign:
            before = self.source[self.lines.start(first.start) : first.start].rstrip()
            spot.column = len(before) - 1 if before.endswith(sign) else first.column
        spot.end = (spot.pairs[-1][1] if spot.pairs else spot.items[-1]).end

    def end_of_block(self, start: int, end: int) -> int:
        """The end of the last line of a block of text; blank lines behind it belong to it where its head says so."""
        head = self.source[start:end].splitlines()[0].split("#")[0]
        return end if "+" in head else start + len(self.source[start:end].rstrip("\r\n"))


def _end(event: Any) -> int:
    return int(event.end_mark.index)
