"""The sheets of a site record: each entry on the forms that have places for it, in the order of the days."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any, NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.records.dew import tell_dew_point
from specgen.documents.records.filling import Entered
from specgen.documents.records.form_sections import FormSection
from specgen.documents.records.placing import Forms
from specgen.documents.records.sheet_draft import Marks, SheetDraft, split_panels
from specgen.model.record import Entry
from specgen.model.record_judgment import Nonconformance
from specgen.model.value_text import long_date, words

# So many sheets of one day and place are looked at for room.
_OPEN_SHEETS = 4
_TITLES = ("elevation", "area", "step", "date")


class FilledSheet(NamedTuple):
    """A sheet as it was filled; `title` tells its day and place."""

    section: FormSection
    entered: Entered
    title: str
    elevation: str  # its mark; empty where none is told
    goes_on: bool  # whether it goes on behind another of the same day and place


class Remainder(NamedTuple):
    """The fields of an entry that no form has a place for, and why where it is one of a kind that forms have."""

    entry: Entry
    names: tuple[str, ...]
    why: str = ""


@dataclass
class SheetWriter:
    """Puts entries on sheets; what has no place on a form is kept in `rest`."""

    context: DocumentContext
    forms: tuple[Forms, ...]
    marks: Marks
    drafts: dict[tuple[Any, ...], list[SheetDraft]] = field(default_factory=dict)
    rest: list[Remainder] = field(default_factory=list)

    def add_all(self, entries: Iterable[Entry]) -> None:
        """Put entries on their sheets, in the order in which they were read."""
        for entry in entries:
            held = set[str]()
            for forms in self.forms:
                for letter, names in forms.divide(entry).items() if forms.collection == entry.collection else ():
                    held |= self._place(entry, forms.sections[letter], names)
            left = tuple(name for name in entry.values if name not in held)
            if left:
                self.rest.append(Remainder(entry, left))

    def _place(self, entry: Entry, section: FormSection, names: tuple[str, ...]) -> set[str]:
        """Put an entry on a form; the fields that found a place."""
        held = set[str]()
        for part, wanted in split_panels(entry, names, section.panels):
            key = (section.letter, *(part.get(name) for name in _list_head(section, part.collection)))
            drafts = self.drafts.setdefault(key, [])
            open_ones = sorted(drafts[-_OPEN_SHEETS:], key=lambda draft: -draft.count_shared(part))
            left = next(
                (left for draft in open_ones if (left := draft.add(part, wanted, self.marks)) is not None), None
            )
            if left is None:
                fields = self.context.project.schema.fields
                drafts.append(SheetDraft(section, key, fields, self.context.first))
                left = drafts[-1].add(part, wanted, self.marks)
            held |= set(wanted) - (left if left is not None else set(wanted))
        return held

    def list_sheets(self) -> list[FilledSheet]:
        """All sheets: those of a day together, in the order of the forms; those of an area for all days at the end."""
        listed = []
        for drafts in self.drafts.values():
            for number, draft in enumerate(drafts, 1):
                self._add_dew_points(draft)
                draft.tell_films()
                told = _tell_head(draft) + (f", sheet {number} of {len(drafts)}" if len(drafts) > 1 else "")
                elevation = str(draft.entries[0].get("elevation") or "")
                listed.append(
                    (
                        (*_order(drafts[0]), number),
                        FilledSheet(draft.section, draft.entered, told, elevation, number > 1),
                    )
                )
        return [sheet for _, sheet in sorted(listed, key=lambda pair: pair[0])]

    def _add_dew_points(self, draft: SheetDraft) -> None:
        """Work out the dew point of each line of weather."""
        for number, entry in enumerate(draft.entries, 1):
            name = f"form.dew_point.{draft.section.letter}{number}"
            if name in draft.section.blanks and {"air", "humidity"} <= entry.values.keys():
                said = tell_dew_point(entry.values["air"], entry.values["humidity"], self.context.first)
                draft.entered.texts |= {name: said} if said else {}


def mark_entries(nonconformances: Iterable[Nonconformance]) -> Marks:
    """The numbers of the nonconformances at each field of each entry."""
    marks: dict[tuple[str, int], dict[str, tuple[int, ...]]] = {}
    for one in nonconformances:
        fields = marks.setdefault((one.entry.collection, one.entry.number), {})
        fields[one.field] = (*fields.get(one.field, ()), one.number)
    return marks


def _list_head(section: FormSection, collection: str) -> tuple[str, ...]:
    """What the head of a form tells of its sheet."""
    return tuple(name for name in _TITLES if section.has(f"{collection}.{name}.{section.letter}"))


def _tell_head(draft: SheetDraft) -> str:
    """`E1, left bay, gloss, April 5, 2027`."""
    told = []
    for value in draft.key[1:]:
        if value is not None:
            told.append(long_date(value) if isinstance(value, date) else words(str(value)))
    return ", ".join(told)


def _order(draft: SheetDraft) -> tuple[Any, ...]:
    first = draft.entries[0]
    day = next((value for value in draft.key[1:] if isinstance(value, date)), date.max)
    return day, draft.section.letter, first.number


def group_by_face(sheets: Iterable[FilledSheet], faces: Iterable[str]) -> Mapping[str, list[FilledSheet]]:
    """The sheets of each elevation in the order of the project, at the end those that tell none."""
    grouped: dict[str, list[FilledSheet]] = {face: [] for face in (*faces, "")}
    for sheet in sheets:
        grouped.setdefault(sheet.elevation, []).append(sheet)
    return {face: found for face, found in grouped.items() if found}
