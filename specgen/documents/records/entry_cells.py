"""The places of a form that an entry takes: words by the name of their blank, ticks by the field of their boxes."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date

from specgen.documents.records.entry_text import tell_on_form, tell_plainly
from specgen.documents.records.form_sections import FormSection
from specgen.model.field import Field
from specgen.model.record import Entry
from specgen.model.value_text import long_date, words
from specgen.recording.entry_kinds import is_on_mockup

PANELS, MASKED, FILM = "panels", "masked_panels", "wet_film"
# Before the row of a coat: a wet film that was read on a pass over several panels, and of none of them.
OF_PASS = f"form.{FILM}."
Fields = Mapping[tuple[str, ...], Field]


@dataclass
class Cells:
    """What one entry puts on a sheet; `at` is the blank, or the field of boxes, of each field that found one."""

    texts: dict[str, str] = field(default_factory=dict)
    ticks: dict[str, tuple[str, ...]] = field(default_factory=dict)
    at: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Row:
    """A row of a form: where the fields of an entry have their blanks. `places` are those of panels, from 1."""

    section: FormSection
    name: str  # `a1`, `c12`, `d-primer`
    places: Mapping[str, int]
    fields: Fields
    system: str

    def find(self, collection: str, name: str) -> str:
        """The name of the blank or boxes of a field on the row, or in the head of the form; empty where it has none."""
        places = (f"{collection}.{name}.{at}" for at in (self.name, self.section.letter))
        return next((place for place in places if self.section.has(place)), "")

    @property
    def has_films(self) -> bool:
        """Whether the row has blanks for wet film, panel by panel."""
        return f"log.{FILM}.{self.name}.1" in self.section.blanks

    def set_entry(self, entry: Entry, names: Iterable[str]) -> Cells:
        """The places of some fields of an entry."""
        cells, wanted = Cells(), tuple(names)
        for name in wanted:
            if name in (PANELS, MASKED):
                self._set_panels(cells, entry, name)
            elif name == FILM:
                self._set_film(cells, entry)
            else:
                self._set_value(cells, entry, name)
        if is_on_mockup(entry):
            cells.ticks[f"form.mockup.{self.section.letter}"] = ("yes",)
        if "step" in wanted and "step" not in cells.at:
            self._tell_step(cells, entry)
        if "started_at" in wanted and "started_at" not in cells.at and "pail" in cells.at:
            cells.at["started_at"] = cells.at["pail"]
            cells.texts[cells.at["pail"]] += f", {tell_on_form(entry.values['started_at'], None, self.system)}"
        return cells

    def _set_value(self, cells: Cells, entry: Entry, name: str) -> None:
        place, value = self.find(entry.collection, name), entry.values[name]
        if not place:
            return
        if place in self.section.boxes:
            cells.ticks[place] = (value if isinstance(value, str) else "yes" if value else "no",)
        elif isinstance(value, date) and place.endswith(f".{self.section.letter}"):
            cells.texts[place] = long_date(value)
        else:
            cells.texts[place] = tell_on_form(value, self.fields.get((entry.collection, name)), self.system)
        cells.at[name] = place

    def _set_panels(self, cells: Cells, entry: Entry, name: str) -> None:
        """Each panel at its place, and the tick of one that was masked."""
        letter, places = self.section.letter, [(panel, self.places[panel]) for panel in entry.values[name]]
        cells.texts |= {f"log.{PANELS}.{letter}.{place}": panel for panel, place in places}
        boxes = f"log.{MASKED}.{letter}"
        if name == MASKED:
            cells.ticks[boxes] = tuple(str(place) for _, place in places)
        cells.at[name] = boxes if name == MASKED else f"log.{PANELS}.{letter}.{places[0][1] if places else 1}"

    def _set_film(self, cells: Cells, entry: Entry) -> None:
        """A reading of wet film stands at the panel of its entry; of a pass over several it is told in the remarks."""
        panels = list(entry.get(PANELS) or ())
        name = f"log.{FILM}.{self.name}.{self.places[panels[0]]}" if len(panels) == 1 else f"{OF_PASS}{self.name}"
        if name in self.section.blanks or (name.startswith(OF_PASS) and self.has_films):
            field, value = self.fields.get(("log", FILM)), entry.values[FILM]
            alone = name in self.section.blanks
            cells.texts[name] = tell_on_form(value, field, self.system) if alone else tell_plainly(value, field)
            cells.at[FILM] = name

    def _tell_step(self, cells: Cells, entry: Entry) -> None:
        """The step of a release is its row; on a form without a place for it, it stands before the area."""
        if entry.collection == "release":
            rows = (name.rpartition(".")[2] for name in (*self.section.blanks, *self.section.boxes))
            if self.name in rows:
                cells.at["step"] = f"release.date.{self.name}"
            return
        place = self.find("log", "area")
        if place:
            told = ", ".join(filter(None, (words(entry.values["step"]), entry.get("area"))))
            cells.texts[place], cells.at["step"] = told, place
