"""Form D10 filled: the results of the mockup on its lines, the settings accepted, and who signed which line when."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property

from specgen.documents.catalogue import Template
from specgen.documents.context import DocumentContext
from specgen.documents.document import compose_document
from specgen.documents.records.entry_text import name_criterion, tell_on_form
from specgen.documents.records.filling import OUTSIDE, Entered, fill_blocks
from specgen.documents.records.form_sections import FormSection, take_whole
from specgen.documents.records.other_entries import list_rest
from specgen.documents.records.reading_figures import tell_mean
from specgen.documents.records.sheet_draft import Marks
from specgen.documents.records.sheets_of_record import Remainder, mark_entries
from specgen.documents.views.criteria import DONE, MEAN
from specgen.model.block import Block, Document, Part, Table, Text
from specgen.model.project import View
from specgen.model.record import Entry
from specgen.model.record_judgment import RecordJudgment
from specgen.model.value_text import long_date
from specgen.recording.mockup_results import PartResults, Viewing, view_results

_READING, _PASSED, _SIGNED = "result.reading.", "result.passed.", "result.signed_by."
_NAMES = ("criterion", "own", "part", "reading", "passed")
_JOINED = "; "
# A box has room for so many signs; longer readings stand below the form.
_ROOM, _BELOW = 8, "*"


def compose_mockup_record(form: Template, context: DocumentContext, judgment: RecordJudgment) -> tuple[Document, ...]:
    """The filled form of each viewing; none where neither results nor accepted settings are recorded."""
    results = context.project.records.of("result")
    settings = _list_settings(context)
    if not results and not settings:
        return ()
    blank = compose_document(form, context, draft=False)
    marks = mark_entries(judgment.nonconformances)
    viewings = view_results(context.project, context.standards) or (Viewing(),)
    fillings = [_Filling(blank, context, marks) for _ in viewings]
    fillings[-1].entered.texts |= settings
    fillings[-1].accept()
    return tuple(
        _fill_viewing(filling, number, viewing)
        for number, (filling, viewing) in enumerate(zip(fillings, viewings, strict=True), 1)
    )


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
class _Filling:
    """What one form is filled with."""

    blank: Document
    context: DocumentContext
    marks: Marks
    entered: Entered = field(default_factory=Entered)
    rest: list[Remainder] = field(default_factory=list)
    worded: list[tuple[str, str, str]] = field(default_factory=list)  # number, criterion, readings

    @cached_property
    def section(self) -> FormSection:
        """All of the form."""
        return take_whole(self.blank)

    def accept(self) -> None:
        """Tick the decision, with its day beside the party that decides, where the project tells that it was taken."""
        accepted, approver = (self.context.project.get(("mockup", name)) for name in ("accepted_on", "approver"))
        if accepted is not None:
            self.entered.ticks["form.decision"] = ("accepted",)
            self.entered.texts |= {f"form.signed_on.{approver}": long_date(accepted)} if approver else {}

    def fill_part(self, row: str, found: PartResults) -> None:
        """Put readings, mean, outcome and initials on the row of a part of a line; what has no box is kept apart."""
        slots = [
            slot for n in range(1, len(self.section.blanks)) if (slot := f"{_READING}{row}.{n}") in self.section.blanks
        ]
        texts = [text for _, text in found.readings]
        if max(map(len, texts), default=0) > _ROOM or len(texts) > len(slots):
            self.worded.append((found.part.number, found.line.title, _JOINED.join(texts)))
        for at, (entry, text) in enumerate(found.readings):
            slot = slots[min(at, len(slots) - 1)]
            self.entered.texts[slot] = _BELOW if len(text) > _ROOM or at >= len(slots) else text
            self._mark(entry, "reading", slot)
        mean = tell_mean(texts) if self.section.has(f"{MEAN}{row}") else ""
        self.entered.texts |= {f"{MEAN}{row}": mean} if mean else {}
        self._judge(row, found.entries)

    def _judge(self, row: str, entries: list[Entry]) -> None:
        """Tick pass or fail, which one failed reading decides, and put the initials of who signed."""
        passed = [entry.values["passed"] for entry in entries if "passed" in entry.values]
        judged = self.section.has(f"{_PASSED}{row}")
        if judged and passed:
            self.entered.ticks[f"{_PASSED}{row}"] = ("yes" if all(passed) else "no",)
        elif not judged:
            self.entered.ticks[f"{DONE}{row}"] = ("yes",)
            self.rest += [
                Remainder(entry, ("criterion", "part", "passed"), "this line is for record, and not judged")
                for entry in entries
                if entry.get("passed") is False
            ]
        signers = dict.fromkeys(
            _initials(entry.values["signed_by"]) for entry in entries if "signed_by" in entry.values
        )
        if signers:
            self.entered.texts[f"{_SIGNED}{row}"] = ", ".join(signers)
        for entry in entries:
            self._mark(entry, "passed", f"{_PASSED if judged else DONE}{row}")
            self._mark(entry, "signed_by", f"{_SIGNED}{row}")
            self._mark(entry, "signed_on", f"{_SIGNED}{row}")

    def _mark(self, entry: Entry, name: str, place: str) -> None:
        numbers = self.marks.get((entry.collection, entry.number), {}).get(name, ())
        if numbers:
            self.entered.outside[place] = tuple(dict.fromkeys((*self.entered.outside.get(place, ()), *numbers)))


def _fill_viewing(filling: _Filling, number: int, viewing: Viewing) -> Document:
    """The form of one viewing as a document."""
    for row, found in viewing.parts.items():
        filling.fill_part(row, found)
    filling.rest += [Remainder(one.entry, _list_unsigned(one.entry), one.why) for one in viewing.unplaced]
    blank, ident = filling.blank, f"{filling.blank.id}-record{'' if number == 1 else f'-{number}'}"
    blocks: tuple[Block, ...] = (
        *fill_blocks(filling.section, filling.entered),
        *_list_worded(filling.worded),
        *_list_signed(filling.context, viewing.entries),
        *list_rest(filling.context, filling.rest, filling.marks),
    )
    left, right = blank.running
    means = any(name.startswith(MEAN) for name in filling.entered.texts)
    return replace(
        blank,
        id=ident,
        facts=(*blank.facts, ("Viewing", str(number))),
        blocks=blocks,
        legend=(
            *blank.legend,
            (OUTSIDE, "Outside its limit; number of the nonconformance in D21"),
            *(((_BELOW, "Told below, in Readings in words"),) if filling.worded else ()),
            *((("Mean", "Computed from the readings of its line"),) if means else ()),
        ),
        running=(left, right.replace(blank.id, ident, 1)),
        digests=(),
        used_for="Read what was found and accepted on the mockup",
    )


def _list_worded(worded: Iterable[tuple[str, str, str]]) -> Iterator[Block]:
    """The readings that no box has room for."""
    rows = tuple(tuple((Text(cell),) for cell in row) for row in worded)
    if rows:
        yield Part((Text("Readings in words"),))
        yield Table(((Text("No."),), (Text("Criterion"),), (Text("Readings"),)), rows, (8, 32, 60))


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
