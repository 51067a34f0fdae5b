"""Who owes what on an elevation: releases, inspections, signatures, corrections, entries."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import partial

from specgen.model.project import Project
from specgen.model.status import AreaStatus, Owed, Party, StepState, StepStatus
from specgen.model.value_text import words
from specgen.recording.round_state import NO_END
from specgen.recording.site_entries import FaceEntries, Verdict
from specgen.recording.step_record import StepRecord
from specgen.scheduling.releases import has_inspector, name_inspector, name_party

# What is inspected after a step though it is no step itself.
_BESIDE = {"rasp": ("board_straightedge", "sight_lines")}
_OVER = (StepState.WAITS, StepState.RELEASED, StepState.DONE)


@dataclass(frozen=True)
class Parties:
    """Who does the work, and who inspects it; no inspector where the project has none."""

    applicator: Party
    inspector: Party
    architect: Party
    is_inspected: bool


def find_parties(project: Project) -> Parties:
    """The parties of a project that owe entries and inspections."""
    inspected = has_inspector(project)
    return Parties(
        Party("applicator", name_party(project, "applicator")),
        Party("inspector" if inspected else "architect", name_inspector(project)),
        Party("architect", name_party(project, "architect")),
        inspected,
    )


def list_owed(
    elevation: str,
    steps: Sequence[StepStatus],
    records: Sequence[StepRecord],
    face: FaceEntries,
    parties: Parties,
    at: datetime,
) -> tuple[Owed, ...]:
    """What is owed on an elevation, in the order of the work."""
    owed: list[Owed] = []
    for status, record in zip(steps, records, strict=True):
        owed += _list_for_areas(elevation, status, record, parties, at)
        owed += _list_inspections(elevation, status, record, face, parties)
    return tuple(owed)


def _list_for_areas(
    elevation: str, status: StepStatus, record: StepRecord, parties: Parties, at: datetime
) -> Iterator[Owed]:
    for area in status.areas:
        make = partial(Owed, step=status.step, elevation=elevation)
        releaser = status.releaser or parties.inspector
        unsigned = [remark.text for remark in area.remarks if remark.text.endswith(" missing")]
        if area.state is StepState.FAILED and not status.step.releases:
            yield make(parties.applicator, "correction", about=area.area)
        if area.pending:
            yield make(parties.architect, "disposition", about=area.area)
        if _is_signed_by_another(status, area, parties):
            yield make(releaser, "signature", about=_join(area.area, f"signed so far by {area.released.by}"))  # type: ignore[union-attr]
        for text in unsigned:
            yield make(releaser, "signature", about=_join(area.area, "" if text.startswith("signature") else text))
        if status.releaser and not unsigned and area.state in (StepState.WAITS, StepState.DRIES, StepState.FAILED):
            failed = area.state is StepState.FAILED
            since = area.until if area.until is not None and area.until > at else None
            yield make(releaser, "release", about=_join(area.area, "after correction" if failed else ""), since=since)
        if not status.step.releases and _lacks_end(area, record, at):
            yield make(parties.applicator, "entry", about=_join(area.area, "ending time"))


def _is_signed_by_another(status: StepStatus, area: AreaStatus, parties: Parties) -> bool:
    """Whether the inspector signed what another party has to accept."""
    by, releaser = area.released.by if area.released else "", status.releaser
    if not by or releaser is None or releaser.role == parties.inspector.role:
        return False
    return by.casefold() in parties.inspector.name.casefold()


def _lacks_end(area: AreaStatus, record: StepRecord, at: datetime) -> bool:
    """Whether an ending time is missing: a later step has begun, or the day of the work is over."""
    if any(remark.text == NO_END for remark in area.remarks):
        return True
    begun = area.began
    return (
        area.state is StepState.UNDER_WAY and area.ended is None and begun is not None and begun.at.date() < at.date()
    )


def _join(*parts: str) -> str:
    return ", ".join(part for part in parts if part)


def _list_inspections(
    elevation: str, status: StepStatus, record: StepRecord, face: FaceEntries, parties: Parties
) -> Iterator[Owed]:
    """The witness point of a step that has begun, and what is inspected after it, before the next step begins."""
    step = status.step
    if not parties.is_inspected or record.begun_later or not record.is_recorded:
        return
    if step.point == "W" and all(decision.is_release for decision in record.decisions):
        yield Owed(parties.inspector, "inspection", step, elevation, step.point_of)
    if status.state in _OVER:
        accepted = _list_accepted(face)
        for point in _BESIDE.get(step.name, ()):
            if not accepted.get(point):
                yield Owed(parties.inspector, "inspection", step, elevation, words(point))


def _list_accepted(face: FaceEntries) -> Mapping[str, bool]:
    """Whether each point was accepted when it was inspected last."""
    return {name: listed[-1].verdict is Verdict.GOOD for name, listed in face.decisions.items() if listed}
