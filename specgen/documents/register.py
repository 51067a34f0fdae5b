"""The submittal register as plain typed data: its columns, and a row for each item of the contract.

The table of D03 and the register as a workbook or as CSV are set from it.
"""

import datetime
import re
from typing import Literal, NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.held import list_held
from specgen.documents.members import span_marks
from specgen.model.field import Path
from specgen.model.value_text import words

Cell = str | datetime.date | None
ITEMS: Path = ("contract", "items")
GOVERNMENT = "ufgs_013300"


class Column(NamedTuple):
    """A column of the register; `width` is its share of the page in percent.

    `holds` is the field of the item that it prints, or `mark`, `transmittal`, `documents` or `submitted`; a column that
    holds none is filled in by hand as the review goes on. One without a width has no place on a page.
    """

    title: str
    width: int
    holds: str = ""
    kind: Literal["text", "date"] = "text"


class RegisterRow(NamedTuple):
    """An item of the register: a value for each column, None where there is none yet."""

    mark: str
    cells: tuple[Cell, ...]


class Register(NamedTuple):
    """The columns of the procedure of the contract, and the items by section and paragraph."""

    columns: tuple[Column, ...]
    rows: tuple[RegisterRow, ...]


_NUMBER = Column("Item", 6, "mark")
_PLACE = (Column("Section", 7, "section"), Column("Paragraph", 8, "paragraph"))
_ANSWERS = (Column("Documents", 8, "documents"), Column("Attachments", 11, "attachments"))
# The columns by the procedure of the contract: those of an architect's review, and those of UFGS 01 33 00.
_BY_ARCHITECT = (
    _NUMBER,
    *_PLACE,
    Column("Description", 19, "title"),
    Column("Type", 9, "group"),
    Column("Submit", 10, "due_on", "date"),
    *_ANSWERS,
    Column("Submitted", 9, "submitted", "date"),
    Column("Action", 6),
    Column("Date of action", 7, kind="date"),
)
_BY_GOVERNMENT = (
    Column("Item", 5, "mark"),
    Column("Transmittal number", 0, "transmittal"),  # that of the package: a page says it once
    Column("Section", 7, "section"),
    Column("Paragraph", 8, "paragraph"),
    Column("SD number", 6, "sd_type"),
    Column("Description of item", 14, "title"),
    Column("Classification", 9, "classification"),
    Column("Submit", 9, "due_on", "date"),
    Column("Documents", 8, "documents"),
    Column("Attachments", 9, "attachments"),
    Column("Action code", 6),
    Column("Action date", 6, kind="date"),
    Column("Authority code", 7),
    Column("Authority date", 6, kind="date"),
)
# What an item is about, by words of its title, and the documents of this package that answer it.
_BY_WORD: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"mock-?up", ("D09", "D10")),
    (r"drawing|layout|joint list|panel list", ("D07",)),
    (r"\bdetails?\b", ("D08",)),  # its figures show edges, openings, and flashings
    (r"calculation|design data", ("D06",)),
    (r"qualification|certificate of (?:the )?(?:applicator|installer)", ("D04",)),
    (r"procedure|installation plan|method statement", ("D08",)),
    (r"inspection|test plan|quality control", ("D11",)),
    (r"site record|daily report|field report|\blogs?\b", ("D12",)),
    (r"quantit|batch", ("D13",)),
    (r"(?:work|construction|progress|application) schedule|schedule of (?:the )?work", ("D14",)),
    (r"safety (?:plan|program)|hazard analysis", ("D15",)),
    (r"maintenance|care|cleaning|repair", ("D16",)),
    (r"deviation|variation|substitution", ("D03",)),
    (r"compatib|complian", ("D02",)),
)
# The same by the submittal description, where no word of the title tells.
_BY_DESCRIPTION: dict[str, tuple[str, ...]] = {"SD-02": ("D07",), "SD-05": ("D06",), "SD-10": ("D16",)}


def make_register(context: DocumentContext) -> Register:
    """The register of the contract, with dates as dates; no rows where the contract lists no item."""
    return context.remember(_gather_register)


def _gather_register(context: DocumentContext) -> Register:
    columns = _BY_GOVERNMENT if is_government(context) else _BY_ARCHITECT
    marks = sorted(context.project.members.get(ITEMS, ()), key=lambda mark: _sort_key(context, mark))
    return Register(columns, tuple(RegisterRow(mark, _read_cells(context, mark, columns)) for mark in marks))


def is_government(context: DocumentContext) -> bool:
    """Whether the contract goes by the numbered submittal descriptions SD-01 to SD-11."""
    return bool(context.project.get(("contract", "procedure")) == GOVERNMENT)


def find_documents(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The documents of this package that answer an item, by its title or else by its submittal description."""
    title, description = (context.project.get((*ITEMS, mark, name)) for name in ("title", "sd_type"))
    told = [ids for pattern, ids in _BY_WORD if re.search(pattern, str(title or ""), re.IGNORECASE)]
    answering = {name for ids in told or [_BY_DESCRIPTION.get(str(description), ())] for name in ids}
    return tuple(held.id for held in list_held(context) if held.id in answering)


def find_items(context: DocumentContext, attachment: str) -> tuple[str, ...]:
    """The marks of the items that an attachment answers, in the order of the register."""
    return context.remember(_gather_answers).get(attachment, ())


def _gather_answers(context: DocumentContext) -> dict[str, tuple[str, ...]]:
    """The items by the attachments that answer them."""
    answers: dict[str, list[str]] = {}
    for row in make_register(context).rows:
        for attachment in _list_attachments(context, row.mark):
            answers.setdefault(attachment, []).append(row.mark)
    return {attachment: tuple(marks) for attachment, marks in answers.items()}


def _list_attachments(context: DocumentContext, mark: str) -> tuple[str, ...]:
    return tuple(linked.mark for linked in context.project.get((*ITEMS, mark, "attachments")) or ())


def _read_cells(context: DocumentContext, mark: str, columns: tuple[Column, ...]) -> tuple[Cell, ...]:
    told: dict[str, Cell] = {
        "": None,
        "mark": mark,
        "transmittal": context.project.get(("package", "number")),
        "documents": span_marks(find_documents(context, mark)) or None,
        "attachments": span_marks(_list_attachments(context, mark)) or None,
        "submitted": _find_submitted(context, mark),
    }
    return tuple(told[c.holds] if c.holds in told else _read_field(context, mark, c.holds) for c in columns)


def _find_submitted(context: DocumentContext, mark: str) -> datetime.date | None:
    """The date of the package in hand, by which an item is submitted; none in a draft, or of what is due later."""
    issued, due = context.project.get(("package", "date")), context.project.get((*ITEMS, mark, "due_on"))
    later = issued is None or due is None or due > issued
    return None if context.is_marked or later else issued


def _read_field(context: DocumentContext, mark: str, name: str) -> Cell:
    value = context.project.get((*ITEMS, mark, name))
    if value is None or isinstance(value, datetime.date):
        return value
    return words(str(value)).capitalize() if name == "group" else str(value)


def _sort_key(context: DocumentContext, mark: str) -> tuple[object, ...]:
    """Section, paragraph and mark, with the numbers in them as numbers; what has no section comes last."""
    section, paragraph = (context.project.get((*ITEMS, mark, name)) for name in ("section", "paragraph"))
    return (section is None, *map(_split_numbers, (str(section or ""), str(paragraph or ""), mark)))


def _split_numbers(text: str) -> list[tuple[bool, int, str]]:
    """`1.10.B` after `1.9.A`: the runs of digits of a text as numbers, the rest as it stands."""
    parts = re.findall(r"\d+|\D+", text)
    return [(part[0].isdigit(), int(part) if part[0].isdigit() else 0, part) for part in parts]
