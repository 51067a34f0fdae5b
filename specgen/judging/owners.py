"""Who answers for what stands against a package: for a paper that is missing, for a measure, for a field."""

from specgen.model.finding import Finding, Severity
from specgen.model.project import Project

# Who takes the measure of a clause, a rule or a group, where that is not the party that gives the value at fault.
_MEASURED_BY = {
    "ACC-06d": "applicator",
    "AIR-06": "applicator",
    "AJT-07": "applicator",
    "ATT-05e": "owner",
    "ATT-05i": "owner",
    "ATT-05j": "owner",
    "BAS": "applicator",
    "BAS-05": "architect",
    "FIN": "applicator",
    "HEA": "architect",
    "HEA-01": "finish_source",
    "HEA-03": "applicator",
    "HEA-03d": "engineer",
    "HEA-05": "applicator",
    "HEA-06": "finish_source",
    "MOC-05": "applicator",
    "SCH-04c": "applicator",
    "SUB-05": "applicator",
    "SUB-07": "applicator",
    "WEA-09d": "applicator",
}
# Who owes the document that a clause looks for, how a reader calls it, and the work that does not begin without it.
# SUB-02a and c look for one of each material.
OWED_PAPERS = {
    "ACC-07a": ("applicator", "Hazard communication program", "start of work"),
    "ACC-07c": ("applicator", "Respiratory protection program", "start of work"),
    "ACC-07e": ("applicator", "Silica exposure control plan", "start of work"),
    "ATT-05d": ("owner", "Bond report with mode of failure, signed by an independent testing agency", "decision"),
    "ATT-07c": ("eifs_source", "Bond report, adhesive on water-resistive barrier", "boards"),
    "ATT-09b": ("engineer", "Sheathing fastener schedule, checked for wind", "boards"),
    "COD-03a": (
        "eifs_source",
        "NFPA 285 report of this wall with this finish, or engineer's extension accepted by the authority",
        "boards",
    ),
    "COD-03c": (
        "eifs_source",
        "NFPA 268 report of this wall with this finish, or engineer's extension accepted by the authority",
        "boards",
    ),
    "SLT-06a": ("sealant_source", "Adhesion report, ASTM C1382, sealant on its bond face", "sealant"),
    "SUB-01a": ("general_contractor", "Review of this package, signed and dated", "sending"),
    "SUB-06a": ("eifs_source", "Compatibility letter, EIFS and finish, with EIFS warranty", "mockup"),
    "SUB-06b": ("eifs_source", "Compatibility letter, EIFS and sealant", "sealant"),
    "SUB-06c": ("eifs_source", "Compatibility letter, EIFS and water-resistive barrier", "boards"),
    "SUB-06d": ("finish_source", "Compatibility letter, finish and sealant", "sealant"),
    "SUB-08a": ("applicator", "Certificates of qualification", "mockup"),
}
# Who makes a material, where that is not the EIFS manufacturer.
_MAKERS = {
    "wrb": "wrb_source",
    "smoothing": "finish_source",
    "primer": "finish_source",
    "gloss": "finish_source",
    "sealant_primer": "sealant_source",
    "sealant": "sealant_source",
    "backing": "sealant_source",
}
_SHEETS = ("SUB-02a", "SUB-02c")


def looks_for_document(finding: Finding) -> bool:
    """Whether a finding is a stop for want of a document."""
    return finding.severity is Severity.STOP and (finding.code in OWED_PAPERS or finding.code in _SHEETS)


def find_party(project: Project, finding: Finding) -> str:
    """Who takes the measure of a finding: the party that gives the value at fault, else the applicator."""
    field = project.schema.field_at(tuple(finding.place.path.split(".")))
    own = _MEASURED_BY.get(finding.code) or _MEASURED_BY.get(finding.rule) or _MEASURED_BY.get(finding.rule[:3])
    return own or (field.owed_by if field is not None else "") or "applicator"


def find_owners(project: Project, finding: Finding) -> tuple[str, ...]:
    """The roles that answer for a finding: who owes the paper it asks for, else who takes its measure."""
    if finding.code in OWED_PAPERS:
        return (OWED_PAPERS[finding.code][0],)
    if finding.code in _SHEETS:
        return tuple(dict.fromkeys(map(name_maker, finding.found.split(", "))))
    return (find_party(project, finding),)


def name_maker(material: str) -> str:
    """The role of the manufacturer of a material."""
    return _MAKERS.get(material, "eifs_source")
