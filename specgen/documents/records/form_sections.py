"""The forms of a document taken apart: each part with its blanks by name, to be filled as often as there are sheets."""

import dataclasses
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from specgen.model.block import Blank, Block, Break, CheckBox, Document, Part

# Stands before the name of a blank whose words a further sheet repeats.
AGAIN = "form.again."
# A numbered row of a form: `c3`.
_NUMBERED = re.compile(r"([a-z]+)(\d+)")


@dataclass(frozen=True)
class FormSection:
    """A form: its blocks without the breaks of pages, and what can be filled in.

    `letter` is that of its rows, `c` of `log.air.c3`; `blanks` are the names of its blanks, `boxes` the values that
    the boxes of a field offer.
    """

    letter: str
    blocks: tuple[Block, ...]
    blanks: frozenset[str]
    boxes: dict[str, tuple[str, ...]] = field(default_factory=dict)

    @cached_property
    def fields(self) -> frozenset[str]:
        """The fields that it holds: `log.air`."""
        return frozenset(".".join(name.split(".")[:2]) for name in (*self.blanks, *self.boxes))

    @cached_property
    def lines(self) -> int:
        """How many numbered lines it has; 0 where its rows have names."""
        rows = (name.split(".")[2] for name in self.blanks if name.startswith("log."))
        found = (_NUMBERED.fullmatch(row) for row in rows)
        return max((int(row[2]) for row in found if row), default=0)

    @cached_property
    def panels(self) -> int:
        """How many panels it has room for."""
        return sum(name.startswith(f"log.panels.{self.letter}.") for name in self.blanks)

    def has(self, name: str) -> bool:
        """Whether it has a blank or boxes of this name."""
        return name in self.blanks or name in self.boxes

    @property
    def title(self) -> str:
        """Its heading, as the first of its blocks tells it."""
        first = self.blocks[0]
        return "".join(getattr(part, "text", "") for part in first.title) if isinstance(first, Part) else ""


def split_forms(document: Document) -> tuple[FormSection, ...]:
    """The parts of a document that have blanks of a record, each a form of its own."""
    made = (_make_section(blocks) for blocks in _split(document.blocks))
    return tuple(section for section in made if section is not None)


def take_whole(document: Document) -> FormSection:
    """All of a document as one form, its breaks of pages kept."""
    blanks, boxes = _list_names(document.blocks)
    return FormSection("", document.blocks, blanks, boxes)


def _split(blocks: Iterable[Block]) -> Iterator[tuple[Block, ...]]:
    """The blocks below each heading of the first level, with it."""
    part: list[Block] = []
    for block in blocks:
        if isinstance(block, Part) and part:
            yield tuple(part)
            part = []
        if not isinstance(block, Break):
            part.append(block)
    yield tuple(part)


def _make_section(blocks: tuple[Block, ...]) -> FormSection | None:
    blanks, boxes = _list_names(blocks)
    of_records = [name.split(".") for name in (*blanks, *boxes) if not name.startswith("form.")]
    letters = sorted({parts[2][:1] for parts in of_records if len(parts) > 2})
    return FormSection(letters[0], blocks, blanks, boxes) if letters else None


def _list_names(blocks: Iterable[Block]) -> tuple[frozenset[str], dict[str, tuple[str, ...]]]:
    """The names of all blanks, and the values of the boxes of each field."""
    blanks, boxes = set[str](), dict[str, tuple[str, ...]]()
    for part in find_blanks(tuple(blocks)):
        if isinstance(part, Blank):
            blanks.add(part.name)
        else:
            boxes[part.field] = (*boxes.get(part.field, ()), part.value)
    return frozenset(blanks), boxes


def find_blanks(part: Any) -> Iterator[Blank | CheckBox]:
    """All blanks and boxes of blocks, in the order of the page."""
    if isinstance(part, (Blank, CheckBox)):
        yield part
    elif isinstance(part, tuple):
        for one in part:
            yield from find_blanks(one)
    elif dataclasses.is_dataclass(part) and not isinstance(part, type):
        for one in dataclasses.fields(part):
            yield from find_blanks(getattr(part, one.name))
