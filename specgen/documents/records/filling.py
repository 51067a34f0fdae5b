"""Fills the blanks of a form: the tree of a sheet with what was recorded in its places.

What was not recorded stays a blank to write on. It has no name any more, as many sheets stand in one document.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from specgen.documents.records.form_sections import AGAIN, FormSection, find_blanks
from specgen.model.block import Blank, Block, CheckBox, Inline, Inlines, Item, Paragraph, Part, Strong, Table, Text
from specgen.model.value_text import words

# Stands before the number of a nonconformance, behind the value that is outside its limit: a form, and no color.
OUTSIDE = "▲"
_NO = "no"
# A line of a list of a form: `c3`.
_LINE = re.compile(r"[a-z]\d+")
_PANELS = "log.panels."  # and of the panels of a spray record, which have names of their own


@dataclass
class Entered:
    """What stands on one sheet: words by the name of their blank, ticks by the field of their boxes.

    `outside` are the numbers of the nonconformances at a blank or a field of boxes.
    """

    texts: dict[str, str] = field(default_factory=dict)
    ticks: dict[str, tuple[str, ...]] = field(default_factory=dict)
    outside: dict[str, tuple[int, ...]] = field(default_factory=dict)


def fill_blocks(
    section: FormSection, entered: Entered, title: str = "", run: int = 0, goes_on: bool = False
) -> Iterator[Block]:
    """The blocks of a form, filled; `title` stands behind its heading, its numbered items start over at list `run`.

    Of a sheet that goes on behind another, a table prints only where something stands in it.
    """
    filler = _Filler(section, entered)
    for place, block in enumerate(section.blocks):
        if isinstance(block, Part) and not place and title:
            yield replace(block, title=(*block.title, Text(f": {title}")))
        elif isinstance(block, Table) and goes_on and not filler.is_filled(block):
            continue
        elif isinstance(block, Table):
            rows = (row for row in block.rows if filler.is_wanted(row))
            yield replace(block, rows=tuple(tuple(map(filler.fill, row)) for row in rows))
        elif isinstance(block, Item):
            yield replace(block, content=filler.fill(block.content), run=block.run + run)
        elif isinstance(block, Paragraph):
            yield replace(block, content=filler.fill(block.content))
        else:
            yield block


def mark_outside(numbers: tuple[int, ...]) -> Inline:
    """The sign of a value outside its limit, with the numbers of its nonconformances: `▲ 3, 4`."""
    return Strong((Text(f" {OUTSIDE}\u00a0{', '.join(map(str, numbers))}"),))


@dataclass(frozen=True)
class _Filler:
    section: FormSection
    entered: Entered

    def is_filled(self, table: Table) -> bool:
        """Whether something stands in a blank or box of a table, or it has none."""
        parts = list(find_blanks(table))
        names = [part.name if isinstance(part, Blank) else part.field for part in parts]
        return not parts or any(name in self.entered.texts or name in self.entered.ticks for name in names)

    def is_wanted(self, row: tuple[Inlines, ...]) -> bool:
        """Whether a row prints: a line of a list, such as of a pail or of panels, only where something stands on it."""
        places = [part.name if isinstance(part, Blank) else part.field for part in find_blanks(row)]
        lines = {place.split(".")[2] for place in places if place.count(".") > 1}
        listed = any(map(_LINE.fullmatch, lines)) and not self.section.panels
        panels = [place for place in places if place.startswith(_PANELS)]
        if panels:  # their boxes are of one field in all lines
            return any(place in self.entered.texts for place in panels)
        if not listed:
            return True
        return any(place in self.entered.texts or place in self.entered.ticks for place in places)

    def fill(self, content: Inlines) -> Inlines:
        """The content of a cell or a line, filled."""
        if not any(isinstance(part, (Blank, CheckBox)) for part in content):
            return content
        last = {part.field: place for place, part in enumerate(content) if isinstance(part, CheckBox)}
        return tuple(self._fill(content, last))

    def _fill(self, content: Inlines, last: dict[str, int]) -> Iterator[Inline]:
        for place, part in enumerate(content):
            if isinstance(part, Blank):
                yield from self._fill_blank(part)
            elif isinstance(part, CheckBox) and self._is_denied(part):
                yield Text(_NO if part.label == part.value else f"({_NO}) {part.label}")
                yield from self._tell_numbers(part.field)
            elif isinstance(part, CheckBox):
                ticked = part.value in self.entered.ticks.get(part.field, ())
                yield replace(part, field="", value="", ticked=ticked)
                if last[part.field] == place:
                    yield from self._tell_other(part.field)
            else:
                yield part

    def _is_denied(self, box: CheckBox) -> bool:
        """Whether a plain no answers a box that is the only one of its field: `(no) rain` stands in its place."""
        alone = self.section.boxes.get(box.field) == (box.value,)
        return alone and self.entered.ticks.get(box.field) == (_NO,)

    def _fill_blank(self, blank: Blank) -> Iterator[Inline]:
        numbers = self.entered.outside.get(blank.name, ())
        text = self._repeat(blank.name) if blank.name.startswith(AGAIN) else self.entered.texts.get(blank.name)
        told: Inline = replace(blank, field="") if text is None else Text(text)
        yield Strong((told,)) if numbers and text is not None else told
        if numbers:
            yield mark_outside(numbers)

    def _repeat(self, name: str) -> str | None:
        """What stands on the first sheet at a blank of a further one."""
        first = name.removeprefix(AGAIN)
        return self.entered.texts.get(first) or ", ".join(map(words, self.entered.ticks.get(first, ()))) or None

    def _tell_other(self, name: str) -> Iterator[Inline]:
        """What was chosen that no box offers, such as a plain no; then whether it is outside its limit."""
        offered = self.section.boxes.get(name, ())
        other = [words(value) for value in self.entered.ticks.get(name, ()) if value not in offered]
        if other:
            yield Text(f": {', '.join(other)}")
        yield from self._tell_numbers(name)

    def _tell_numbers(self, name: str) -> Iterator[Inline]:
        if name in self.entered.outside:
            yield mark_outside(self.entered.outside[name])
