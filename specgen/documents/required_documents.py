"""The documents that a project still lacks, and who owes each."""

from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple, cast

from specgen.documents.context import DocumentContext
from specgen.documents.fire_reports import list_missing_reports
from specgen.judging.materials import materials
from specgen.model.finding import Finding, Judgment, Severity
from specgen.model.value_text import words

# Who owes the document that a clause looks for, how a reader calls it, and the work that does not begin without it.
# SUB-02a and c look for one of each material.
_OWED = {
    "ACC-07a": ("applicator", "Hazard communication program", "work starts"),
    "ACC-07c": ("applicator", "Respiratory protection program", "work starts"),
    "ACC-07e": ("applicator", "Silica exposure control plan", "work starts"),
    "ATT-05d": ("applicator", "Signed bond report of the existing surface", "boards"),
    "ATT-07c": ("eifs_source", "Bond report, adhesive on water-resistive barrier", "boards"),
    "ATT-09b": ("engineer", "Sheathing fastener schedule, checked for wind", "boards"),
    "COD-03a": ("eifs_source", "NFPA 285 report of this wall, or engineer's extension", "boards"),
    "COD-03c": ("eifs_source", "NFPA 268 report of this wall, or engineer's extension", "boards"),
    "SLT-06a": ("sealant_source", "Adhesion report, sealant on the bond face of this wall", "sealant"),
    "SUB-01a": ("general_contractor", "Review of this package, signed and dated", "submittal"),
    "SUB-06a": ("eifs_source", "Compatibility letter, EIFS and finish", "mockup"),
    "SUB-06b": ("eifs_source", "Compatibility letter, EIFS and sealant", "sealant"),
    "SUB-06c": ("eifs_source", "Compatibility letter, EIFS and water-resistive barrier", "boards"),
    "SUB-06d": ("finish_source", "Compatibility letter, finish and sealant", "sealant"),
    "SUB-08a": ("applicator", "Certificates of qualification", "mockup"),
}
_FIRE = {"NFPA 285": "COD-03a", "NFPA 268": "COD-03c"}
# What somebody is asked to confirm where a clause gives no more than a caution.
_CONFIRMED = {
    "COD-03d": ("architect", "Fire class of the walls, by letter of the authority having jurisdiction", "boards")
}
_SHEETS = {"SUB-02a": "Data sheets", "SUB-02c": "Safety data sheets"}
_SHEETS_BEFORE = "mockup"
_CALLED = {"backing": "backer rod"}
_MAKERS = {
    "wrb": "wrb_source",
    "smoothing": "finish_source",
    "primer": "finish_source",
    "gloss": "finish_source",
    "sealant_primer": "sealant_source",
    "sealant": "sealant_source",
    "backing": "sealant_source",
}


class RequiredDocument(NamedTuple):
    """A document that a clause looks for and the project does not list."""

    owed_by: str  # the role of the party
    name: str  # as it prints
    subjects: tuple[str, ...]  # what it is for
    code: str  # of the clause
    before: str  # `submittal`, `work starts`, or the step that does not begin without it


def looks_for_document(finding: Finding) -> bool:
    """Whether a finding is a stop for want of a document."""
    return finding.severity is Severity.STOP and (finding.code in _OWED or finding.code in _SHEETS)


def list_required(judgment: Judgment) -> tuple[RequiredDocument, ...]:
    """Every document still required, in the order of the rules."""
    return tuple(entry for finding in judgment.findings if looks_for_document(finding) for entry in _entries(finding))


def list_pending(context: DocumentContext) -> tuple[RequiredDocument, ...]:
    """Every document still required, also those that a design draft does not have to list yet."""
    found = list_required(context.judgment)
    codes = {entry.code for entry in found}
    later = [entry for entry in _find_later(context) if entry.code not in codes]
    asked = [_owe(f.code, _CONFIRMED, f.subjects) for f in context.judgment.findings if f.code in _CONFIRMED]
    return (*found, *later, *asked)


def _find_later(context: DocumentContext) -> Iterator[RequiredDocument]:
    """The fire reports that the code requires, and the data sheets of the materials described."""
    for standard, walls in list_missing_reports(context).items():
        yield _owe(_FIRE[standard], _OWED, tuple(walls))
    if context.project.value(("package", "purpose")) == "design_draft":
        described = materials(cast(Any, context.project.root()))
        lacking = [material for material in described if material not in _list_covered(context)]
        yield from _sort_sheets("SUB-02a", lacking)


def _owe(code: str, owed: dict[str, tuple[str, str, str]], subjects: tuple[str, ...]) -> RequiredDocument:
    party, name, before = owed[code]
    return RequiredDocument(party, name, subjects, code, before)


def _list_covered(context: DocumentContext) -> set[str]:
    """The materials that a data sheet covers."""
    project, covered = context.project, set[str]()
    for mark in project.members.get(("attachments",), ()):
        if project.get(("attachments", mark, "kind")) == "data_sheet":
            covered |= set(project.get(("attachments", mark, "covers")) or ())
    return covered


def _entries(finding: Finding) -> Iterator[RequiredDocument]:
    if finding.code in _OWED:
        yield _owe(finding.code, _OWED, finding.subjects)
        return
    yield from _sort_sheets(finding.code, finding.found.split(", "))


def _sort_sheets(code: str, materials: Iterable[str]) -> Iterator[RequiredDocument]:
    """The sheets of materials, those of one manufacturer together."""
    by_maker: dict[str, list[str]] = {}
    for material in materials:
        by_maker.setdefault(_MAKERS.get(material, "eifs_source"), []).append(_CALLED.get(material) or words(material))
    for maker, named in by_maker.items():
        yield RequiredDocument(maker, f"{_SHEETS[code]}: {', '.join(named)}", ("project",), code, _SHEETS_BEFORE)
