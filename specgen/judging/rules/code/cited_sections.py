"""The specification cites the sections and the wind standard of the adopted edition of the code.

Why: section numbers move from edition to edition. A set that cites another edition is sent back by the
official, or is built to the wrong text.

passes
    code:
      model: ibc
      edition: 2021
      cited_eifs_section: "1407"
      cited_inspection_section: "1705.17"
      wind_standard: asce_7_16
fails COD-01a at code.cited_eifs_section
    code: {model: ibc, edition: 2024, cited_eifs_section: "1408"}
fails COD-01b at code.cited_inspection_section
    code: {model: ibc, edition: 2021, cited_inspection_section: "1704.12"}
fails COD-01c at code.wind_standard
    code: {model: ibc, edition: 2018, wind_standard: asce_7_10}
fails COD-01d at code.cited_eifs_section
    code: {model: ibc, edition: 2018, cited_eifs_section: "1408"}
fails COD-01e at code.wind_standard
    code: {model: ibc, edition: 2003, wind_standard: asce_7_02}
"""

import re
from typing import Any

from specgen.judging.rule import CAUTION, NOTE, Rule, Violations, violation
from specgen.model.standard import Standards
from specgen.model.typed_views import Description

# Sections beside that on EIFS, which are taken for it.
NEIGHBORS = {"mcm_section": "metal composite materials", "hpl_section": "high-pressure laminates"}

RULE = Rule(
    "COD-01",
    "Sections and standards of the adopted edition",
    remedy="Cite the EIFS section of the adopted edition.",
    steps="site_conditions",
    documents="D02 D03",
)


@RULE.test(
    "a",
    CAUTION,
    "EIFS section {found} is cited; the adopted edition has {wanted}.",
    at="code.cited_eifs_section",
    basis="ibc_eifs_2009 ibc_eifs_2015 ibc_eifs_2018 ibc_eifs_2021 ibc_editions_memory",
)
def other_eifs_section(project: Description, standards: Standards) -> Violations:
    """The EIFS section that is cited is none of the adopted edition; before it had one, none is right."""
    yield from _miscited(project, standards, "eifs")


@RULE.test(
    "b",
    CAUTION,
    "Inspection section {found} is cited; the adopted edition has {wanted}.",
    at="code.cited_inspection_section",
    basis="ibc_inspection_2003 ibc_inspection ibc_inspection_2012 ibc_inspection_2021 ibc_editions_memory",
    remedy="Cite the inspection section of the adopted edition.",
)
def other_inspection_section(project: Description, standards: Standards) -> Violations:
    """The inspection section that is cited is none of the adopted edition."""
    yield from _miscited(project, standards, "inspection")


@RULE.test(
    "c",
    CAUTION,
    "Wind standard {found} is named; the adopted edition refers to {wanted}.",
    at="code.wind_standard",
    basis="ibc_editions_memory",
    remedy="Use {wanted}, or confirm the wind standard with the authority having jurisdiction.",
)
def other_wind_standard(project: Description, standards: Standards) -> Violations:
    """The wind standard is not the one that the adopted edition refers to."""
    if project.code.model != "ibc":
        return
    wanted = _edition(project, standards).get("wind_standard", project.code.wind_standard)
    if project.code.wind_standard != wanted:
        yield violation(project.code.wind_standard, wanted=wanted)


@RULE.test(
    "d",
    NOTE,
    "Section {found} of the adopted edition covers {wanted}, not EIFS.",
    at="code.cited_eifs_section",
    basis="ibc_eifs_2009 ibc_eifs_2018 ibc_claddings_2021 ibc_editions_memory",
)
def neighbor_section(project: Description, standards: Standards) -> Violations:
    """The section that is cited for EIFS covers another cladding."""
    cited = project.code.get("cited_eifs_section")
    if cited is None or project.code.model != "ibc":
        return
    edition = _edition(project, standards)
    for key, cladding in NEIGHBORS.items():
        if _cites(cited, edition.get(key)):
            yield violation(cited, wanted=cladding)


@RULE.test(
    "e",
    NOTE,
    "Wind pressure by {found} is not computed.",
    at="code.wind_standard",
    basis="practice",
    remedy="Enter the engineer's pressure on each elevation, outward and inward, at allowable stress level.",
)
def uncomputed_wind_standard(project: Description) -> Violations:
    """The wind standard has no method here; under a code that names none the engineer gives the pressures."""
    standard = project.code.get("wind_standard")
    if standard in ("asce_7_02", "asce_7_05"):
        yield violation(standard)


def _miscited(project: Description, standards: Standards, part: str) -> Violations:
    """The section cited, where the adopted edition has another one or none; nothing cited is nothing wrong."""
    cited = project.code.get(f"cited_{part}_section")
    if cited is None or project.code.model != "ibc":
        return
    edition = _edition(project, standards)
    wanted, source = edition.get(f"{part}_section"), edition.get(f"{part}_source")
    if edition and not _cites(cited, wanted):
        cite = f"Cite section {wanted}." if wanted else "Delete the citation: the adopted edition has no such section."
        yield violation(cited, wanted=wanted or "none", sources=(source,) if source else (), remedy=cite)


def _cites(text: str, section: str | None) -> bool:
    """Whether a text names a section or a part of it, not a longer number."""
    return section is not None and re.search(rf"(?<![\d.]){re.escape(section)}(?!\d)", text) is not None


def _edition(project: Description, standards: Standards) -> dict[str, Any]:
    """What the adopted edition says; nothing where its row is not written yet."""
    row: dict[str, Any] = standards.editions.get(str(project.code.edition), {})
    return row
