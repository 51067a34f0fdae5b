"""The documents that a project still lacks, and who owes each."""

from collections.abc import Iterator
from typing import NamedTuple

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
    before: str  # the work that does not begin without it


def looks_for_document(finding: Finding) -> bool:
    """Whether a finding is a stop for want of a document."""
    return finding.severity is Severity.STOP and (finding.code in _OWED or finding.code in _SHEETS)


def list_required(judgment: Judgment) -> tuple[RequiredDocument, ...]:
    """Every document still required, in the order of the rules."""
    return tuple(entry for finding in judgment.findings if looks_for_document(finding) for entry in _entries(finding))


def _entries(finding: Finding) -> Iterator[RequiredDocument]:
    if finding.code in _OWED:
        owed_by, name, before = _OWED[finding.code]
        yield RequiredDocument(owed_by, name, finding.subjects, finding.code, before)
        return
    by_maker: dict[str, list[str]] = {}
    for material in finding.found.split(", "):
        by_maker.setdefault(_MAKERS.get(material, "eifs_source"), []).append(_CALLED.get(material) or words(material))
    for maker, materials in by_maker.items():
        name = f"{_SHEETS[finding.code]}: {', '.join(materials)}"
        yield RequiredDocument(maker, name, ("project",), finding.code, _SHEETS_BEFORE)
