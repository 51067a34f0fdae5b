"""What each party is asked for, by what it is needed before: values by their subject, then documents."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.required_documents import list_pending
from specgen.documents.views._asked import DECISION, SUBMITTAL, list_asked, sort_document
from specgen.documents.views._fields import find_field, name_fields, say_fields
from specgen.documents.views._open_answers import list_open_answers
from specgen.documents.waiting_rules import awaits_review
from specgen.model.field import dotted_path
from specgen.model.figure_text import fill_figures

# The subject of a value by the section that it stands in.
_SUBJECTS = {
    "Equipment": ("compressor", "guns", "hoses", "instruments", "spray", "tank"),
    "Coats": ("coating_system", "finish", "gloss", "panel_limits", "primer", "smoothing"),
    "Colors and gloss": ("colors", "gloss_target"),
    "Walls": ("walls", "aesthetic_joint"),
    "Elevations": ("details", "elevations"),
    "Joints and sealants": ("joints", "sealants"),
    "Mockup": ("mockup",),
    "Schedule": ("schedule",),
    "People, access, and safety": ("access", "crews", "people", "protection", "safety", "shade", "weather"),
    "Project": ("building", "climate", "code", "contract", "package", "parties", "project", "site"),
}
_OF_SECTION = {section: subject for subject, sections in _SUBJECTS.items() for section in sections}
DOCUMENTS = "Documents"
_RULE = re.compile(r"([A-Z]{3}-\d\d)[a-z]")
_REVIEW = "Review of the specification: paragraphs met, and deviations"
# The figures that the procedure goes by until somebody confirms or corrects them.
_PROPOSED = {
    "finish.flatness_long": ("flatness.long",),
    "finish.flatness_short": ("flatness.short",),
    "aesthetic_joint.tolerance": ("aesthetic_joint.tolerance",),
    "primer.most_humidity": ("weather.humidity",),
    "gloss.most_humidity": ("weather.humidity",),
    "spray.strainer_mesh": ("spray.strainer_least", "spray.strainer_most"),
    "sealants.*.field_tests": ("sealant.field_tests",),
    "weather.max_spray_wind": ("weather.wind_usual",),
    "walls.*.substrate.bond_limit": ("substrate.bond",),
}


class Request(NamedTuple):
    """What a party is asked for in one subject before one work."""

    party: str  # its role
    order: int  # of what it is needed before
    before: str
    subject: str
    items: tuple[str, ...]
    holds: tuple[tuple[str, ...], ...]  # for each item, the codes of the rules that it holds up


Told = tuple[str, tuple[str, ...]]  # an item and what it holds up


def list_requests(context: DocumentContext) -> tuple[Request, ...]:
    """Every request; the party whose answers settle most comes first, behind any hazard."""
    return context.remember(_gather)


def _gather(context: DocumentContext) -> tuple[Request, ...]:
    told: dict[tuple[str, int, str, str], list[Told]] = defaultdict(list)
    held = find_held(context)
    for asked, paths in _group(context).items():
        told[asked] += say(context, paths, held)
    for document in list_pending(context):
        places = "" if document.subjects == ("project",) else f" ({', '.join(document.subjects)})"
        key = (document.owed_by, *sort_document(context, document), DOCUMENTS)
        told[key].append((f"{document.name}{places}", (_RULE.sub(r"\1", document.code),)))
    told_early = list(list_open_answers(context))
    if told_early:
        told[("architect", *DECISION, DOCUMENTS)] += told_early
    if awaits_review(context):
        told[("applicator", *SUBMITTAL, DOCUMENTS)].append((_REVIEW, ("SUB-05",)))
    parties = _order_parties(context, list(told))
    keys = sorted(told, key=lambda key: (parties.index(key[0]), key[1], key[3] == DOCUMENTS))
    return tuple(Request(*key, *map(tuple, zip(*told[key], strict=True))) for key in keys)


def find_held(context: DocumentContext) -> dict[str, set[str]]:
    """The codes of the rules that wait for a value, by its dotted path."""
    held: dict[str, set[str]] = defaultdict(set)
    for clause in context.judgment.not_judged:
        for need in clause.needs:
            held[need].add(clause.rule)
    for item in context.judgment.open_items:
        held[item.path].update(code[:6] for code in item.holds_up)
    return held


def _group(context: DocumentContext) -> dict[tuple[str, int, str, str], list[str]]:
    """The paths of the values by party, by when they are needed, and by subject."""
    grouped: dict[tuple[str, int, str, str], list[str]] = defaultdict(list)
    for entry in list_asked(context):
        subject = _OF_SECTION.get(entry.path.partition(".")[0], "Project")
        grouped[(entry.party, entry.order, entry.before, subject)].append(entry.path)
    return grouped


def _order_parties(context: DocumentContext, keys: list[tuple[str, int, str, str]]) -> list[str]:
    held = Counter(need for clause in context.judgment.not_judged for need in clause.needs)
    weight: Counter[str] = Counter()
    for entry in list_asked(context):
        weight[entry.party] += held[entry.path]
    first = {key[0]: min(order for name, order, *_ in keys if name == key[0]) for key in keys}
    return sorted(first, key=lambda party: (first[party] > 0, -weight[party]))


def say(context: DocumentContext, paths: list[str], held: dict[str, set[str]]) -> Iterator[Told]:
    """Each field with the marks that lack it, and the figure proposed for it; what it holds up."""
    names = name_fields(context, paths)
    labeled: dict[str, list[str]] = defaultdict(list)
    for path in paths:
        labeled[next(iter(name_fields(context, [path])))].append(path)
    for label, marked in names.items():
        path = labeled[label][-1]
        (said,) = say_fields({_ask(context, path, label): marked})
        proposed = propose(context, path)
        rules = sorted(set().union(*(held.get(one, ()) for one in labeled[label])))
        yield f"{said}: confirm {proposed}" if proposed else said, tuple(rules)


def _ask(context: DocumentContext, path: str, label: str) -> str:
    """The question of a field, in words that its party can answer; a label asks for itself."""
    field = context.project.schema.field_at(tuple(path.split(".")))
    if field is None:
        return label
    asked = fill_figures(context.tell(field.asks), context.figure)
    return asked or (f"{label}: yes/no" if field.kind == "yes_no" else label)


def propose(context: DocumentContext, path: str) -> str:
    """`1/8 in`, `60 to 100`; empty for a value that nothing stands in for."""
    field = find_field(context, path)
    rows = _PROPOSED.get(dotted_path(field.path), ()) if field else ()
    return " to ".join(context.limit(row).text for row in rows)
