"""A value as a document prints it, with the source it comes from."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import zip_longest
from typing import Any

from specgen.model.project import View
from specgen.model.source import Source
from specgen.model.value_text import sort_members


class Record:
    """What templates read field by field, such as a step of the work; it is never printed as a whole."""


_UNIT_WORDS = {"%": "%", "deg": "°", "d": " days", "year": " years", "month": " months"}


@dataclass(frozen=True, slots=True)
class DisplayValue:
    """A value as a document prints it; it compares and behaves like the value itself.

    `open` is a value still to be given: it prints its label in brackets and is equal to nothing; `asks` is the dotted
    path of the field it waits for. `row` is the row of the limits that it is of, `entries` those of a list in words.
    """

    text: str
    raw: Any = None
    source: Source | None = None
    open: bool = False
    about: str = ""
    asks: str = ""
    row: str = ""
    entries: tuple[str, ...] = ()

    def __str__(self) -> str:
        return self.text

    def __bool__(self) -> bool:
        return not self.open and bool(self.raw)

    def __eq__(self, other: object) -> bool:
        return not self.open and self.raw == (other.raw if isinstance(other, DisplayValue) else other)

    def __hash__(self) -> int:
        return hash(self.text)

    def __contains__(self, word: object) -> bool:
        return not self.open and word in self.raw

    def __iter__(self) -> Iterator[Any]:
        if self.open or not isinstance(self.raw, tuple):
            return
        for word, raw in zip_longest(self.entries, self.raw):
            yield raw if word is None else DisplayValue(word, raw)


# What stands for the entries of a list that is given and holds none: nothing can be named by it.
NO_ENTRIES = DisplayValue("none", open=True)


def count_things(number: DisplayValue, one: str, many: str) -> list[Any]:
    """A number with its noun, singular or plural: `1 coat`, `2 coats`."""
    return [number, f" {one if number == 1 else many}"]


def with_unit(text: str, unit: str) -> str:
    """`24 h`, `8%`, `20°`, `1 day`; no unit leaves the text as it is."""
    said = _UNIT_WORDS.get(unit) or (f" {unit}" if unit else "")
    return text + (said.removesuffix("s") if text == "1" and unit in _UNIT_WORDS else said)


def raw_value(value: Any) -> Any:
    """A value as a template compares it: yes and no as words, members by their mark."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, View):
        return value.mark
    if isinstance(value, tuple):
        return tuple(raw_value(entry) for entry in sort_members(value))
    return value


def take_stricter(least: bool, *values: DisplayValue) -> DisplayValue:
    """The strictest of the figures that are given; the first where none is."""
    given = [value for value in values if not value.open and value.raw is not None]
    return (max if least else min)(given, key=lambda value: value.raw) if given else values[0]
