"""The documents that a project still lacks, and who owes each."""

from collections.abc import Iterator
from typing import Any, cast

from specgen.documents.code_edition import name_weather_sections
from specgen.documents.context import DocumentContext
from specgen.documents.fire_reports import RAIN, SYSTEM, list_missing_reports, list_reports
from specgen.documents.foam_reports import list_missing_foam_reports
from specgen.documents.heat_told import list_uninstructed
from specgen.documents.owed_sheets import (
    RequiredDocument,
    join_found_sheets,
    join_sheets,
    list_written,
    name_rod_makers,
    sort_sheets,
)
from specgen.documents.standing_walls import BARRIER, list_barriers, list_standing, list_unconfirmed, list_undrained
from specgen.documents.system_reports import list_unproved
from specgen.documents.views.reports import find_reports, list_pending_tests
from specgen.judging.materials import materials, mixed_materials
from specgen.judging.owners import OWED_PAPERS, looks_for_document
from specgen.model.finding import Finding, Judgment, Severity

# What the code table requires, by the section of the code.
_CODE = "COD "
_FIRE = {"NFPA 285": "COD-03a", "NFPA 268": "COD-03c"}
# What somebody is asked to confirm where a clause gives no more than a caution.
_CONFIRMED = {
    "COD-03d": ("architect", "Fire class and tests, by letter of the authority", "boards"),
    "HEA-01a": ("finish_source", "Solar reflectance report of the color, ASTM C1549 or E903", "decision"),
    "HEA-01b": ("finish_source", "Thermal emittance report of the color, ASTM C1371 or E408", "decision"),
    "HEA-03b": (
        "eifs_source",
        "Letter that accepts the color on this face, or none if a lighter one is used",
        "decision",
    ),
    "HEA-05a": ("eifs_source", "Letter that accepts the dark color", "decision"),
}
# A letter settles these, and the work has its measure all the same.
_MEASURED = ("HEA-03b", "HEA-05a")
_UNACCEPTED = {"HEA-05a": "HEA-05b"}
# Nothing in a project tells that this one has come: it is asked for in a draft alone.
_DRAFTED = ("HEA-03b",)
# What a wall and the code ask for before any clause finds it wanting.
_LATER = {
    "COD-02": ("architect", "Drained wall required or not, by letter of the authority", "decision"),
    "COD-04": (
        "architect",
        "Special inspection required or not, by letter of the authority",
        "decision",
    ),
    "ATT-03": ("architect", "Local rule on fasteners, by letter of the authority", "decision"),
    "ATT-05": ("engineer", "Acceptance of the bond report, in writing", "decision"),
    "ATT-08": ("architect", BARRIER, "decision"),
    "ATT-10a": ("owner", "Laboratory report, lead in the existing coating", "hazard"),
    "ATT-10c": ("owner", "Asbestos survey report: all parts to be disturbed; PCB in sealant, lead in paint", "hazard"),
    "HEA-05": ("architect", "Acceptance of the dark color, in writing", "decision"),
}
_SOLAR = {"HEA-01a": ("C1549", "E903"), "HEA-01b": ("C1371", "E408")}
# What the manufacturer says of a wall that stands, and before what.
_BY_MAKER = {
    "Acceptance of the kind of surface for its adhesive, subject to repair and pull tests, in writing": "pulls",
    "Written instructions: drying, maximum moisture, and mortar cure of the existing wall": "pulls",
    "Release for boards, in writing, on moisture readings": "boards",
}
_TESTED = {
    "ATT-10a": ("lead_tested", ("existing_coated",)),
    "ATT-10c": ("asbestos_tested", ("existing_coated", "existing_brick")),
}
_PULLED = ("metal", "existing_brick")
_LOCAL_FIRE = "Fire test report of this wall with this finish, for the class that the authority requires"
# The letter on the finish is of both manufacturers: each accepts the other's coats.
_OF_FINISH, _ACCEPTED = "SUB-06a", "Compatibility letter, finish on the base coat of this EIFS"
_LOCAL_BASIS = ("code", "local_fasteners_basis")
# The properties of a color that a report shows, and the clause that asks for it.
_OF_COLORS = {"Solar reflectance": "HEA-01a", "Emittance": "HEA-01b"}
_FINISH = ("smoothing", "primer", "gloss")
# Every EIFS has them, whether or not a draft describes them yet.
_BESIDES = ("mesh", "accessories")


def list_measured(context: DocumentContext) -> tuple[Finding, ...]:
    """The cautions that ask for a measure; what a document answers stands among those required alone."""
    pending = {entry.code for entry in list_pending(context)}
    answered = pending - set(_MEASURED) | {
        _UNACCEPTED[code] for code in _MEASURED if code in pending and code in _UNACCEPTED
    }
    return tuple(f for f in context.judgment.of(Severity.CAUTION) if f.code not in answered)


def list_required(judgment: Judgment) -> tuple[RequiredDocument, ...]:
    """Every document still required, in the order of the rules."""
    return tuple(entry for finding in judgment.findings if looks_for_document(finding) for entry in _entries(finding))


def list_pending(context: DocumentContext) -> tuple[RequiredDocument, ...]:
    """Every document still required, also those that a design draft does not have to list yet."""
    return context.remember(_gather_pending)


def _gather_pending(context: DocumentContext) -> tuple[RequiredDocument, ...]:
    found = list_required(context.judgment)
    codes = {entry.code for entry in found}
    later = [entry for entry in _find_later(context) if entry.code not in codes]
    told = {finding.code for finding in context.judgment.findings}
    drafted = _is_design_draft(context)
    asked = [
        _owe(f.code, _CONFIRMED, f.subjects)
        for f in context.judgment.findings
        if f.code in _CONFIRMED and (drafted or (f.code not in _DRAFTED and _UNACCEPTED.get(f.code, f.code) in told))
    ]
    every = [*join_found_sheets(found), *later, *asked]
    accepts = [entry for entry in every if entry.code == _OF_FINISH and context.is_marked]
    every += [entry._replace(owed_by="finish_source", name=_ACCEPTED) for entry in accepts]
    return tuple(name_rod_makers(context, entry) for entry in every)


def _is_design_draft(context: DocumentContext) -> bool:
    return bool(context.project.value(("package", "purpose")) == "design_draft")


def count_pending(context: DocumentContext) -> int:
    """How many documents are still required, each sheet counted."""
    return sum(entry.number for entry in list_pending(context))


def _find_later(context: DocumentContext) -> Iterator[RequiredDocument]:
    """The fire reports that the code requires, what an old wall must show, and the sheets of the materials."""
    for standard, walls in list_missing_reports(context).items():
        yield _owe(_FIRE[standard], OWED_PAPERS, tuple(walls))
    for name, section, lacking, owed_by in list_missing_foam_reports(context):
        yield RequiredDocument(owed_by, name, lacking, f"{_CODE}{section}", "decision")
    yield from _find_of_system(context)
    if context.draft:
        for owed_by, name, code, untested in list_unproved(context):
            yield RequiredDocument(owed_by, name, untested, code, "decision")
    project = context.project
    yield from _find_local(context)
    yield from _find_of_standing(context)
    yield from _find_solar_reports(context)
    yield from _find_tests(context)
    yield from list_written(context, list_uninstructed(context))
    if project.get(("code", "local_fasteners_required")) is False and not project.get(_LOCAL_BASIS):
        yield _owe("ATT-03", _LATER, ("project",))
    described = materials(cast(Any, project.root()))
    if not _is_design_draft(context):
        undescribed = [coat for coat in _FINISH if coat not in described]
        besides = [one for one in _BESIDES if context.draft and one not in described]
        yield from join_sheets(context, [*undescribed, *besides], undescribed)
        return
    dark = tuple(mark for f in context.judgment.findings if f.code == "HEA-05a" for mark in f.subjects)
    if dark:
        yield _owe("HEA-05", _LATER, dark)
    sealed = _is_sealed(context)
    wet = ("base_coat", *_FINISH, *(["sealant"] if sealed else []))
    named = list(dict.fromkeys((*described, *wet, *_BESIDES)))
    yield from join_sheets(context, named, {*mixed_materials(cast(Any, project.root())), *wet})
    yield from _find_letters(context, sealed)


def _find_of_system(context: DocumentContext) -> Iterator[RequiredDocument]:
    """The report on the system where the code has a section on EIFS, and that on rain of a wall that may owe a WRB."""
    project = context.project
    if project.get(("code", "model")) != "ibc":
        return
    section = _find_system_section(context)
    if section and not find_reports(context, SYSTEM):
        name = f"{SYSTEM} report with this finish, or approved alternative"
        walls = tuple(project.members[("walls",)])
        yield RequiredDocument("eifs_source", name, walls, f"{_CODE}{section}", "decision")
    untested = tuple(mark for mark in list_unconfirmed(context) if not list_reports(project, RAIN, mark))
    if untested:
        name = f"{RAIN} report of this wall, where framed or not designed to the code"
        yield RequiredDocument("eifs_source", name, untested, f"{_CODE}{name_weather_sections(context)}", "decision")


def _find_system_section(context: DocumentContext) -> str:
    """The section on EIFS of the International Building Code, by which a report on the system is asked for apart."""
    if context.project.get(("code", "model")) != "ibc":
        return ""
    edition = context.standards.editions.get(str(context.project.get(("code", "edition"))), {})
    return str(edition.get("eifs_section", ""))


def _find_local(context: DocumentContext) -> Iterator[RequiredDocument]:
    """What only the authority can tell of a code that is not read here: drainage of an undrained wall, inspection."""
    if context.project.get(("code", "model")) != "other":
        return
    undrained = list_undrained(context)
    if undrained:
        yield _owe("COD-02", _LATER, tuple(undrained))
    yield _owe("COD-04", _LATER, ("project",))
    if context.is_marked and any(finding.code == "COD-03d" for finding in context.judgment.findings):
        yield RequiredDocument("eifs_source", _LOCAL_FIRE, context.project.members[("walls",)], "COD-03d", "decision")


def _is_sealed(context: DocumentContext) -> bool:
    """Whether the project has joints or sealants."""
    return any(context.project.members.get((name,)) for name in ("joints", "sealants"))


def _find_tests(context: DocumentContext) -> Iterator[RequiredDocument]:
    """The test reports behind the properties that the project gives, those of one manufacturer in one entry."""
    told = {finding.code for finding in context.judgment.findings}
    told |= {entry.code for entry in _find_solar_reports(context)}
    apart = {entry.name.partition(" report")[0] for entry in list_missing_foam_reports(context)}
    apart |= {SYSTEM} if _find_system_section(context) else set()
    by_maker: dict[str, list[str]] = {}
    for of, method in list_pending_tests(context):
        code = next((code for name, code in _OF_COLORS.items() if of.startswith(name)), "")
        if code not in told and method not in apart:
            by_maker.setdefault("finish_source" if code else "eifs_source", []).append(method)
    for maker, methods in by_maker.items():
        single = dict.fromkeys(methods)
        name = f"{'Test reports' if len(single) > 1 else 'Test report'}: {', '.join(single)}"
        yield RequiredDocument(maker, name, ("project",), "SUB-03", "mockup", len(single))


def _find_of_standing(context: DocumentContext) -> Iterator[RequiredDocument]:
    """What is owed for walls that stand: the reports on them, the manufacturer's word, and that they need no drain."""
    yield from _find_old_coatings(context)
    standing, barriers = tuple(list_standing(context)), tuple(list_barriers(context))
    if barriers:
        yield _owe("ATT-08", _LATER, barriers)
    if standing and not _is_released(context):
        yield from (RequiredDocument("eifs_source", name, standing, "ATT-06", at) for name, at in _BY_MAKER.items())


def _is_released(context: DocumentContext) -> bool:
    """Whether a letter of the EIFS manufacturer is listed."""
    project = context.project
    return any(
        project.get(("attachments", mark, "kind")) == "letter"
        and "eifs_source" in map(str, project.get(("attachments", mark, "parties")) or ())
        for mark in project.members.get(("attachments",), ())
    )


def _find_solar_reports(context: DocumentContext) -> Iterator[RequiredDocument]:
    """The reports on the colors, which a design draft does not have to list yet."""
    colors = context.project.members.get(("colors",), ())
    if not colors or not _is_design_draft(context):
        return
    for code, methods in _SOLAR.items():
        if not any(find_reports(context, method) for method in methods):
            yield _owe(code, _CONFIRMED, colors)


def _find_old_coatings(context: DocumentContext) -> Iterator[RequiredDocument]:
    """What a laboratory has not reported of the old walls, and the bond of those that no report shows."""
    project, walls = context.project, context.project.members[("walls",)]
    kinds = {mark: project.get(("walls", mark, "substrate", "kind")) for mark in walls}
    for code, (field, tested) in _TESTED.items():
        untested = [m for m in walls if kinds[m] in tested and not project.get(("walls", m, "substrate", field))]
        if untested:
            yield _owe(code, _LATER, tuple(untested))
    unproved = [
        mark
        for mark in walls
        if project.get(("walls", mark, "substrate", "bond_report")) is None
        and (kinds[mark] in _PULLED or (kinds[mark] == "existing_coated" and not _is_stripped(context, mark)))
    ]
    if unproved:
        yield _owe("ATT-05d", OWED_PAPERS, tuple(unproved))
        yield _owe("ATT-05", _LATER, tuple(unproved))


def _is_stripped(context: DocumentContext, mark: str) -> bool:
    return bool(context.project.get(("walls", mark, "substrate", "coating_removed")))


def _find_letters(context: DocumentContext, sealed: bool) -> Iterator[RequiredDocument]:
    """The letters between the manufacturers and the adhesion report, none of which a design draft has to list."""
    project = context.project
    if sealed:
        yield _owe("SLT-06a", OWED_PAPERS, ("project",))
    papers = project.members.get(("attachments",), ())
    letters = (mark for mark in papers if project.get(("attachments", mark, "kind")) == "letter")
    if any(project.get(("attachments", mark, "parties")) for mark in letters):
        return
    barrier = any(
        project.get(("walls", mark, "wrb", "kind")) not in (None, "none") for mark in project.members[("walls",)]
    )
    codes = ["SUB-06a", *(["SUB-06c"] if barrier else []), *(["SUB-06b", "SUB-06d"] if sealed else [])]
    yield from (_owe(code, OWED_PAPERS, ("project",)) for code in codes)


def _owe(code: str, owed: dict[str, tuple[str, str, str]], subjects: tuple[str, ...]) -> RequiredDocument:
    party, name, before = owed[code]
    return RequiredDocument(party, name, subjects, code, before)


def _entries(finding: Finding) -> Iterator[RequiredDocument]:
    if finding.code in OWED_PAPERS:
        yield _owe(finding.code, OWED_PAPERS, finding.subjects)
        return
    yield from sort_sheets(finding.code, finding.found.split(", "))
