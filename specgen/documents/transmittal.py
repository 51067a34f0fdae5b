"""What the transmittal says of the package: whom it goes to, what it holds, and what is asked of the reviewer."""

import datetime
from typing import Any, NamedTuple

from specgen.computing.time.earliest_start import is_ordered_behind_review
from specgen.documents.context import DocumentContext
from specgen.documents.deviations import name_paragraphs, say_approval, tell_longer_review
from specgen.documents.display_values import DisplayValue
from specgen.documents.members import span_marks
from specgen.documents.register import ITEMS, find_documents, is_government, make_register
from specgen.model.absence import Absent
from specgen.model.dates import days_after
from specgen.model.problem import Refused
from specgen.model.value_text import count, long_date, words

_SECTIONS = ("contract", "spec_sections")
_ACTIONS = {
    "design_draft": "None; for information and comment",
    "mockup_submittal": "Review and action on this package",
    "work_submittal": "Review and action on this package",
    "resubmittal": "Review and action on this revision",
    "closeout": "Review and acceptance of the closeout documents",
}
_BEFORE = {
    "mockup_submittal": " before the mockup",
    "work_submittal": " before the work",
    "resubmittal": " before the work",
}
_ON_DRAFT = "None on this draft. With the submittal: "
# The descriptions of a government contract: UFGS 01 33 00, 1.2.1.
DESCRIPTIONS = {
    "SD-01": "Preconstruction Submittals",
    "SD-02": "Shop Drawings",
    "SD-03": "Product Data",
    "SD-04": "Samples",
    "SD-05": "Design Data",
    "SD-06": "Test Reports",
    "SD-07": "Certificates",
    "SD-08": "Manufacturer's Instructions",
    "SD-09": "Manufacturer's Field Reports",
    "SD-10": "Operation and Maintenance Data",
    "SD-11": "Closeout Submittals",
}


def cite_procedure(context: DocumentContext) -> dict[str, DisplayValue]:
    """The title of the section on submittals, by what is taken from it, each with the letter of its text."""
    told = {"types": "guide_descriptions", "register": "guide_register"}
    sources = context.standards.sources
    return {
        name: DisplayValue("Submittal Procedures", "Submittal Procedures", sources[row]) for name, row in told.items()
    }


def tell_deviations(context: DocumentContext) -> list[Any]:
    """`Yes: DV1 from 09 96 00 2.4.A, not approved; see D03`; whether there can be any is known of a specification."""
    project = context.project
    marks = project.members.get(("deviations",), ())
    if marks:
        told = (f"{mark} from {name_paragraphs(project, mark)}, {say_approval(project, mark)}" for mark in marks)
        return [f"Yes: {'; '.join(told).replace(' from ,', ',')}; see D03"]
    if project.members.get(("contract", "demands")):
        return ["None"]
    if not project.members.get(_SECTIONS):
        return ["Not known: no specification received"]
    if context.is_marked:
        return ["Not known: ", DisplayValue("[Review of the specification]", open=True)]
    return ["Not known: specification not reviewed"]


def tell_items(context: DocumentContext) -> str:
    """`12 items of the register, D03: 7 action, 4 informational, 1 closeout`; by SD number where items have those."""
    register = make_register(context)
    if not register.rows:
        return ""
    name = "sd_type" if is_government(context) else "group"
    place = next(number for number, column in enumerate(register.columns) if column.holds == name)
    kinds: dict[str, int] = {}
    for kind in sorted((str(row.cells[place]) for row in register.rows if row.cells[place]), key=_rank):
        kinds[kind] = kinds.get(kind, 0) + 1
    told = ", ".join(f"{number} {kind if name == 'sd_type' else kind.lower()}" for kind, number in kinds.items())
    return f"{count(len(register.rows), 'item')} of the register, D03{': ' if told else ''}{told}"


def _rank(kind: str) -> tuple[int, str]:
    order = ("Action", "Informational", "Closeout")
    return (order.index(kind) if kind in order else 0, kind)


def tell_sections(context: DocumentContext) -> list[Any]:
    """Each section with its title and the paragraphs of its items, `07 24 00 EIFS: 1.3.A`; open if there is none."""
    project = context.project
    paragraphs = list_paragraphs(context)
    parts: list[Any] = []
    for member in project.members.get(_SECTIONS, ()):
        number, title = (context.display((*_SECTIONS, member, name)) for name in ("number", "title"))
        asked = paragraphs.pop(str(number), ())
        parts += [*(["; "] if parts else []), number, " ", title, *([f": {', '.join(asked)}"] if asked else [])]
    for section, asked in paragraphs.items():
        parts += [*(["; "] if parts else []), f"{section}: {', '.join(asked)}"]
    return parts or [context.ask(_SECTIONS)]


def list_paragraphs(context: DocumentContext) -> dict[str, tuple[str, ...]]:
    """The paragraphs of the items of the register, by section."""
    register = make_register(context)
    holds = [column.holds for column in register.columns]
    found: dict[str, tuple[str, ...]] = {}
    for row in register.rows:
        section, paragraph = (row.cells[holds.index(name)] for name in ("section", "paragraph"))
        if section is not None:
            found[str(section)] = (*found.get(str(section), ()), *([str(paragraph)] if paragraph else []))
    return {section: tuple(dict.fromkeys(told)) for section, told in found.items()}


def tell_action(context: DocumentContext) -> list[Any]:
    """What the reviewer is asked to do, a draft for nothing yet, and the review time of the contract."""
    project = context.project
    purpose = str(project.value(("package", "purpose")))
    action = _ACTIONS[purpose]
    if purpose == "design_draft":
        return [action]
    before, governing = _BEFORE.get(purpose, ""), find_governing_day(context)
    if before and governing:
        before = f" by {long_date(governing.day)}, in time for the {governing.waits}"
    asked = [f"{_ON_DRAFT}{action[:1].lower()}{action[1:]}{before}" if context.is_marked else f"{action}{before}"]
    revised = bool(project.get(("package", "revision")))
    name = "resubmittal_days" if revised and project.is_given(("contract", "resubmittal_days")) else "review_days"
    days, kind = (context.display(("contract", one)) for one in (name, "review_day_kind"))
    # A number of days prints with its unit, which the kind of day stands within.
    said = f"{days.raw} {words(str(kind.raw))} day{'' if days.raw == 1 else 's'}" if days and kind else ""
    time: list[Any] = [said] if said else [days, ", ", kind]
    return [*asked, ". Review time of the contract: ", *time, *([] if revised else _tell_longer(context))]


class GoverningDay(NamedTuple):
    """The day by which the review must be over, and what waits for it."""

    day: datetime.date
    waits: str  # `order of the sample color`


def find_governing_day(context: DocumentContext) -> GoverningDay | None:
    """The order of the sample color behind the review, else the start of the mockup; None where both are past."""
    try:
        working = context.resolve((), "earliest-start")
    except (Absent, Refused):
        return None
    project = context.project
    days = {row.symbol: row.value for row in (*working.inputs, *working.steps)}
    issued = project.get(("package", "date"))
    if project.get(("mockup", "accepted_on")) or issued is None:
        return None
    ordered = [("o", "order of the sample color")] if is_ordered_behind_review(days) else []
    submitted = project.value(("schedule", "submit_on"))
    waiting = [
        (days_after(submitted, round(days[at])), waits) for at, waits in (*ordered, ("M", "start of the mockup"))
    ]
    return next((GoverningDay(*one) for one in waiting if one[0] > issued), None)


def list_items_of(context: DocumentContext, group: str) -> str:
    """The marks of the items of the register in a group, `action` or `informational`, as spans."""
    items = (row.mark for row in make_register(context).rows)
    return span_marks(mark for mark in items if context.project.get((*ITEMS, mark, "group")) == group)


def _tell_longer(context: DocumentContext) -> list[str]:
    """`; 21 days with deviation DV1; resubmittal, 14 days`: the other review times."""
    longer, again = (context.project.get(("contract", name)) for name in ("variation_review_days", "resubmittal_days"))
    told = tell_longer_review(context.project)
    with_deviations = [f"; {count(longer, 'day')}{told}"] if longer and told else []
    return with_deviations + ([f"; resubmittal, {count(again, 'day')}"] if again else [])


def tell_answered(context: DocumentContext, name: str) -> str:
    """The marks of the items of the register that a document answers, those that follow each other as a span."""
    return span_marks(context.remember(_gather_answered).get(name, ()))


def _gather_answered(context: DocumentContext) -> dict[str, list[str]]:
    """The marks of the items by the documents that answer them."""
    answered: dict[str, list[str]] = {}
    for row in make_register(context).rows:
        for name in find_documents(context, row.mark):
            answered.setdefault(name, []).append(row.mark)
    return answered


def tell_variation(context: DocumentContext, mark: str) -> str:
    """`Yes` or `No`; `Not known` of an item as long as neither deviations nor paragraphs read are given."""
    given = context.project.members
    if not given.get(("deviations",)) and not given.get(("contract", "demands")):
        return "Not known"
    return "Yes" if _is_variation(context, mark) else "No"


def _is_variation(context: DocumentContext, mark: str) -> bool:
    """Whether an item is answered by a deviation, or its paragraph is one that a deviation answers."""
    project = context.project
    section, paragraph = (project.get((*ITEMS, mark, name)) for name in ("section", "paragraph"))
    named = {str(paragraph), f"{section} {paragraph}"}
    deviations = project.members.get(("deviations",), ())
    answered = any(named & set(project.get(("deviations", one, "answers")) or ()) for one in deviations)
    return answered or (bool(deviations) and "D03" in find_documents(context, mark))
