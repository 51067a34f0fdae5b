"""Form D10 filled: the results of the mockup on its lines, the settings accepted, and who signed which line when."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property

from specgen.documents.catalogue import Template
from specgen.documents.context import DocumentContext
from specgen.documents.document import compose_document
from specgen.documents.records.entry_text import name_criterion, name_line, split_readings, tell_on_form
from specgen.documents.records.filling import OUTSIDE, Entered, fill_blocks
from specgen.documents.records.form_sections import FormSection, find_blanks, take_whole
from specgen.documents.records.other_entries import list_rest
from specgen.documents.records.sheet_draft import Marks
from specgen.documents.records.sheets_of_record import Remainder, mark_entries
from specgen.model.block import Block, Document, Part, Table, Text
from specgen.model.project import View
from specgen.model.record import Entry
from specgen.model.record_judgment import RecordJudgment
from specgen.model.value_text import long_date

_READING, _PASSED, _SIGNED = "result.reading.", "result.passed.", "result.signed_by."
_NAMES = ("criterion", "own", "reading", "passed")
# Behind the name of a line the letter of its coat or angle.
_PART = re.compile(r"-[a-z]$")


def compose_mockup_record(form: Template, context: DocumentContext, judgment: RecordJudgment) -> tuple[Document, ...]:
    """The filled form of each viewing; none where neither results nor accepted settings are recorded."""
    results = context.project.records.of("result")
    settings = _list_settings(context)
    if not results and not settings:
        return ()
    blank = compose_document(form, context, draft=False)
    marks = mark_entries(judgment.nonconformances)
    viewings = _list_viewings(results) or [[]]
    return tuple(
        _fill_viewing(_Viewing(blank, context, marks, settings if number == len(viewings) else {}), number, entries)
        for number, entries in enumerate(viewings, 1)
    )


def _list_viewings(results: Iterable[Entry]) -> list[list[Entry]]:
    """The results of each viewing: those of a line that were signed on a later day belong to the next one."""
    days: dict[str, list[date | None]] = {}
    viewings: list[list[Entry]] = []
    for entry in results:
        of_line = days.setdefault(name_line(entry), [])
        if entry.get("signed_on") not in of_line:
            of_line.append(entry.get("signed_on"))
        number = of_line.index(entry.get("signed_on"))
        while len(viewings) <= number:
            viewings.append([])
        viewings[number].append(entry)
    return viewings


def _list_settings(context: DocumentContext) -> dict[str, str]:
    """The accepted settings by the name of their blank."""
    node = context.project.schema.root.children["accepted"]
    told = {}
    for name, child in node.children.items():
        value = context.project.get(("accepted", name))
        if value is not None and child.field is not None:
            said = value.mark if isinstance(value, View) else tell_on_form(value, child.field, context.first)
            told[f"accepted.{name}"] = said
    return told


@dataclass
class _Viewing:
    """What one form is filled with."""

    blank: Document
    context: DocumentContext
    marks: Marks
    settings: dict[str, str]
    entered: Entered = field(default_factory=Entered)
    rest: list[Remainder] = field(default_factory=list)

    @cached_property
    def section(self) -> FormSection:
        """All of the form."""
        return take_whole(self.blank)

    @cached_property
    def slots(self) -> dict[str, list[str]]:
        """The blanks for readings of each criterion, in the order of the form."""
        found: dict[str, list[str]] = {}
        for name in (part.name for part in find_blanks(self.blank.blocks)):
            if name.startswith(_READING):
                found.setdefault(_PART.sub("", name.split(".")[2]), []).append(name)
        return found

    def fill_line(self, criterion: str, entries: list[Entry]) -> None:
        """Put the entries of a criterion on its line, those that were read from a form on the row of theirs."""
        of_row: dict[str, list[Entry]] = {}
        rows = {slot.split(".")[2] for slot in self.slots.get(criterion, [])}
        for entry in entries:
            of_row.setdefault(entry.place.row if entry.place.row in rows else "", []).append(entry)
        for row, found in of_row.items():
            self._fill_row(criterion, row, found)

    def _fill_row(self, criterion: str, row: str, entries: list[Entry]) -> None:
        read = [(entry, text) for entry in entries for text in split_readings(entry)]
        slots = self._choose_slots(criterion, row, len(read))
        if not slots:
            self.rest += [Remainder(entry, _list_unsigned(entry)) for entry in entries]
            return
        for slot, (entry, text) in zip(slots, read, strict=False):
            self.entered.texts[slot] = text
            self._mark(entry, "reading", slot)
        for name in dict.fromkeys(slot.split(".")[2] for slot in slots):
            self._judge(name, entries)

    def _choose_slots(self, criterion: str, row: str, readings: int) -> list[str]:
        """The blanks for so many readings of a criterion; none where there are too few, or their row is not told.

        Where coats or angles have rows of their own, only a full set of readings is taken for being in their order.
        """
        slots = self.slots.get(criterion, [])
        of_row = [slot for slot in slots if slot.split(".")[2] == (row or criterion)]
        if of_row and readings <= len(of_row):
            return of_row
        return slots if slots and not row and readings == len(slots) else []

    def _judge(self, row: str, entries: list[Entry]) -> None:
        """Tick pass or fail, which one failed reading decides, and put the initials of who signed."""
        passed = [entry.values["passed"] for entry in entries if "passed" in entry.values]
        if passed:
            self.entered.ticks[f"{_PASSED}{row}"] = ("yes" if all(passed) else "no",)
        signers = dict.fromkeys(
            _initials(entry.values["signed_by"]) for entry in entries if "signed_by" in entry.values
        )
        if signers:
            self.entered.texts[f"{_SIGNED}{row}"] = ", ".join(signers)
        for entry in entries:
            self._mark(entry, "passed", f"{_PASSED}{row}")
            self._mark(entry, "signed_by", f"{_SIGNED}{row}")
            self._mark(entry, "signed_on", f"{_SIGNED}{row}")

    def _mark(self, entry: Entry, name: str, place: str) -> None:
        numbers = self.marks.get((entry.collection, entry.number), {}).get(name, ())
        if numbers:
            self.entered.outside[place] = tuple(dict.fromkeys((*self.entered.outside.get(place, ()), *numbers)))


def _fill_viewing(viewing: _Viewing, number: int, entries: list[Entry]) -> Document:
    """The form of one viewing as a document."""
    lines: dict[str, list[Entry]] = {}
    for entry in entries:
        lines.setdefault(name_line(entry), []).append(entry)
    for criterion, of_line in lines.items():
        viewing.fill_line(criterion, of_line)
    viewing.entered.texts |= viewing.settings
    blank, ident = viewing.blank, f"{viewing.blank.id}-record{'' if number == 1 else f'-{number}'}"
    blocks: tuple[Block, ...] = (
        *fill_blocks(viewing.section, viewing.entered),
        *_list_signed(viewing.context, entries),
        *list_rest(viewing.context, viewing.rest, viewing.marks),
    )
    left, right = blank.running
    return replace(
        blank,
        id=ident,
        facts=(*blank.facts, ("Viewing", str(number))),
        blocks=blocks,
        legend=(*blank.legend, (OUTSIDE, "Outside its limit; number of the nonconformance in D21")),
        running=(left, right.replace(blank.id, ident, 1)),
        digests=(),
        used_for="Read what was found and accepted on the mockup",
    )


def _list_signed(context: DocumentContext, entries: Iterable[Entry]) -> Iterator[Block]:
    """Who signed which lines on which day."""
    signed: dict[tuple[str, date | None], list[str]] = {}
    for entry in entries:
        if "signed_by" in entry.values or "signed_on" in entry.values:
            key = (str(entry.get("signed_by") or ""), entry.get("signed_on"))
            signed.setdefault(key, []).append(name_criterion(context, entry))
    if signed:
        yield Part((Text("Results as signed"),))
        rows = tuple(
            (
                (Text(f"{name} ({_initials(name)})" if name else "not recorded"),),
                (Text(long_date(day) if day else "not recorded"),),
                (Text("; ".join(dict.fromkeys(titles))),),
            )
            for (name, day), titles in signed.items()
        )
        yield Table(((Text("Signed by"),), (Text("Date"),), (Text("Criteria"),)), rows, (24, 18, 58))


def _list_unsigned(entry: Entry) -> tuple[str, ...]:
    """The fields of a result that the table of those who signed does not tell."""
    return tuple(name for name in _NAMES if name in entry.values)


def _initials(name: str) -> str:
    """`LN` of L. Novak, Lintel Architects."""
    person = name.partition(",")[0].replace(".", " ").split()
    return "".join(part[0] for part in person if part[0].isalpha()).upper() or name
