"""What rests on no text that was read: each figure once, with its box, beside the text or party that verifies it."""

import re
from dataclasses import dataclass, field

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.drafts import OPEN_ITEMS
from specgen.documents.parties import name_role
from specgen.documents.verifiers import (
    APPLICATOR,
    ARCHITECT,
    CONTRACT,
    ENGINEER,
    MANUFACTURERS,
    find_reader,
    find_sealing_day,
    find_settlers,
    find_text_of_sum,
    name_part,
)
from specgen.documents.views._requests import list_requests
from specgen.model.block import CheckBox, Value
from specgen.model.figure_text import figures_asked
from specgen.model.source import Kind, Source
from specgen.model.standard import Limit
from specgen.model.value_text import long_date
from specgen.quantities.comparison import Sense
from specgen.quantities.quantity import Quantity

HEADER = ("Verify against", "Figure, or method", "Value used", "Used in", "Answer, date")
WIDTHS = (18, 39, 20, 10, 13)
_SUMS = "D06"
# One basis a figure: what was read in another text before what is usual, and that before what is remembered.
_TOLD_BY = ", as told in "  # where a text was not read itself; who verifies looks into that text
_ORDER = (Kind.PUBLISHED, Kind.PRACTICE, Kind.MEMORY)
Basis = tuple[int, str]  # its place in that order, and its words
_SIDES = {Sense.AT_LEAST: "minimum ", Sense.AT_MOST: "maximum "}
METHODS = "Methods: "
_KINDS = (("Method of ", METHODS), ("Basis of ", "Applies as cited in: "))
_SECTION = "Section, "  # stands before the subject of a section of the code adopted
_PULLS = "ull tests"  # of old walls, and of sealant
_SIDE = re.compile(r"(?P<side>[Mm]inimum|[Mm]aximum) (?P<of>.+)")
LONGEST = 130
# Stands behind a figure that rests on memory; what it means is said once, above the table.
REMEMBERED = "*"


@dataclass
class Entry:
    """What is to be verified against one text: a figure with its sides, or all methods of the text."""

    rows: set[str] = field(default_factory=set)  # of the limits that its figures are
    figures: dict[str, None] = field(default_factory=dict)
    documents: set[str] = field(default_factory=set)
    bases: set[Basis] = field(default_factory=set)

    @property
    def basis(self) -> Basis:
        """The best of its bases."""
        return min(self.bases)


Key = tuple[str, str, str]  # the role that verifies, the text, and what is verified


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each figure; those of texts first, then those of parties, manufacturers, and what is answered."""
    entries = list_entries(context)
    # What the open items alone print is confirmed there, in its row.
    entries = {key: entry for key, entry in entries.items() if not _stands_in_open_items(context, key, entry)}
    ordered = sorted(entries.items(), key=lambda pair: (*_rank(context, *pair), *_place(pair), *pair[0]))
    lines = tuple(
        (shorten_name(key[1]), *_cells(key[2], entry, _tell_answer(context, key, entry))) for key, entry in ordered
    )
    return TableView(HEADER, lines, WIDTHS)


def _tell_answer(context: DocumentContext, key: Key, entry: Entry) -> str:
    """The day on which the engineer sealed the calculations and answered so, or the list that asks for the figure.

    Of others the cell stands empty.
    """
    day = find_sealing_day(context.project) if key[0] == ENGINEER else None
    return f"holds, {long_date(day)}" if day else OPEN_ITEMS if _is_asked(context, key, entry) else ""


def _is_asked(context: DocumentContext, key: Key, entry: Entry) -> bool:
    """Whether the open items ask the party that settles a figure for it, so that it is answered once."""
    role, text, _ = key
    settles = ARCHITECT if text == CONTRACT else role
    named = text in (CONTRACT, name_role(role))
    asked = context.remember(_find_asked)
    return any(not named or party == settles for row in entry.rows for party in asked.get(row, ()))


def _stands_in_open_items(context: DocumentContext, key: Key, entry: Entry) -> bool:
    """Whether a figure is printed by the open items alone, which ask for it."""
    return entry.documents == {OPEN_ITEMS} and _is_asked(context, key, entry)


def _find_asked(context: DocumentContext) -> dict[str, set[str]]:
    """The roles that the open items ask to confirm a figure, by its row."""
    found: dict[str, set[str]] = {}
    for request in list_requests(context) if context.is_marked else ():
        for figure in (figure for item in request.items for figure in item.figures if figure.row):
            found.setdefault(figure.row, set()).add(request.party)
    return found


def count_to_tick(context: DocumentContext) -> int:
    """How many figures nobody has answered yet."""
    return sum(not _tell_answer(context, key, entry) for key, entry in list_entries(context).items())


def verifies_pulls(context: DocumentContext) -> bool:
    """Whether a figure of pull tests is among them, which is ticked before the tests."""
    entries = list_entries(context).items()
    return any(_PULLS in key[2] and not _tell_answer(context, key, entry) for key, entry in entries)


def _rank(context: DocumentContext, key: Key, entry: Entry) -> tuple[bool, bool, bool]:
    """Where a row stands: a text, a party, a manufacturer, or what is answered."""
    role, text, _ = key
    return _tell_answer(context, key, entry) not in ("", OPEN_ITEMS), role in MANUFACTURERS, text == name_role(role)


def list_entries(context: DocumentContext) -> dict[Key, Entry]:
    """All that is printed and nobody has verified, each once; a document left out is verified when issued."""
    entries: dict[Key, Entry] = {}
    told, left_out = _told_by_others(context), {known.id for known in context.rest.left_out}
    for document, value in context.rest.cited:
        behind = value.source.behind if value.source else None
        if behind is None or value.row in told or document in left_out:
            continue
        text = context.name_text(behind.text_to_check)
        what, figure = _describe(context, document, value)
        reader = ((text, find_reader(context.project, text)),)
        for read, role in reader if text else _find_settlers(context, document, value):
            entry = entries.setdefault((role, read, name_part(value.row, role) or what), Entry())
            entry.figures |= dict.fromkeys([figure] if figure else [])
            entry.documents.add(document)
            entry.rows.add(value.row)
            entry.bases.add(_tell_basis(context, value, behind))
    return _name_methods_once(entries)


def _name_methods_once(entries: dict[Key, Entry]) -> dict[Key, Entry]:
    """The entries without the methods that another text tells on a better basis, or as well and named before."""
    best: dict[tuple[str, str], Entry] = {}
    for (_, _, what), entry in entries.items():
        for method in entry.figures if what == METHODS else ():
            told = best.setdefault((what, method), entry)
            if entry.basis < told.basis:
                best[what, method] = entry
    for (_, _, what), entry in entries.items():
        if what == METHODS:
            entry.figures = {method: None for method in entry.figures if best[what, method] is entry}
    return {key: entry for key, entry in entries.items() if key[2] != METHODS or entry.figures}


def _tell_basis(context: DocumentContext, value: Value, source: Source) -> Basis:
    """`common practice, no source`, `from memory`, or the text other than the one named in which a figure was read."""
    if source.kind is not Kind.PUBLISHED:
        return _ORDER.index(source.kind), source.kind.value
    row = context.standards.limits[value.row].source if value.row else source
    # Without a row a sum says behind the name of the text what it holds.
    name = (row.short or row.reference) if row.elsewhere and value.row else source.reference.partition(": ")[0]
    return _ORDER.index(source.kind), f"read in {context.tell(name).partition(_TOLD_BY)[0]}"


def _told_by_others(context: DocumentContext) -> set[str]:
    """The rows of lengths that the name of another row says: `straightness in 5 ft`."""
    named = {name for limit in context.standards.limits.values() for name in figures_asked(limit.about)}
    return {name for name in named if _is_length(context.standards.limits[name])}


def _is_length(limit: Limit) -> bool:
    return isinstance(limit.value, Quantity) and limit.value.dimension == "length"


def _find_settlers(context: DocumentContext, document: str, value: Value) -> tuple[tuple[str, str], ...]:
    """Where no text is known: what a sum rests on by its subject, else the parties that settle the figure."""
    if document == _SUMS and not value.row:
        named = context.name_text(find_text_of_sum(value.about.removeprefix("Method of ")))
        if named:
            return ((named, find_reader(context.project, named)),)
    roles = find_settlers(value.row or value.about.removeprefix("Method of "), document)
    # A design draft has no contract: the architect answers what D19 puts to it.
    contracted = context.project.value(("package", "purpose")) != "design_draft"
    return tuple(
        (CONTRACT, APPLICATOR) if role == ARCHITECT and contracted else (name_role(role), role) for role in roles
    )


def _describe(context: DocumentContext, document: str, value: Value) -> tuple[str, str]:
    """What a figure is of, and the figure with its side: `Distance from gun to wall` and `maximum 24 in`."""
    if value.row:
        limit = context.standards.limits[value.row]
        printed = context.limit(value.row)
        own = context.project.schema.field_at(limit.maker_figure) if limit.maker_figure else None
        about = own.label if own else printed.about.rpartition(", ")[0] if limit.sense in _SIDES else printed.about
        if value.row in figures_asked(limit.about):
            return _bare(about), ""
        return _bare(about), f"{_SIDES.get(limit.sense, '')}{printed.text}"
    about = value.about or value.text
    for start, kind in _KINDS:
        if about.startswith(start):
            return kind, about.removeprefix(start)
    if about.startswith(_SECTION):
        return _bare(f"{about.removeprefix(_SECTION)}: {value.text}"), ""
    figure = (value.full or value.text).strip().replace("\u00a0", " ")
    figure = figure if len(figure) <= LONGEST and value.about else ""
    side = _SIDE.fullmatch(about) if figure else None
    return _bare(about), f"{side['side'].lower()} {figure}" if side else figure


def _bare(about: str) -> str:
    """What a figure is of, without its side, as a line begins."""
    side = _SIDE.fullmatch(about)
    told = side["of"] if side else about
    return told[:1].upper() + told[1:]


def _cells(what: str, entry: Entry, answer: str) -> tuple[object, ...]:
    """What is verified with what it rests on, the value used with its box, the documents that print it, the answer."""
    methods = what.endswith(": ")
    told = what + "; ".join(map(_lower, entry.figures)) if methods else what
    value = ("" if methods else _join_sides(_sort_sides(entry))) or "holds"
    said = entry.basis[1]
    basis = {Kind.PRACTICE.value: "", Kind.MEMORY.value: REMEMBERED}.get(said, f" ({said})")
    box = value if answer == OPEN_ITEMS else [CheckBox(value, ticked=bool(answer))]
    # Another party that settles the figure too is not the one that the open items ask.
    used = sorted(entry.documents if answer == OPEN_ITEMS else entry.documents - {OPEN_ITEMS})
    return told + basis, box, ", ".join(used or [OPEN_ITEMS]), answer


def _sort_sides(entry: Entry) -> list[str]:
    return sorted(entry.figures, key=lambda figure: not figure.startswith("minimum"))


def _place(pair: tuple[Key, Entry]) -> tuple[str, str, Basis]:
    """What shares a line: the figures of one text on one basis."""
    (role, text, _), entry = pair
    return role, text, entry.basis


def _join_sides(figures: list[str]) -> str:
    """`1/4 in to 1/2 in` of a minimum and a maximum."""
    ends = [figure.removeprefix(side) for figure, side in zip(figures, ("minimum ", "maximum "), strict=False)]
    both = [figure.partition(" ")[0] for figure in figures] == ["minimum", "maximum"]
    return " to ".join(ends) if both else ", ".join(figures)


def _lower(method: str) -> str:
    return method if method[:2].isupper() else method[:1].lower() + method[1:]


def shorten_name(text: str) -> str:
    """The name of a text, as the first column holds it."""
    short = text.replace("International Building Code", "IBC").replace("IBC, section numbers", "IBC sections")
    return short[:1].upper() + short[1:]
