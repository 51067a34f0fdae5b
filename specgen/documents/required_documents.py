"""The documents that a project still lacks, and who owes each."""

from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple, cast

from specgen.documents.context import DocumentContext
from specgen.documents.fire_reports import list_missing_reports
from specgen.judging.materials import materials
from specgen.model.finding import Finding, Judgment, Severity
from specgen.model.value_text import words

# Who owes the document that a clause looks for, and how a reader calls it. SUB-02a and c look for one of each material.
_OWED = {
    "ACC-07a": ("applicator", "Hazard communication program"),
    "ACC-07c": ("applicator", "Respiratory protection program"),
    "ACC-07e": ("applicator", "Silica exposure control plan"),
    "ATT-05d": ("applicator", "Signed bond report of the existing surface"),
    "ATT-07c": ("eifs_source", "Bond report, adhesive on water-resistive barrier"),
    "ATT-09b": ("engineer", "Sheathing fastener schedule, checked for wind"),
    "COD-03a": ("eifs_source", "NFPA 285 report of this wall, or engineer's extension"),
    "COD-03c": ("eifs_source", "NFPA 268 report of this wall, or engineer's extension"),
    "SLT-06a": ("sealant_source", "Adhesion report, sealant on the bond face of this wall"),
    "SUB-01a": ("general_contractor", "Review of this package, signed and dated"),
    "SUB-06a": ("eifs_source", "Compatibility letter, EIFS and finish"),
    "SUB-06b": ("eifs_source", "Compatibility letter, EIFS and sealant"),
    "SUB-06c": ("eifs_source", "Compatibility letter, EIFS and water-resistive barrier"),
    "SUB-06d": ("finish_source", "Compatibility letter, finish and sealant"),
    "SUB-08a": ("applicator", "Certificates of qualification"),
}
_FIRE = {"NFPA 285": "COD-03a", "NFPA 268": "COD-03c"}
# What somebody is asked to confirm where a clause gives no more than a caution.
_CONFIRMED = {"COD-03d": ("architect", "Fire class of the walls, by letter of the authority having jurisdiction")}
_SHEETS = {"SUB-02a": "Data sheets", "SUB-02c": "Safety data sheets"}
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
    asked = [
        RequiredDocument(*_CONFIRMED[finding.code], finding.subjects, finding.code)
        for finding in context.judgment.findings
        if finding.code in _CONFIRMED
    ]
    return (*found, *later, *asked)


def _find_later(context: DocumentContext) -> Iterator[RequiredDocument]:
    """The fire reports that the code requires, and the data sheets of the materials described."""
    for standard, walls in list_missing_reports(context).items():
        code = _FIRE[standard]
        yield RequiredDocument(*_OWED[code], tuple(walls), code)
    if context.project.value(("package", "purpose")) == "design_draft":
        described = materials(cast(Any, context.project.root()))
        lacking = [material for material in described if material not in _list_covered(context)]
        yield from _sort_sheets("SUB-02a", lacking)


def _list_covered(context: DocumentContext) -> set[str]:
    """The materials that a data sheet covers."""
    project, covered = context.project, set[str]()
    for mark in project.members.get(("attachments",), ()):
        if project.get(("attachments", mark, "kind")) == "data_sheet":
            covered |= set(project.get(("attachments", mark, "covers")) or ())
    return covered


def _entries(finding: Finding) -> Iterator[RequiredDocument]:
    if finding.code in _OWED:
        owed_by, name = _OWED[finding.code]
        yield RequiredDocument(owed_by, name, finding.subjects, finding.code)
        return
    yield from _sort_sheets(finding.code, finding.found.split(", "))


def _sort_sheets(code: str, materials: Iterable[str]) -> Iterator[RequiredDocument]:
    """The sheets of materials, those of one manufacturer together."""
    by_maker: dict[str, list[str]] = {}
    for material in materials:
        by_maker.setdefault(_MAKERS.get(material, "eifs_source"), []).append(words(material))
    for maker, named in by_maker.items():
        yield RequiredDocument(maker, f"{_SHEETS[code]}: {', '.join(named)}", ("project",), code)
