"""The values that somebody is asked for: what they are, who supplies them, and before what they are needed."""

from collections import defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from specgen.documents.calculations import list_waiting
from specgen.documents.context import DocumentContext
from specgen.documents.deciding import is_undecided
from specgen.documents.measures import Measure, list_measures
from specgen.documents.owed_sheets import WRITTEN
from specgen.documents.parties import find_name
from specgen.documents.required_documents import list_pending
from specgen.documents.standing_walls import list_built
from specgen.documents.views._document_stages import list_pulled, sort_document
from specgen.documents.views._earlier import bring_forward, find_party
from specgen.documents.views._fields import ask_by_code, find_field
from specgen.documents.views._needed import bears_on_decision, is_needed, list_reported
from specgen.documents.views._stages import (
    BEFORE_MOCKUP,
    CLOSEOUT,
    DECISION,
    HAZARD,
    NAMING,
    PULLS,
    START,
    SUBMITTAL,
    find_next_package,
    list_titles,
    tell_step,
)
from specgen.judging.registry import load_rules
from specgen.model.field import Field, Path, dotted_path, matches
from specgen.model.finding import Severity

_CONTRACTOR = "general_contractor"
# Answered before anybody disturbs an existing wall.
_HAZARDS = ("lead_tested", "lead_found", "asbestos_tested", "asbestos_found")
# The work before which a measure is taken, where that is before the decision or is it.
_EARLY = {"decision on the walls": DECISION, "pull tests": PULLS}
# The steps that come before any work on the walls.
_BEFORE_WORK = ("equipment", "site_conditions")
# Documents that hold values asked of a party, which are then asked for by its name alone.
_HELD_BY = {
    "SUB-01a": (("package", "contractor_review", "*"),),
    "ATT-05d": tuple(("walls", "*", "substrate", f"bond_{told}") for told in ("report", "result", "pulls", "failure")),
    "ATT-07c": (("walls", "*", "wrb", "bond_report"),),
    # Whatever the year of the building, the coating is taken for lead until a laboratory has tested it.
    "ATT-10a": (("walls", "*", "substrate", "lead_tested"), ("building", "built_year")),
    "ATT-10c": (("walls", "*", "substrate", "asbestos_tested"),),
    "SLT-06a": tuple(("sealants", "*", f"reported_{told}") for told in ("conditions", "face")),
    "HEA-01a": (("colors", "*", "solar_reflectance_method"),),
    "HEA-01b": (("colors", "*", "emittance_method"),),
}
# The text on a material is asked for as a document, by the name that this gives the material.
_INSTRUCTIONS: dict[str, Path] = {
    "adhesive": ("walls", "*", "attachment", "instructions"),
    "base coat": ("walls", "*", "base_coat", "instructions"),
    "smoothing": ("smoothing", "instructions"),
    "primer": ("primer", "instructions"),
    "gloss": ("gloss", "instructions"),
}
# The engineer sets it before the wall is pulled.
_LEAST_BOND = ("walls", "*", "substrate", "bond_limit")
_STANDING = ("existing_coated", "existing_brick")
# What the mockup is built with and sprayed with is settled before it, where it is still to be built.
_IN_MOCKUP = ("walls", "smoothing", "primer", "gloss", "spray", "guns", "sealants")
_BY_MOCKUP = (("elevations", "*", "openings"), ("contract", "items", "*"))
# The list of what is submitted is part of a package that is issued.
_REGISTER = ("contract", "items")
# The wall itself is measured, whatever the mockup is built on.
_GAP = ("walls", "*", "substrate", "plane_measured")
# The diameter of a rod is asked for with its kind, as there may be none.
_ROD = ("joints", "*", "rod_diameter")
# What is submitted for the decision on the walls is reviewed as well.
_REVIEW = tuple(("contract", name) for name in ("review_days", "review_day_kind", "resubmittal_days"))
_WIND_SPEED = "site.wind_speed"
_RISK = ("site", "risk_category")
# The list of documents, each of which is asked for by name, and the sections, asked for with the decision on the walls.
DOCUMENTS = "attachments"
_ASKED_APART = (DOCUMENTS, "contract.spec_sections")


class Asked(NamedTuple):
    """A value that is still to be given."""

    path: str  # dotted
    party: str  # the role of who supplies it
    order: int  # of what it is needed before
    before: str  # what it is needed before


class _Stages(NamedTuple):
    """What tells before what a value is needed."""

    owed: frozenset[str]  # paths owed for this submittal; a design draft owes none
    to_build: bool  # whether the mockup is still to be built
    issues_mockup: bool  # whether the submittal in hand is that of the mockup
    steps: dict[str, tuple[str, ...]]  # those that the rules waiting for a value are about, by its path
    titles: dict[str, str]  # of all steps, in the order of the work
    standing: frozenset[str]  # marks of the walls that stand already
    built: frozenset[str]  # marks of the new walls that stand, and can be measured
    pulled: frozenset[str]  # marks of the walls whose bond is still to be tested
    undecided: bool  # whether a wall is still to be decided on

    def find(self, path: str, field: Field, decides: bool) -> tuple[int, str]:
        """A hazard, the decision on a wall, the submittal, or the first step of the work that a value is about.

        A value `decides` that can rule a wall out.
        """
        if field.path[-1] in _HAZARDS:
            return HAZARD
        if field.path in (_LEAST_BOND, _GAP) and path.split(".")[1] in self.standing:
            return PULLS
        if (field.path in _REVIEW or (field.path == _GAP and path.split(".")[1] in self.built)) and self.undecided:
            return DECISION
        if decides:
            return PULLS if _is_pulled(self.pulled, field.path, path.split(".")) else DECISION
        if path in self.owed or (field.path[:2] == _REGISTER and self.issues_mockup):
            return SUBMITTAL
        if field.path == _GAP:
            return tell_step(self.titles, "substrate")
        return min(self._find_step(path, field), self._find_mockup(field))

    def _find_mockup(self, field: Field) -> tuple[int, str]:
        """The mockup, for what is built into it or, short of a rule, decides a wall; else the end of the work."""
        shown = field.path[0] in _IN_MOCKUP or field.path[:3] in _BY_MOCKUP or field.ring == "verdict"
        return tell_step(self.titles, "mockup") if shown and self.to_build else CLOSEOUT

    def _find_step(self, path: str, field: Field) -> tuple[int, str]:
        """The first step of the work that a value is about."""
        order, steps = list(self.titles), self.steps.get(path, ())
        if field.ring == "mockup":
            return tell_step(self.titles, "mockup")
        if field.ring == "closeout" and not steps:
            return CLOSEOUT
        if field.path == _ROD:
            return tell_step(self.titles, "sealant")
        if not steps or not set(steps).isdisjoint(_BEFORE_WORK):
            return START
        return tell_step(self.titles, min(steps, key=order.index))


def list_asked(context: DocumentContext) -> list[Asked]:
    """Every open item, every value that a rule or a sum waits for, and every value in brackets, each once."""
    return context.remember(_gather_asked)


def list_held(context: DocumentContext) -> list[Asked]:
    """The values that stand in a document still pending, and are asked of its party by the name of that document."""
    held = _list_held(context)
    return [entry for entry in context.remember(_gather_values) if _is_held(context, entry.path, held)]


def _gather_asked(context: DocumentContext) -> list[Asked]:
    held = _list_held(context)
    found = [entry for entry in context.remember(_gather_values) if not _is_held(context, entry.path, held)]
    owed = [(entry.party, entry.order, entry.before) for entry in found]
    owed += [(document.owed_by, *sort_document(context, document)) for document in list_pending(context)]
    owed += [(one.by, *_EARLY[one.before]) for one in _list_early(context)]
    if context.is_marked and is_undecided(context):
        owed.append((_CONTRACTOR, *DECISION))  # it reviews what is submitted for the decision
    return _ask_names(context, found, owed)


def list_early_measures(context: DocumentContext) -> dict[str, list[str]]:
    """The codes of what each party does before the decision on the walls, by its role."""
    codes: dict[str, list[str]] = defaultdict(list)
    for one in _list_early(context):
        codes[one.by] += one.codes
    return codes


def _list_early(context: DocumentContext) -> list[Measure]:
    measures = list_measures(context.project, context.judgment.of(Severity.CAUTION))
    return [one for one in measures if one.before in _EARLY]


def _gather_values(context: DocumentContext) -> list[Asked]:
    stages = context.remember(_find_stages)
    found = []
    for path in ask_by_code(context, _spread(context, _find_paths(context))):
        field = find_field(context, path)
        if field is not None and path not in _ASKED_APART:
            found.append(Asked(path, find_party(context, field), *_find_stage(context, stages, path)))
    # What is read by nothing is not asked for; before the other documents are there, they are not known to lack it.
    return [one for one in found if not context.rest.known or _names_party(one.path) or is_needed(context, one.path)]


def _find_stage(context: DocumentContext, stages: _Stages, dotted: str) -> tuple[int, str]:
    field = find_field(context, dotted)
    assert field is not None
    return bring_forward(context, dotted, stages.find(dotted, field, bears_on_decision(context, dotted)))


def _names_party(dotted: str) -> bool:
    return dotted.startswith("parties.")


def _list_held(context: DocumentContext) -> list[Path]:
    """The patterns of the fields that the pending documents hold."""
    pending = list_pending(context)
    asked = [entry.name.removeprefix(WRITTEN) for entry in pending if entry.name.startswith(WRITTEN)]
    materials = {material for names in asked for material in names.split(", ")}
    of_materials = [pattern for name, pattern in _INSTRUCTIONS.items() if name in materials]
    return [*of_materials, *(pattern for entry in pending for pattern in _HELD_BY.get(entry.code, ()))]


def _is_held(context: DocumentContext, path: str, held: list[Path]) -> bool:
    field = find_field(context, path)
    return field is not None and any(matches(one, field.path) for one in held)


def _ask_names(context: DocumentContext, found: list[Asked], owed: list[tuple[str, int, str]]) -> list[Asked]:
    """The values, and the names of the parties that owe something: before all requests, or the later work it is for."""
    names = {entry.path: entry for entry in found if _names_party(entry.path) and entry.order <= DECISION[0]}
    waiting, early = sorted(owed), max(DECISION, find_next_package(context))
    while waiting:
        role, order, before = waiting.pop(0)
        path = find_name(context, role)
        field = context.project.schema.field_at(path) if path else None
        if field is None or context.project.get(path) is not None:
            continue
        if order <= early[0]:
            order, before = min((order, before), NAMING)
        known = names.get(dotted_path(path))
        if known is None or order < known.order:
            # Whoever is asked first is named before, and whoever names a party no later.
            names[dotted_path(path)] = Asked(dotted_path(path), field.owed_by, order, before)
            waiting = sorted([*waiting, (field.owed_by, order, before)])
    return [*(entry for entry in found if entry.path not in names), *names.values()]


def tell_stage(context: DocumentContext, path: Path) -> tuple[str, str]:
    """The role of who supplies a value, and before what it is needed, as the open items ask for it."""
    dotted = dotted_path(path)
    field = find_field(context, dotted)
    assert field is not None
    return field.owed_by, _find_stage(context, context.remember(_find_stages), dotted)[1]


def _find_paths(context: DocumentContext) -> Iterator[str]:
    judgment = context.judgment
    yield from (item.path for item in judgment.open_items)
    yield from (need for clause in judgment.not_judged for need in clause.needs)
    yield from (path for path, _ in context.rest.asked)
    yield from list_waiting(context)
    yield from (dotted_path(path) for path in list_reported(context) if _is_lacking(context, path))


def _spread(context: DocumentContext, paths: Iterator[str]) -> Iterator[str]:
    """The paths; what is asked of one wall, of each wall that lacks it; the risk category beside the wind speed."""
    project = context.project
    for dotted in paths:
        path = tuple(dotted.split("."))
        yield dotted
        if path[0] == "walls" and len(path) > 2 and project.schema.field_at(path) is not None:
            others = (("walls", mark, *path[2:]) for mark in project.members[("walls",)])
            yield from (dotted_path(one) for one in others if _is_lacking(context, one))
        if dotted == _WIND_SPEED and project.get(_RISK) is None:
            yield dotted_path(_RISK)


def _is_lacking(context: DocumentContext, path: Path) -> bool:
    """Whether a value is absent that applies, of a member that there is: the second mesh layer of a wall with two."""
    project = context.project
    members = (depth for depth in range(1, len(path)) if project.schema.node(path[:depth]).collection is not None)
    there = all(path[depth] in project.members.get(path[:depth], ()) for depth in members)
    return there and project.get(path) is None and project.applies(path)


def _find_stages(context: DocumentContext) -> _Stages:
    judgment, purpose = context.judgment, context.project.value(("package", "purpose"))
    of_rule = {rule.code: rule.steps for rule in load_rules()}
    steps: dict[str, tuple[str, ...]] = defaultdict(tuple)
    for clause in judgment.not_judged:
        for need in clause.needs:
            steps[need] += of_rule[clause.rule]
    return _Stages(
        frozenset(item.path for item in judgment.open_items if purpose != "design_draft"),
        purpose in BEFORE_MOCKUP,
        purpose == "mockup_submittal",
        steps,
        list_titles(context),
        frozenset(filter(lambda mark: _stands(context, mark), context.project.members[("walls",)])),
        list_built(context),
        list_pulled(context),
        is_undecided(context),
    )


def _is_pulled(pulled: frozenset[str], pattern: Path, path: list[str]) -> bool:
    """Whether a value bears on a wall that is to be pulled: its own, or one of the project."""
    return path[1] in pulled if pattern[0] == "walls" else bool(pulled)


def _stands(context: DocumentContext, mark: str) -> bool:
    return context.project.get(("walls", mark, "substrate", "kind")) in _STANDING
