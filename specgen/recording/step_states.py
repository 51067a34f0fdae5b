"""The state of each step on an elevation: of each area that is recorded apart, and of the whole."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime

from specgen.model.record import Entry
from specgen.model.standard import Step
from specgen.model.status import AreaStatus, Remark, StepState, StepStatus
from specgen.recording.early_starts import find_early
from specgen.recording.round_state import JudgedRound, Now, judge_decisions, judge_round
from specgen.recording.rounds import Round, list_closings, make_rounds
from specgen.recording.site_entries import Decision, FaceEntries, Verdict, moment_of
from specgen.recording.step_facts import StepFacts
from specgen.recording.step_record import Failing, StepRecord

_ORDER = tuple(StepState)
_BY_PANEL = ("primer", "gloss")
_SETTLED = (StepState.RELEASED, StepState.DONE, StepState.WAITS)


class Begun:
    """When later steps began last, by area."""

    def __init__(self) -> None:
        self.by_area: dict[str, datetime] = {}

    def add(self, rounds: Iterable[Round]) -> None:
        """Take the beginnings of a step."""
        for one in rounds:
            began = one.began.at
            self.by_area[one.area] = max(began, self.by_area.get(one.area, began))

    def look_from(self, areas: set[str]) -> "BegunAfter":
        """What has begun after a step with these areas."""
        return BegunAfter(self.by_area, bool(areas & self.by_area.keys() - {""}))


class BegunAfter:
    """Whether a later step began after a round where it is; anywhere, where the two share no area."""

    def __init__(self, by_area: dict[str, datetime], shared: bool) -> None:
        self.by_area, self.shared = by_area, shared
        self.latest = max(by_area.values(), default=datetime.min)

    def is_after(self, work: Round) -> bool:
        """Whether one did."""
        if not (work.area and self.shared):
            return self.latest > work.began.at
        return any(self.by_area.get(key, datetime.min) > work.began.at for key in (work.area, ""))


def judge_steps(
    face: FaceEntries, facts: Sequence[StepFacts], at: datetime, failing: Failing, elevation: str
) -> list[StepRecord]:
    """What is recorded of each step that the wall takes, judged at a moment."""
    records = _gather(face, facts)
    names = name_areas(face)
    begun, later, passed = Begun(), False, False
    accepted: list[Decision] = []  # hold points of later steps
    for record in reversed(records):
        record.begun_later = later
        _judge(record, at, begun, names)
        record.judged = [_fail(one, record.facts.step, failing, accepted) for one in record.judged]
        record.is_passed = passed
        if record.facts.in_order:
            begun.add(() if record.facts.step.releases else record.rounds)
            later = later or record.is_recorded
            passed = passed or (record.is_recorded and not _is_by_panel(record.facts))
            if record.facts.holds and not record.facts.step.releases:
                accepted += [one for one in record.decisions if one.verdict is Verdict.GOOD]
    find_early(records, failing)
    return records


def _gather(face: FaceEntries, facts: Sequence[StepFacts]) -> list[StepRecord]:
    closings = list_closings(face, [one.step for one in facts])
    records: dict[str, StepRecord] = {}
    for one in facts:
        step = one.step
        decisions = list(face.decisions.get(step.name, ()))
        if step.releases:
            decisions += [other for other in face.decisions.get(step.releases, ()) if other.is_release]
            decisions.sort(key=lambda decision: decision.moment.at)
            rounds = records[step.releases].rounds if step.releases in records else []
        else:
            works = face.works.get(step.name, ())
            rounds = make_rounds(works, closings[step.name], one.between.coats) if works else []
        records[step.name] = StepRecord(one, rounds, decisions)
    return list(records.values())


def _judge(record: StepRecord, at: datetime, begun: Begun, names: Mapping[str, str]) -> None:
    """Judge each round by the decisions at its place, one that was worked anew by those before that."""
    areas = {one.area for one in record.rounds}
    by_area = {area: _list_at(record.decisions, area) for area in areas}
    following, later = dict[str, datetime](), begun.look_from(areas)
    for work in reversed(record.rounds):
        decisions, until = by_area[work.area], None
        if work.superseded and work.area in following:
            until = bisect_right(decisions, following[work.area], key=_time_of)
        since = max(bisect_left(decisions, work.began.earliest, key=_time_of) - 1, 0)
        decisions = decisions[since:until]
        following[work.area] = work.began.at
        now = Now(at, later.is_after(work))
        record.judged.append(judge_round(work, record.facts, decisions, now, names))
    record.judged.reverse()
    if not record.rounds and record.decisions:
        record.judged = [judge_decisions(record.facts, record.decisions, record.begun_later)]


def _time_of(decision: Decision) -> datetime:
    return decision.moment.at


def _list_at(decisions: Sequence[Decision], area: str) -> Sequence[Decision]:
    """The decisions there where an area is; what names no area is about the whole face."""
    return [one for one in decisions if not one.area or one.area == area] if area else decisions


def _fail(one: JudgedRound, step: Step, failing: Failing, accepted: Sequence[Decision]) -> JudgedRound:
    """A round with what stands against its entries, or against the release that counts.

    What was accepted since, or lies under released work, is not to be corrected: it waits for its disposition.
    """
    entries: tuple[Entry, ...] = one.work.entries if failing and not step.releases else ()
    if one.status.released is not None and one.status.released.entry is not None:
        entries = (*entries, one.status.released.entry)
    reasons = tuple(
        Remark(_tell_late(text, e, one.work), (e,))
        for e in entries
        if (key := (e.collection, e.number)) in failing
        for text in failing[key].told
    )
    if not reasons:
        return one
    if one.status.state in _SETTLED and _is_accepted(one, accepted):
        return replace(one, status=replace(one.status, pending=reasons))
    status = replace(one.status, state=StepState.FAILED, reasons=(*one.status.reasons, *reasons))
    return replace(one, status=status)


def _tell_late(text: str, entry: Entry, work: Round) -> str:
    """What stands against an entry; of a reading taken after the work ended, with that."""
    moment, ended = moment_of(entry), work.ended
    is_late = any(one.entry is entry for one in work.readings) and moment is not None and moment.timed
    if is_late and moment is not None and ended is not None and moment.at > ended:
        return f"{text}; reading of {moment.at:%H:%M}, after the work ended {ended:%H:%M}"
    return text


def _is_accepted(one: JudgedRound, accepted: Sequence[Decision]) -> bool:
    """Whether a later step was released or accepted where a round is, after it."""
    if one.work.entries:
        since = one.work.last_began
    elif one.status.released is not None:
        since = one.status.released.moment.at
    else:
        return False
    return any(decision.area in ("", one.work.area) and decision.moment.at >= since for decision in accepted)


def name_areas(face: FaceEntries) -> dict[str, str]:
    """Each area as it is written first."""
    names: dict[str, str] = {}
    for works in face.works.values():
        for work in works:
            names.setdefault(work.area, str(work.entry.get("area") or ""))
    return names | {"": ""}


def summarize(record: StepRecord, missing: tuple[str, ...]) -> StepStatus:
    """The state of a step on an elevation from those of its areas."""
    areas = tuple(one.status for one in record.live)
    facts = record.facts
    until = max((a.until for a in areas if a.state is StepState.DRIES and a.until is not None), default=None)
    return StepStatus(
        step=facts.step,
        state=_find_state(record, areas, missing),
        areas=areas if record.is_recorded or not facts.step.releases else _not_yet(areas),
        hours=facts.hours,
        until=until,
        releaser=facts.releaser,
        missing=missing,
    )


def _find_state(record: StepRecord, areas: Sequence[AreaStatus], missing: tuple[str, ...]) -> StepState:
    if not areas:
        return StepState.SKIPPED if record.begun_later else StepState.NOT_BEGUN
    state, by_panel = min((area.state for area in areas), key=_ORDER.index), _is_by_panel(record.facts)
    if record.facts.step.releases and state is StepState.UNDER_WAY:
        return StepState.NOT_BEGUN  # there is nothing to release yet
    if record.facts.step.releases and state is StepState.WAITS and not record.decisions:
        return state  # nobody has begun to release
    if missing and state is not StepState.FAILED and not (record.is_passed or record.begun_later and not by_panel):
        return StepState.UNDER_WAY
    return state


def _is_by_panel(facts: StepFacts) -> bool:
    """Whether entries of a step name panels, so that what is missing is known for certain."""
    return (facts.step.releases or facts.step.name) in _BY_PANEL


def _not_yet(areas: tuple[AreaStatus, ...]) -> tuple[AreaStatus, ...]:
    """The areas of a step that only releases, those where there is nothing to release yet as not begun."""
    return tuple(
        replace(area, state=StepState.NOT_BEGUN) if area.state is StepState.UNDER_WAY else area for area in areas
    )


def list_missing(
    records: Sequence[StepRecord], panels: Sequence[str], names: Mapping[str, str]
) -> dict[str, tuple[str, ...]]:
    """What each step has not reached of the areas of the step before it, or of the panels, by the name of the step."""
    missing: dict[str, tuple[str, ...]] = {}
    before: set[str] = set()
    for record in records:
        released = record.facts.step.releases
        if released and released in missing:
            missing[record.facts.step.name] = missing[released]
        live = [] if released else record.live
        areas = {one.work.area for one in live if one.work.entries}
        if not areas:
            continue
        lacking = before - areas if before & areas and "" not in areas else set()
        told = [names.get(area, area) for area in sorted(lacking)]
        covered = [one.work.panels for one in live]
        if panels and all(covered):
            reached = {panel for listed in covered for panel in listed}
            told += [] if lacking else [panel for panel in panels if panel not in reached]
        missing[record.facts.step.name] = tuple(told)
        before = areas - {""} or before
    return missing
