"""The state of a round of work: dry or not, released or not, and which releases do not count."""

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any, NamedTuple

from specgen.model.status import AreaStatus, Hours, Remark, Signature, StepState, tell_moment, tell_time
from specgen.quantities.format import format_decimal
from specgen.recording.rounds import Round
from specgen.recording.site_entries import Decision, Verdict, hours_after
from specgen.recording.step_facts import StepFacts

NO_END = "no ending time is told"


@dataclass(frozen=True)
class JudgedRound:
    """A round with its state; `free` is the moment from which the next step could begin, None where it is not known."""

    work: Round
    status: AreaStatus
    free: datetime | None


class Now(NamedTuple):
    """The moment that is asked about, and whether a later step has begun where the round is."""

    at: datetime
    later: bool


def judge_round(
    work: Round, facts: StepFacts, decisions: Sequence[Decision], now: Now, names: Mapping[str, str]
) -> JudgedRound:
    """The state of a round by the decisions at its place, in the order of time."""
    after = decisions[bisect_left(decisions, work.began.earliest, key=_time_of) :]
    ended, goes_on = work.ended, work.goes_on and not now.later
    due = 1 if work.again else facts.between.coats
    status = AreaStatus(
        state=StepState.DONE,
        area=names.get(work.area, work.area),
        again=work.again,
        panels=work.panels,
        crews=tuple(dict.fromkeys(str(one.entry.get("crew")) for one in work.passes if one.entry.get("crew"))),
        began=work.began,
        ended=None if goes_on else ended,
        until=None if goes_on else facts.dry_from(ended),
        coats=(min(max(work.coats, default=0), due), due),
        remarks=() if after or not work.first else tuple(_tell_before(decisions)),
    )
    decided = _decide(status, facts, after)
    return JudgedRound(
        work, decided if _is_settled(decided) else _wait(decided, facts, now), _find_free(status, facts, after)
    )


def judge_decisions(facts: StepFacts, decisions: Sequence[Decision], later: bool) -> JudgedRound:
    """The state of a step of which nothing but releases and inspections is recorded."""
    status = _decide(AreaStatus(StepState.DONE), facts, decisions)
    if not _is_settled(status):
        # Of what is done once for all elevations nothing goes on at each of them when it was inspected.
        seen = later or (facts.step.once and any(one.verdict is Verdict.GOOD for one in decisions))
        waits = StepState.DONE if seen else StepState.UNDER_WAY
        status = replace(status, state=StepState.WAITS if facts.holds else waits)
    return JudgedRound(Round(""), status, _find_free(status, facts, decisions))


def _time_of(decision: Decision) -> datetime:
    return decision.moment.at


def _is_settled(status: AreaStatus) -> bool:
    return status.state is not StepState.DONE


def _tell_before(decisions: Sequence[Decision]) -> Iterator[Remark]:
    """The last release that was signed before the work began that it is to release."""
    for decision in decisions[-1:]:
        if decision.verdict is Verdict.GOOD and decision.is_release:
            told = f"release not counted: signed {tell_moment(decision.moment)}, before the work it releases began"
            yield Remark(told, (decision.entry,) if decision.entry else ())


def _decide(status: AreaStatus, facts: StepFacts, decisions: Sequence[Decision]) -> AreaStatus:
    """The state by the last decision that counts, with what is told of those after it; done where none does."""
    remarks = {remark.text.partition(":")[0]: remark for remark in status.remarks}
    for decision in reversed(decisions):
        entries = (decision.entry,) if decision.entry else ()
        if decision.verdict is Verdict.FAILED:
            failed = Remark(_name_refusal(decision), entries)
            return replace(status, state=StepState.FAILED, reasons=(failed,), remarks=tuple(remarks.values()))
        early = find_why_early(status, facts, decision) if decision.verdict is Verdict.GOOD else ""
        if early:
            remarks.setdefault("release not counted", Remark(f"release not counted: {early}", entries))
        elif decision.verdict is Verdict.UNSIGNED:
            remarks.setdefault(decision.about, Remark(f"{decision.about} missing", entries))
        elif decision.is_release or facts.holds:
            signed = Signature(decision.moment, decision.by, decision.entry)
            return replace(status, state=StepState.RELEASED, released=signed, remarks=tuple(remarks.values()))
        else:
            break  # a point that was witnessed
    return replace(status, remarks=tuple(remarks.values()))


def _wait(status: AreaStatus, facts: StepFacts, now: Now) -> AreaStatus:
    """The state of what nobody has released."""
    if status.ended is None:
        if not now.later:
            return replace(status, state=StepState.UNDER_WAY)
        status = replace(status, remarks=(*status.remarks, Remark(NO_END)))
    done, due = status.coats
    if done < due and not now.later:
        between = facts.between.hours
        until = None if status.ended is None or between is None else hours_after(status.ended, between.hours)
        dries = until is not None and now.at < until
        return replace(status, state=StepState.DRIES if dries else StepState.UNDER_WAY, until=until)
    if done < due:
        status = replace(status, remarks=(*status.remarks, Remark(f"only {done} of {due} coats are recorded")))
    if status.until is not None and now.at < status.until:
        return replace(status, state=StepState.DRIES)
    return replace(status, state=StepState.WAITS if facts.holds else StepState.DONE)


def find_why_early(status: AreaStatus, facts: StepFacts, decision: Decision) -> str:
    """Why a release does not count: the work or its hours were not over; an empty text where it does."""
    signed = tell_moment(decision.moment)
    if status.ended is None and status.began is not None:
        return f"signed {signed}, before the work had ended"
    if status.ended is not None and decision.moment.at < status.ended:
        return f"signed {signed}, before the work ended {tell_time(status.ended)}"
    hours = facts.hours
    if hours is not None and status.until is not None and decision.moment.at < status.until:
        return (
            f"signed {signed}, before the {_number(hours.hours)} h were up {tell_time(status.until)} ({hours.source})"
        )
    if hours is not None and decision.hours_dry is not None and decision.hours_dry < hours.hours:
        due = f"{_number(hours.hours)} h are due ({hours.source})"
        return f"signed {signed} after {_number(decision.hours_dry)} h; {due}"
    if facts.dries and status.began is None and decision.hours_dry is None and decision.entry is not None:
        return f"signed {signed}, and no entry tells when the work ended"
    return ""


def _find_free(status: AreaStatus, facts: StepFacts, decisions: Sequence[Decision]) -> datetime | None:
    """When the next step could begin at the earliest; the last moment there is where a hold was never released."""
    if not facts.holds:
        return status.until if status.until is not None else status.ended
    counted = (one for one in decisions if one.verdict is Verdict.GOOD and not find_why_early(status, facts, one))
    return next((one.moment.earliest for one in counted), datetime.max)


def _name_refusal(decision: Decision) -> str:
    by = f" by {decision.by}" if decision.by else ""
    return f"{decision.about} {tell_moment(decision.moment)}{by}"


def tell_hours(hours: Hours) -> str:
    """`24 h, gloss.dry_hours`: the hours, and where they stand."""
    return f"{_number(hours.hours)} h, {hours.source}"


def _number(hours: Any) -> str:
    return format_decimal(hours, 4)
