"""What rests on no text that was read: what verifies it, the figures, where they stand, and who reads it."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Value
from specgen.model.source import Kind

HEADER = ("Verify against", "Figures and methods", "Used in", "Basis", "By")
WIDTHS = (19, 46, 10, 10, 15)
INSTRUCTIONS = "Manufacturer's written instructions"
ENGINEERING = "Engineering references"
_SUMS = "D06"
# Who reads a text.
_READERS = (
    (ENGINEERING, "engineer"),
    ("ASCE", "engineer"),
    ("International", "architect"),
    ("29 CFR", "competent person"),
    (INSTRUCTIONS, "manufacturer"),
)
_SAID = {Kind.PUBLISHED: "other text", Kind.PRACTICE: "practice", Kind.MEMORY: "memory"}
# A figure that says what it is: with a unit, and no sentence.
_WITH_UNIT = re.compile(r"\d.*[A-Za-z%°µ]")
# Which side of a figure is right, before or behind what it is of.
_SIDE = re.compile(r"(?P<first>Minimum|Maximum) (?P<of>.+)|(?P<about>.+), (?P<last>minimum|maximum)")
_KINDS = (("Method of ", "Methods"), ("Basis of ", "Rules"))
LONGEST = 24

Told = dict[str, dict[str, None]]  # what a figure is of, and the figures


class Entry(NamedTuple):
    """What one row is about; rows stand in this order."""

    reader: str
    text: str
    basis: str
    used_in: str


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each text and basis; figures of a manufacturer's instructions by the documents they stand in."""
    entries: dict[Entry, Told] = defaultdict(dict)
    for entry, (subject, figure) in _sort(context):
        entries[entry].setdefault(subject, {}).update(dict.fromkeys([figure] if figure else []))
    ordered = sorted(entries.items(), key=lambda pair: (pair[0].reader == "manufacturer", pair[0]))
    return TableView(HEADER, tuple(_lines(ordered)), WIDTHS)


def _sort(context: DocumentContext) -> Iterator[tuple[Entry, tuple[str, str]]]:
    """Each figure below the row that it stands in."""
    used: dict[tuple[str, str, str, str], dict[str, None]] = defaultdict(dict)
    for document, value in context.rest.cited:
        behind = value.source.behind if value.source else None
        if behind is not None:
            text = context.tell(behind.text_to_check) or INSTRUCTIONS
            used[(text, _SAID[behind.kind], *_describe(document, value))][document] = None
    shared: dict[tuple[str, str], dict[str, None]] = defaultdict(dict)
    for (text, basis, _, _), documents in used.items():
        shared[(text, basis)].update(documents)
    for (text, basis, subject, figure), documents in used.items():
        # The figures of sums alone stand in no manufacturer's document.
        name = ENGINEERING if text == INSTRUCTIONS and list(documents) == [_SUMS] else text
        where = documents if text == INSTRUCTIONS else shared[(text, basis)]
        reader = next((who for part, who in _READERS if part in name), "applicator")
        yield Entry(reader, name, basis, ", ".join(sorted(where))), (subject, figure)


def _describe(document: str, value: Value) -> tuple[str, str]:
    """`Gun to wall` and `maximum 24 in`; no figure where a sum prints its unit apart, or it is a sentence."""
    about, figure = value.about or value.text, value.text.strip().replace("\u00a0", " ")
    for start, kind in _KINDS:
        if about.startswith(start):
            name = about.removeprefix(start)
            return kind, name if name[:2].isupper() else name[:1].lower() + name[1:]
    whole = document != _SUMS or _WITH_UNIT.search(figure)
    told = figure if whole and len(figure) <= LONGEST and value.about else ""
    about = about[:1].upper() + about[1:]
    side = _SIDE.fullmatch(about)
    if side is None or not told:
        return about, told
    subject = side["of"] or side["about"]
    return subject[:1].upper() + subject[1:], f"{(side['first'] or side['last']).lower()} {told}"


def _lines(entries: Iterable[tuple[Entry, Told]]) -> Iterator[tuple[str, ...]]:
    """The rows; a text stands in the first of its own."""
    before = ""
    for entry, told in entries:
        figures = "; ".join(f"{subject}: {', '.join(said)}" if said else subject for subject, said in told.items())
        named = "" if entry.text == before else entry.text
        yield named, figures, entry.used_in, entry.basis, entry.reader
        before = entry.text
