"""What is still open at closeout: what is owed, decided on no nonconformance, or not recorded of a panel."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.layouts import list_laid_out
from specgen.documents.members import span_marks
from specgen.documents.parties import tell_party
from specgen.documents.records.entry_text import tell_disposition
from specgen.documents.records.panel_work import COATS, list_panel_work
from specgen.model.finding import Severity
from specgen.model.record_judgment import MockupCount, Nonconformance
from specgen.model.standard import Step
from specgen.model.status import StepState
from specgen.model.value_text import count
from specgen.recording.mockup_results import count_recorded
from specgen.recording.status import Asked, find_status
from specgen.scheduling.releases import find_release_form

# The document of a closeout.
CLOSEOUT = "D17"
_APPLICATOR = "applicator"
# Any of these in the contract asks for a warranty.
_OF_WARRANTY = ("warranty_years", "warrantors")
_MOST_TOLD = 3


class OpenLine(NamedTuple):
    """A line of what is open: what, who owes it, and the document that lists it; empty for none."""

    what: str
    by: str
    see: str = ""


def list_open(context: DocumentContext) -> tuple[OpenLine, ...]:
    """Everything that keeps a closeout from being complete."""
    return tuple(_gather(context))


def tell_open(lines: tuple[OpenLine, ...]) -> str:
    """`3 items are open: Disposition of 4 nonconformances; ...`: the first of them in words."""
    told = "; ".join(line.what.partition(":")[0] for line in lines[:_MOST_TOLD])
    more = ", ..." if len(lines) > _MOST_TOLD else ""
    return f"{count(len(lines), 'item')} {'is' if len(lines) == 1 else 'are'} open: {told}{more}"


def tell_state(one: Nonconformance) -> str:
    """How a nonconformance stands: what was decided on it, lifted, or for information; empty while nothing was."""
    if one.lifted_by:
        return f"lifted by deviation {one.lifted_by}"
    if one.disposition is not None:
        return tell_disposition(one.disposition)
    return "for information" if one.severity is Severity.NOTE else ""


def _gather(context: DocumentContext) -> Iterator[OpenLine]:
    stops = tuple(context.judgment.of(Severity.STOP))
    if stops:
        yield OpenLine(count(len(stops), "stop") + " against the package", tell_party(context, _APPLICATOR), "D05")
    owed: dict[str, list[str]] = {}
    for item in context.judgment.open_items:
        owed.setdefault(item.owed_by, []).append(item.label)
    for party, labels in owed.items():
        yield OpenLine("; ".join(dict.fromkeys(labels)), tell_party(context, party), "D19")
    waiting = [one for one in context.recorded.nonconformances if not one.is_settled]
    if waiting:
        yield OpenLine(
            f"Disposition of {count(len(waiting), 'nonconformance')}", tell_party(context, "architect"), "D21"
        )
    yield from _list_criteria(context)
    yield from _list_holds(context)
    yield from _list_warranties(context)
    yield from _list_panels(context)


def count_criteria(context: DocumentContext) -> MockupCount:
    """How much of the acceptance form of the mockup is recorded."""
    return count_recorded(context.project, context.standards)


def _list_criteria(context: DocumentContext) -> Iterator[OpenLine]:
    """The criteria of the mockup without a result, each; all of them in one line where none has any."""
    counted, by = context.remember(count_criteria), tell_party(context, _APPLICATOR)
    if not counted.recorded:
        yield OpenLine(f"Results of the mockup: {counted.tell()}", by, "D10")
        return
    for one in counted.missing:
        yield OpenLine(f"Mockup criterion {one.number} not recorded: {one.title}", by, "D10")


def _list_holds(context: DocumentContext) -> Iterator[OpenLine]:
    """The hold points that nobody has released, and those signed by another than the party that accepts."""
    status = find_status(context.project, context.standards, Asked(context.recorded))
    grouped: dict[tuple[Step, str, str], list[str]] = {}
    for face in status.faces if status.at is not None else ():
        for one in face.steps:
            if one.releaser is not None and one.state is not StepState.RELEASED:
                grouped.setdefault((one.step, one.releaser.role, ""), []).append(face.elevation)
        for owed in face.owed:
            if owed.what == "signature" and owed.step.point == "H":
                grouped.setdefault((owed.step, owed.party.role, owed.about), []).append(face.elevation)
    for (step, role, about), faces in grouped.items():
        told = f"{span_marks(dict.fromkeys(faces))}{about and f', {about}'}"
        said = f"Hold point {step.title} not {'signed' if about else 'released'}: {told}"
        yield OpenLine(said, tell_party(context, role), find_release_form(step))


def _list_warranties(context: DocumentContext) -> Iterator[OpenLine]:
    """The warranty that the contract asks for, as long as no signed one is attached."""
    project = context.project
    asked = any(project.is_given(("contract", name)) for name in _OF_WARRANTY)
    attached = [("attachments", mark) for mark in project.members.get(("attachments",), ())]
    warranties = [at for at in attached if project.get((*at, "kind")) == "warranty"]
    if (asked or warranties) and not any(project.get((*at, "signed")) for at in warranties):
        marks = ", ".join(at[-1] for at in warranties)
        said = "Executed warranty" + (
            f": {marks} {'is' if len(warranties) == 1 else 'are'} not signed" if marks else ""
        )
        yield OpenLine(said, tell_party(context, _APPLICATOR), "D18")


def _list_panels(context: DocumentContext) -> Iterator[OpenLine]:
    """The panels of which a coat, its batch or its release is not recorded."""
    work = list_panel_work(context)
    for coat in COATS:
        bare, unnamed, unreleased = list[str](), list[str](), list[str]()
        for layout in list_laid_out(context):
            for panel in layout.panels:
                found = work.get((layout.elevation, panel.mark, coat))
                if found is None:
                    bare.append(panel.mark)
                elif not found.batches:
                    unnamed.append(panel.mark)
                elif not found.releases:
                    unreleased.append(panel.mark)
        yield from _tell(context, f"No {coat} recorded", bare)
        yield from _tell(context, f"No batch of {coat} recorded", unnamed)
        yield from _tell(context, f"No release of {coat} recorded", unreleased)


def _tell(context: DocumentContext, said: str, panels: Iterable[str]) -> Iterator[OpenLine]:
    marks = list(panels)
    if marks:
        told = f"{said}: {count(len(marks), 'panel')}, {span_marks(marks)}"
        yield OpenLine(told, tell_party(context, _APPLICATOR), "D12")
