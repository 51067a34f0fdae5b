"""A sheet that is being filled: an entry goes on it where none of its places holds another value."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from specgen.documents.records.entry_cells import MASKED, OF_PASS, PANELS, Cells, Fields, Row
from specgen.documents.records.filling import Entered
from specgen.documents.records.form_sections import FormSection
from specgen.documents.records.placing import COAT, KEYS, ON_EACH
from specgen.model.record import Entry

# The numbers of the nonconformances of an entry, by collection and number, at each of its fields.
Marks = Mapping[tuple[str, int], Mapping[str, tuple[int, ...]]]


@dataclass
class SheetDraft:
    """One sheet of a form with its entries; `key` tells the day and place that it is for."""

    section: FormSection
    key: tuple[Any, ...]
    fields: Fields
    system: str
    entered: Entered = field(default_factory=Entered)
    entries: list[Entry] = field(default_factory=list)
    places: dict[str, int] = field(default_factory=dict)  # of panels, from 1
    lines: int = 0

    def add(self, entry: Entry, names: Iterable[str], marks: Marks) -> frozenset[str] | None:
        """Put fields of an entry on the sheet; those that the form has no place for, None where it has no room."""
        wanted = tuple(names)
        places = self._find_places(entry, wanted)
        for row in self._list_rows(entry, places) if places is not None else ():
            cells = row.set_entry(entry, wanted)
            if not self._clashes(cells):
                self._take(entry, cells, row, marks)
                told = {COAT} if row.name == f"{self.section.letter}{entry.get(COAT)}" else set[str]()
                return frozenset(wanted) - cells.at.keys() - told
        return None

    def count_shared(self, entry: Entry) -> int:
        """How many panels of an entry are on the sheet already."""
        return len(self.places.keys() & set(entry.get(PANELS) or ()))

    def tell_films(self) -> None:
        """Put wet film that was read on no panel alone into the remarks of the sheet."""
        told = {name: said for name, said in self.entered.texts.items() if name.startswith(OF_PASS)}
        place = f"form.remarks.{self.section.letter}"
        coats = (f"coat {name.removeprefix(f'{OF_PASS}{self.section.letter}')}, {said}" for name, said in told.items())
        if told:
            self.entered.texts[place] = f"Wet film, panel not told: {'; '.join(coats)}"
        numbers = [number for name in told for number in self.entered.outside.pop(name, ())]
        if numbers:
            self.entered.outside[place] = tuple(dict.fromkeys(numbers))

    def _list_rows(self, entry: Entry, places: Mapping[str, int]) -> Iterator[Row]:
        """The rows that an entry may stand on: that of its step or coat, else the next of a list."""
        letter, last = self.section.letter, self.section.lines
        if entry.collection == "release":
            names = [f"{letter}-{entry.get('step')}"]
        elif not self.section.panels:
            names = [f"{letter}{self.lines + 1}"] if self.lines < last else []
        else:
            coat = entry.get(COAT)
            names = [f"{letter}{coat}"] if coat and coat <= last else [f"{letter}{n}" for n in range(1, last + 1)]
        yield from (Row(self.section, name, places, self.fields, self.system) for name in names)

    def _find_places(self, entry: Entry, names: tuple[str, ...]) -> dict[str, int] | None:
        """The places of panels with those of the entry; None where there are more than the form has room for."""
        places = dict(self.places)
        for panel in list_panels(entry, names):
            places.setdefault(panel, len(places) + 1)
        return places if len(places) <= self.section.panels or not places else None

    def _clashes(self, cells: Cells) -> bool:
        """Whether a place holds another value already; panels that were masked add up."""
        texts, ticks = self.entered.texts, self.entered.ticks
        return any(texts.get(name, said) != said for name, said in cells.texts.items()) or any(
            ticks.get(name, said) != said for name, said in cells.ticks.items() if not _adds_up(name)
        )

    def _take(self, entry: Entry, cells: Cells, row: Row, marks: Marks) -> None:
        self.places = dict(row.places)
        self.entered.texts |= cells.texts
        for name, said in cells.ticks.items():
            self.entered.ticks[name] = tuple(dict.fromkeys((*self.entered.ticks.get(name, ()), *said)))
        for name, numbers in marks.get((entry.collection, entry.number), {}).items():
            place = cells.at.get(name) or row.find(entry.collection, name)
            if place:
                before = self.entered.outside.get(place, ())
                self.entered.outside[place] = tuple(dict.fromkeys((*before, *numbers)))
        self.entries.append(entry)
        self.lines += not self.section.panels


def list_panels(entry: Entry, names: Iterable[str]) -> list[str]:
    """The panels that an entry names, each once: those sprayed, then others that were masked."""
    return list(dict.fromkeys(panel for name in (PANELS, MASKED) if name in names for panel in entry.get(name) or ()))


def split_panels(entry: Entry, names: tuple[str, ...], room: int) -> Iterator[tuple[Entry, tuple[str, ...]]]:
    """An entry for each sheet that its panels take, with its fields there; what tells of the whole pass is on each."""
    panels = list_panels(entry, names)
    if len(panels) <= room or not room:
        yield entry, names
        return
    for first in range(0, len(panels), room):
        here = set(panels[first : first + room])
        part = {name: [p for p in entry.values[name] if p in here] for name in (PANELS, MASKED) if name in names}
        kept = names if not first else tuple(name for name in names if name in (*KEYS, *ON_EACH) or part.get(name))
        yield replace(entry, values={**entry.values, **part}), kept


def _adds_up(name: str) -> bool:
    return name.startswith(f"log.{MASKED}.")
