"""What the package rests on and no text was read for: each figure, where it is used, and what verifies it."""

import re
from collections import defaultdict
from collections.abc import Iterator

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Value
from specgen.model.source import Kind

HEADER = ("Verify against", "Figure or rule", "Used in", "Basis", "By")
WIDTHS = (21, 39, 14, 11, 15)
INSTRUCTIONS = "Written instructions"
ENGINEERING = "Engineering references"
_SUMS = "D06"
# Who reads a text that is no document of a manufacturer.
_READERS = (("ASCE", "engineer"), ("International", "architect"), ("29 CFR", "competent person"))
_SAID = {Kind.PUBLISHED: "other text", Kind.PRACTICE: "practice", Kind.MEMORY: "memory"}
# A figure that says what it is: with a unit, and no sentence.
_WITH_UNIT = re.compile(r"\d.*[A-Za-z%°µ]")
LONGEST = 24

Entry = tuple[str, str]
Used = dict[str, dict[str, None]]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each text to check, then one for each figure that no known text gives."""
    texts: dict[Entry, Used] = defaultdict(dict)
    for document, value in context.rest.cited:
        behind = value.source.behind if value.source else None
        if behind is not None:
            entry = (context.tell(behind.text_to_check) or INSTRUCTIONS, _SAID[behind.kind])
            texts[entry].setdefault(_describe(document, value), {})[document] = None
    ordered = sorted(_part(texts), key=lambda pair: pair[0][0] == INSTRUCTIONS)
    return TableView(HEADER, tuple(line for entry, used in ordered for line in _lines(entry, used)), WIDTHS)


def _part(texts: dict[Entry, Used]) -> Iterator[tuple[Entry, Used]]:
    """The figures by what verifies them; those of sums alone stand in no manufacturer's document."""
    for (text_name, basis), used in texts.items():
        sums = {what: where for what, where in used.items() if text_name == INSTRUCTIONS and list(where) == [_SUMS]}
        others = {what: where for what, where in used.items() if what not in sums}
        yield from (entry for entry in (((text_name, basis), others), ((ENGINEERING, basis), sums)) if entry[1])


def _describe(document: str, value: Value) -> str:
    """`Gun to wall, maximum: 24 in`; without the figure where a sum prints its unit apart, or it is a sentence."""
    subject = value.about or value.text
    figure = value.text.strip()
    whole = document != _SUMS or _WITH_UNIT.search(figure)
    told = f": {figure}" if whole and len(figure) <= LONGEST and value.about else ""
    return f"{subject[:1].upper()}{subject[1:]}{told}"


def _lines(entry: Entry, used: Used) -> Iterator[tuple[str, ...]]:
    """One row for a text; one for each figure where there is none."""
    text_name, basis = entry
    reader = next((who for name, who in _READERS if name in text_name), "applicator")
    if text_name != INSTRUCTIONS:
        documents = dict.fromkeys(document for where in used.values() for document in where)
        yield text_name, "; ".join(used), ", ".join(documents), basis, reader
        return
    for subject, where in used.items():
        yield text_name, subject, ", ".join(where), basis, "manufacturer"
