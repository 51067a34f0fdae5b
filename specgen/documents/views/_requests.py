"""What each party is asked for, by what it is needed before: values by their subject, then documents."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.contract_first import reads_first, tell_review
from specgen.documents.deciding import is_undecided
from specgen.documents.display_values import DisplayValue
from specgen.documents.field_units import add_unit
from specgen.documents.owed_sheets import RequiredDocument
from specgen.documents.parties import find_named
from specgen.documents.question_text import word_question
from specgen.documents.required_documents import list_pending
from specgen.documents.views._asked import DOCUMENTS as ATTACHMENTS
from specgen.documents.views._asked import list_asked, list_early_measures
from specgen.documents.views._document_stages import find_decision, sort_document
from specgen.documents.views._earlier import LAYOUT, OF_LAYOUT
from specgen.documents.views._fields import name_fields, say_fields
from specgen.documents.views._needed import find_held, find_pattern, tell_held
from specgen.documents.views._open_answers import list_open_answers
from specgen.documents.views._proposed import join_figures, propose
from specgen.documents.views._stages import NAMING, SUBMITTAL, find_next_package
from specgen.documents.waiting_rules import awaits_review

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
# A question that names its answers.
_ANSWERS = re.compile("[?:]")
# What is told of each member of a list that has none yet.
_CONTENTS = {
    "elevations": "facing, width, height, wall, color, openings, clearance above grade, light, wind pressures of each",
    "colors": "name, number, light reflectance, solar reflectance and emittance with their reports, tolerance of each",
}
# What of an attachment each rule on all of them is about, as its name says it.
_OF_KIND = {
    "SUB-03": re.compile(r"^(?!Acceptance).*\breports?\b"),
    "SUB-04": re.compile(r"\b(?:reports?|[Ll]etter|in writing)\b"),
}
_OF_RULE = re.compile(r"[A-Z]{3}\b")


class Item(NamedTuple):
    """A value or a document that is asked for; `holds` are the rules, sums and documents that wait for it."""

    text: str
    holds: tuple[str, ...]
    figures: tuple[DisplayValue, ...] = ()  # that hold until somebody confirms or corrects them, with their sources
    names: str = ""  # the role of the party whose name is asked for
    paths: tuple[str, ...] = ()  # dotted, of the fields that it asks for
    number: int = 0  # of documents
    judged: bool = False  # whether its party decides it, whatever the contract tells

    @property
    def told(self) -> str:
        """The item with the figure proposed: `Aesthetic joint tolerance: confirm 1/16 in`."""
        return f"{self.text}: confirm {join_figures(self.figures)}" if self.figures else self.text


class Request(NamedTuple):
    """What a party is asked for in one subject before one work."""

    party: str  # its role
    order: int  # of what it is needed before
    before: str
    subject: str
    items: tuple[Item, ...]


def list_requests(context: DocumentContext) -> tuple[Request, ...]:
    """Every request; the party whose answers settle most comes first, behind any hazard."""
    return context.remember(_gather)


def _gather(context: DocumentContext) -> tuple[Request, ...]:
    told: dict[tuple[str, int, str, str], list[Item]] = defaultdict(list)
    for asked, paths in _group(context).items():
        told[asked] += say(context, paths)
    for document in list_pending(context):
        key = (document.owed_by, *sort_document(context, document), DOCUMENTS)
        told[key].append(Item(name_document(document), _tell_rules(context, document), number=document.number))
    for answer in list_open_answers(context):
        later = find_decision(context) if answer.decides else find_next_package(context)
        stage = NAMING if answer.names else later
        item = Item(answer.question, answer.holds, answer.figures, answer.names, judged=answer.judged)
        told[(answer.party, *stage, DOCUMENTS)].append(item)
    if awaits_review(context):
        # Nobody is asked for what the contract tells, and what departs from it is known before the decision.
        stage = NAMING if reads_first(context) else find_decision(context) if is_undecided(context) else SUBMITTAL
        told[("applicator", *stage, DOCUMENTS)].append(Item(tell_review(context), ("SUB-05",)))
    parties = _order_parties(context, list(told))
    keys = sorted(told, key=lambda key: (parties.index(key[0]), key[1], key[3] == DOCUMENTS))
    return _hold_names(context, tuple(Request(*key, tuple(told[key])) for key in keys))


def name_document(document: RequiredDocument) -> str:
    """A document that is still required with what it is for: `ASTM E84 report of the board (W1, W2)`."""
    places = "" if document.subjects == ("project",) else f" ({', '.join(document.subjects)})"
    return f"{document.name}{places}"


def _tell_rules(context: DocumentContext, document: RequiredDocument) -> tuple[str, ...]:
    """The rule that asks for a document, and those on every document of its kind that wait for one."""
    waiting = find_held(context).get(ATTACHMENTS, set())
    of_kind = [rule for rule, kind in _OF_KIND.items() if rule in waiting and kind.search(document.name)]
    return (_RULE.sub(r"\1", document.code), *of_kind)


def _hold_names(context: DocumentContext, requests: tuple[Request, ...]) -> tuple[Request, ...]:
    """The requests; a party whose name is asked for holds up its measures, and the first of what it is asked for."""
    early = {role: {code[:6]: None for code in codes} for role, codes in list_early_measures(context).items()}
    first: dict[str, Request] = {}
    for request in requests:
        first.setdefault(request.party, request)

    def hold(item: Item, roles: tuple[str, ...] = ()) -> Item:
        if not item.names or item.names in roles or any(_OF_RULE.match(code) for code in item.holds):
            return item
        asked = first[item.names].items if item.names in first else ()
        named = (*roles, item.names)  # a party may be asked for the name of who asks for its own
        held = early.get(item.names) or dict.fromkeys(code for one in asked for code in hold(one, named).holds)
        return item._replace(holds=tuple(held) or item.holds)

    return tuple(request._replace(items=tuple(map(hold, request.items))) for request in requests)


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


def say(context: DocumentContext, paths: list[str]) -> Iterator[Item]:
    """Each field with its unit and the marks that lack it, and what is proposed for it; what it holds up."""
    alike: dict[tuple[str, str, str], list[str]] = defaultdict(list)
    for path in paths:
        (label,) = name_fields(context, [path])
        figures = join_figures(propose(context, path))
        alike[label, _ask(context, path, label, proposed=bool(figures)), figures].append(path)
    for (label, asked, _), those in alike.items():
        (said,) = say_fields({asked: name_fields(context, those)[label]})
        holds = sorted(set().union(*(tell_held(context, one) for one in those), _name_layout(context, those[0])))
        yield Item(
            said, tuple(holds), propose(context, those[0]), names=find_named(context, those[-1]), paths=tuple(those)
        )


def _name_layout(context: DocumentContext, path: str) -> set[str]:
    """The layout, of a draft, for what it is drawn by."""
    return {LAYOUT} if context.is_marked and find_pattern(context, path) in OF_LAYOUT else set()


def _ask(context: DocumentContext, path: str, label: str, *, proposed: bool) -> str:
    """The question of a field, in words that its party can answer; a label asks for itself, and what is proposed."""
    field = context.project.schema.field_at(tuple(path.split(".")))
    if field is None:
        return f"{label}: {_CONTENTS[path]}" if path in _CONTENTS else label
    asked = word_question(context, field, tuple(path.split(".")))
    if proposed:
        return label if not asked or _ANSWERS.search(asked) else asked
    return add_unit(asked or (f"{label}: yes/no" if field.kind == "yes_no" else label), field, context.first)
