"""The note at the head of every document of a draft."""

import dataclasses
from collections.abc import Callable, Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.drafts import ANSWER
from specgen.documents.measures import list_measures
from specgen.documents.numbering import list_values
from specgen.documents.parties import find_contractor
from specgen.documents.plain_text import plain_text
from specgen.documents.required_documents import count_pending, list_pending
from specgen.documents.views.not_evaluated import count_rules_of_walls
from specgen.documents.views.open_items import count_values
from specgen.documents.views.to_verify import count_to_tick
from specgen.judging.owners import looks_for_document
from specgen.model.block import Block, Box, Document, Note, ReviewBoxes, Strong, Text
from specgen.model.finding import Severity
from specgen.model.value_text import count

_DRAFT = (Text("Draft"),)
_ASKED_NOTHING = "For information; not submitted for review."
_VERIFIED, _ASKED_FIGURES = "D05", "Answers to the figures to verify requested."
_DECIDED_ON, _FOR_DECISION = "D02", "For the decision on the walls; not submitted for review."
# These tell of the whole draft, and ask for answers.
_OPEN_ITEMS = "D19"
_TELL_WHOLE = (ANSWER, _OPEN_ITEMS)
_NONE = "No exception that stops the work"
# What a report is about before which nobody touches a wall that stands, by the clause that asks for it.
_HAZARDS = {"ATT-10a": "lead", "ATT-10c": "asbestos"}


def count_brackets(document: Document) -> int:
    """The number of values still to be given in a document."""
    return sum(value.open for value in list_values(document.blocks))


def mark_draft(document: Document, context: DocumentContext, whole: bool = False) -> Document:
    """The document marked as a draft, with what holds the work.

    One that tells of the `whole` draft, as its answer does, counts what it waits for.
    """
    whole = whole or document.id in _TELL_WHOLE
    held, owed = _tell_held(document, context, whole), _tell_open(document, context, whole)
    sentences = [_tell_asked(document, context), *held, *owed]
    note: Block = Note((Strong((Text("Draft."),)), Text("".join(f" {said}" for said in sentences if said))))
    facts = tuple((label, _TOLD.get(label, str)(text)) for label, text in document.facts)
    left, right = document.running
    return dataclasses.replace(
        document,
        blocks=(note, *map(_tell_boxes, document.blocks)),
        facts=facts,
        running=(left, right.replace("Revision ", "Draft of revision ")),
        draft=True,
        digests=("", *document.digests),
        changed=frozenset(place + 1 for place in document.changed),
    )


def _tell_asked(document: Document, context: DocumentContext) -> str:
    """What the reader of a document is asked to do: nothing, save to answer open items, and figures to verify."""
    if document.id not in _TELL_WHOLE or not (count_pending(context) or context.judgment.open_items):
        asked_here = document.id == _VERIFIED and count_to_tick(context)
        return _FOR_DECISION if document.id == _DECIDED_ON else _ASKED_FIGURES if asked_here else _ASKED_NOTHING
    contractor = find_contractor(context)
    asked = f"; questions to owner, architect, and engineer by RFI, documents by submittal, through {contractor}"
    route = asked if contractor else ""
    figures = f" and the figures in {_VERIFIED}" if count_to_tick(context) else ""
    return f"No review requested. Answers to {_OPEN_ITEMS}{figures} requested{route}."


def _tell_boxes(block: Block) -> Block:
    """The boxes of a review with the draft in place of the revision that it is not yet."""
    if not isinstance(block, ReviewBoxes):
        return block
    return dataclasses.replace(block, stated=tuple(map(_tell_box, block.stated)))


def _tell_box(box: Box) -> Box:
    if box.table is None:
        return box
    rows = tuple((_DRAFT, date, (Text(_tell_purpose(plain_text(said))),)) for _, date, said in box.table.rows)
    return dataclasses.replace(box, table=dataclasses.replace(box.table, rows=rows))


def _tell_purpose(text: str) -> str:
    """`Draft of submittal, mockup`; a design draft is called so already."""
    return text if "draft" in text else f"Draft of {text[:1].lower()}{text[1:]}"


def _tell_revision(text: str) -> str:
    """`Draft of revision 0`: a draft uses up no revision."""
    return f"Draft of revision {text}"


# What the title block of a draft says otherwise.
_TOLD: dict[str, Callable[[str], str]] = {"Purpose": _tell_purpose, "Revision": _tell_revision}


def _tell_held(document: Document, context: DocumentContext, whole: bool) -> Iterator[str]:
    """The exceptions that stop the work, as D05 lists them, and the hazard that does; of the whole, that none."""
    stops = _count_standing(context)
    if stops:
        yield f"{tell_stops(stops)}, {'listed below' if document.id == 'D05' else 'see D05'}."
    elif whole and _is_free(context):
        yield f"{_NONE}."
    yield tell_held_work(context)


def _is_free(context: DocumentContext) -> bool:
    """Whether nothing stops the work; that nothing does so far is no comfort while rules are not evaluated."""
    return not (_count_standing(context) or tell_held_work(context) or context.judgment.not_judged)


def _tell_open(document: Document, context: DocumentContext, whole: bool) -> Iterator[str]:
    """Where the open items are listed; of the whole, how many documents are required, and rules not evaluated."""
    if whole:
        required, rules = count_pending(context), count_rules_of_walls(context)
        where = "listed below" if document.id == _OPEN_ITEMS else f"see {_OPEN_ITEMS}"
        yield f"{count(required, 'document')} still required, {where}." if required else ""
        yield f"{count(rules, 'rule')} on the walls not evaluated, see D02." if rules else ""
    else:
        yield "Values in brackets are open, see D19." if count_brackets(document) else "Open items: D19."


def _count_owed(context: DocumentContext) -> Iterator[str]:
    """`31 documents still required`, `28 rules on the walls not evaluated`, `197 values asked for ...`: as pages do."""
    required, rules, values = count_pending(context), count_rules_of_walls(context), count_values(context)
    if required:
        yield f"{count(required, 'document')} still required"
    if rules:
        yield f"{count(rules, 'rule')} on the walls not evaluated"
    if values:
        yield f"{count(values, 'value')} asked for in {_OPEN_ITEMS}"


def tell_draft(context: DocumentContext) -> str:
    """The same in one line: `1 exception that stops the work; 31 documents still required; 28 rules on ...`."""
    stops, held = _count_standing(context), tell_held_work(context).rstrip(".")
    told = tell_stops(stops) if stops else _NONE if _is_free(context) else ""
    said = (f"{part[:1].lower()}{part[1:]}" for part in (told, held))
    return "; ".join(filter(None, (*said, *_count_owed(context))))


def tell_held_work(context: DocumentContext) -> str:
    """`No work on W1 before the asbestos report, nor on W2 before the lead and asbestos reports.`; empty for none."""
    hazards = {entry.code: entry.subjects for entry in list_pending(context) if entry.before == "hazard"}
    walls: dict[tuple[str, ...], list[str]] = {}
    for mark in context.judgment.walls:
        needed = tuple(hazard for code, hazard in _HAZARDS.items() if mark in hazards.get(code, ()))
        walls.setdefault(needed, []).append(mark)
    told = [f"on {', '.join(marks)} before the {_name_reports(needed)}" for needed, marks in walls.items() if needed]
    return f"No work {', nor '.join(told)}." if told else ""


def _name_reports(hazards: tuple[str, ...]) -> str:
    """`lead and asbestos reports`."""
    return f"{' and '.join(hazards)} {'reports' if len(hazards) > 1 else 'report'}"


def tell_standing(context: DocumentContext) -> str:
    """`2 exceptions that stop the work`: those that stand against the package, documents still required left out."""
    return tell_stops(_count_standing(context))


def _count_standing(context: DocumentContext) -> int:
    """How many exceptions D05 lists, a row each."""
    findings = (one for one in context.judgment.of(Severity.STOP) if not looks_for_document(one))
    return len(list_measures(context.project, findings))


def tell_stops(stops: int) -> str:
    """`1 exception that stops the work`, `2 exceptions that stop the work`."""
    return f"{count(stops, 'exception')} that {'stops' if stops == 1 else 'stop'} the work"
