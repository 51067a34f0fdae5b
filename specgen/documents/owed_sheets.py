"""The data sheets and safety data sheets that a project still lacks, those of one manufacturer in one entry."""

from collections.abc import Container, Iterable, Iterator
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.judging.owners import name_maker
from specgen.model.value_text import words

WRITTEN = "Written instructions: "
_DETAILS = "Standard details of the EIFS: edges, openings, joints, penetrations"
SHEETS = {"SUB-02a": "Data sheets", "SUB-02c": "Safety data sheets"}
_BEFORE = "mockup"
_OF_PRODUCTS = "SUB-02"  # the rule on product data
_CALLED = {"backing": "backer rod"}


class RequiredDocument(NamedTuple):
    """A document that a clause looks for and the project does not list."""

    owed_by: str  # the role of the party
    name: str  # as it prints
    subjects: tuple[str, ...]  # what it is for
    code: str  # of the clause
    before: (
        str  # `hazard`, `decision`, `submittal`, `sending`, `start of work`, or the step that does not begin without it
    )
    number: int = 1  # documents told by one name


def join_sheets(context: DocumentContext, named: list[str], mixed: Container[str]) -> Iterator[RequiredDocument]:
    """The data sheets and the safety data sheets that are not listed, those of one manufacturer in one entry."""
    covered = _list_covered(context, "data_sheet"), _list_covered(context, "sds")
    lacking = [m for m in named if m not in covered[0]], [m for m in named if m in mixed and m not in covered[1]]
    by_maker: dict[str, list[RequiredDocument]] = {}
    for code, wanted in zip(SHEETS, lacking, strict=True):
        for entry in sort_sheets(code, wanted):
            by_maker.setdefault(entry.owed_by, []).append(entry)
    for maker, entries in by_maker.items():
        yield _join_entries(maker, entries)


def _join_entries(maker: str, entries: list[RequiredDocument]) -> RequiredDocument:
    """The sheets of a manufacturer as one entry: `Data sheets: board; safety data sheets: adhesive`.

    What both are of is named once: `Data sheets and safety data sheets: primer, gloss`.
    """
    of: dict[str, list[str]] = {}
    for title, _, named in (entry.name.partition(": ") for entry in entries):
        of.setdefault(named, []).append(f"{title[:1].lower()}{title[1:]}")
    name = "; ".join(f"{' and '.join(titles)}: {named}" for named, titles in of.items())
    name = f"{name[:1].upper()}{name[1:]}"
    return RequiredDocument(maker, name, ("project",), _OF_PRODUCTS, _BEFORE, sum(e.number for e in entries))


def join_found_sheets(found: Iterable[RequiredDocument]) -> Iterator[RequiredDocument]:
    """The documents; the sheets of one manufacturer that are found missing in one entry."""
    sheets: dict[str, list[RequiredDocument]] = {}
    for entry in found:
        if entry.code not in SHEETS:
            yield entry
            continue
        sheets.setdefault(entry.owed_by, []).append(entry)
    for maker, entries in sheets.items():
        yield _join_entries(maker, entries) if len(entries) > 1 else entries[0]


def name_rod_makers(context: DocumentContext, entry: RequiredDocument) -> RequiredDocument:
    """The entry with the makers of backer rod, which the sealant manufacturer seldom makes."""
    project = context.project
    joints = project.members.get(("joints",), ())
    makers = dict.fromkeys(str(m) for j in joints if (m := project.get(("joints", j, "rod_maker"))))
    told = f"{_CALLED['backing']} ({', '.join(makers)})" if makers else _CALLED["backing"]
    return entry._replace(name=entry.name.replace(_CALLED["backing"], told))


def _list_covered(context: DocumentContext, kind: str) -> set[str]:
    """The materials that a sheet of a kind covers."""
    project, covered = context.project, set[str]()
    for mark in project.members.get(("attachments",), ()):
        if project.get(("attachments", mark, "kind")) == kind:
            covered |= set(project.get(("attachments", mark, "covers")) or ())
    return covered


def sort_sheets(code: str, materials: Iterable[str]) -> Iterator[RequiredDocument]:
    """The sheets of materials, those of one manufacturer together."""
    yield from _sort(code, SHEETS[code], materials)


def list_written(context: DocumentContext, materials: Iterable[str]) -> Iterator[RequiredDocument]:
    """The written instructions for materials, those of one manufacturer together.

    A draft asks for the standard details of the EIFS too, while no instructions for its base coat are listed.
    """
    yield from _sort(_OF_PRODUCTS, WRITTEN.removesuffix(": "), materials)
    if context.is_marked and "base_coat" not in _list_covered(context, "instructions"):
        yield RequiredDocument("eifs_source", _DETAILS, ("project",), _OF_PRODUCTS, _BEFORE)


def _sort(code: str, title: str, materials: Iterable[str]) -> Iterator[RequiredDocument]:
    by_maker: dict[str, list[str]] = {}
    for material in materials:
        by_maker.setdefault(name_maker(material), []).append(_CALLED.get(material) or words(material))
    for maker, named in by_maker.items():
        name = f"{title}: {', '.join(named)}"
        yield RequiredDocument(maker, name, ("project",), code, _BEFORE, len(named))
