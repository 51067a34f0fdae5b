"""What was begun too early: before the step before it was released or dry, or its next coat too soon."""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterator, Sequence, Set
from dataclasses import replace
from datetime import datetime
from itertools import accumulate

from specgen.model.status import Remark, tell_moment, tell_time
from specgen.recording.round_state import JudgedRound, tell_hours
from specgen.recording.rounds import Round
from specgen.recording.site_entries import Work, hours_after
from specgen.recording.step_facts import StepFacts
from specgen.recording.step_record import Failing, StepRecord

_Times = tuple[list[datetime], list[datetime | None]]  # beginnings, and from when the next step could begin


# The clause that tells of a coat what is told here: where it stands against an entry it is told once.
_COAT_TOO_EARLY = "FIN-07i"


def find_early(records: Sequence[StepRecord], failing: Failing) -> None:
    """Tell at each round of each step what it did not wait for, beside what stands against its entries."""
    told = {
        number for (collection, number), one in failing.items() if collection == "log" and _COAT_TOO_EARLY in one.codes
    }
    frees = [_Free(record) for record in records]
    for index, record in enumerate(records):
        if record.facts.in_order and not record.facts.step.releases:
            areas = {one.area for one in record.rounds}
            before = [(free, free.shares(areas)) for free in reversed(frees[:index])]
            record.judged = [_tell(one, record.facts, before, told) for one in record.judged]


def _tell(one: JudgedRound, facts: StepFacts, before: "_Before", told: Set[int]) -> JudgedRound:
    if one.work.superseded or not one.work.entries:
        return one
    early = (*_tell_start(one.work, before), *_tell_coats(one.work, facts, told))
    return replace(one, status=replace(one.status, early=early)) if early else one


def _tell_start(work: Round, before: "_Before") -> Iterator[Remark]:
    """What a round did not wait for: the hold points passed over, and the last step that is recorded where it is."""
    passed, began = list[str](), work.began
    for free, shared in before:
        facts = free.record.facts
        since = free.find(work, shared) if facts.holds or facts.dries else None
        if since is None:
            passed += [facts.step.title] if facts.holds else []
            continue
        if since > began.at:
            yield Remark(f"begun {tell_moment(began)}, before {_say_before(facts, since)}", work.entries[:1])
        break
    if passed:
        told = ", ".join(reversed(passed))
        yield Remark(f"begun {tell_moment(began)}, with no release recorded of {told}", work.entries[:1])


def _say_before(facts: StepFacts, since: datetime) -> str:
    if facts.holds:
        told = "not released" if since == datetime.max else f"released {tell_time(since)}"
        title = facts.step.title
        what = f"{title[:1].lower()}{title[1:]}" if facts.step.releases else f"release of {title}"
        return f"the {what} ({told})"
    hours = f"; {tell_hours(facts.hours)}" if facts.hours else ""
    return f"{facts.step.title} was dry ({tell_time(since)}{hours})"


class _Free:
    """From when the step after a step could begin, by area and time."""

    def __init__(self, record: StepRecord) -> None:
        self.record = record
        by_area: dict[str, list[JudgedRound]] = defaultdict(list)
        for one in record.judged:
            if one.work.entries:
                by_area[one.work.area].append(one)
        self.by_area = {area: _list_times(listed) for area, listed in by_area.items()}
        live = sorted((one for one in record.live if one.work.entries), key=lambda one: one.work.began.at)
        latest = accumulate((one.free for one in live), _later)
        self.whole: _Times = ([one.work.began.at for one in live], list(latest))

    def shares(self, areas: set[str]) -> bool:
        """Whether a later step names any of the same areas."""
        return bool(areas & self.by_area.keys() - {""})

    def find(self, work: Round, shared: bool) -> datetime | None:
        """The moment for a round of a later step; None where nothing is recorded before it at its place."""
        if not self.by_area:
            return self.record.judged[0].free if self.record.judged and self.record.facts.holds else None
        if work.area and shared:
            at_place = [self.by_area[area] for area in (work.area, "") if area in self.by_area]
            frees = [_find_at(times, work.began.at) for times in at_place]
            return max((free for free in frees if free is not None), default=None)
        return _find_at(self.whole, work.began.at)


_Before = Sequence[tuple[_Free, bool]]  # the steps before, the last first, and whether they share an area


def _list_times(judged: Sequence[JudgedRound]) -> _Times:
    return [one.work.began.at for one in judged], [one.free for one in judged]


def _later(one: datetime | None, other: datetime | None) -> datetime | None:
    return other if one is None else one if other is None else max(one, other)


def _find_at(times: _Times, began: datetime) -> datetime | None:
    """The value of the last round that had begun at a moment."""
    at = bisect_right(times[0], began)
    return times[1][at - 1] if at else None


def _tell_coats(work: Round, facts: StepFacts, known: Set[int]) -> Iterator[Remark]:
    """The first pass of a coat that came before the one below it was touch-dry."""
    if facts.between.hours is None:
        return
    ended: dict[tuple[int, str], datetime] = {}
    for one in work.passes:
        places = one.panels or ("",)
        below = (ended[key] for place in {*places, ""} if (key := (one.coat - 1, place)) in ended)
        last = max(below, default=None)
        dry = None if last is None else hours_after(last, facts.between.hours.hours)
        if dry is not None and one.began.timed and one.began.at < dry and one.entry.number not in known:
            hours = tell_hours(facts.between.hours)
            told = f"coat {one.coat} begun {tell_time(one.began.at)}, before coat {one.coat - 1} was touch-dry"
            yield Remark(f"{told} ({tell_time(dry)}; {hours})", (one.entry,))
            return
        _take_end(ended, one, places)


def _take_end(ended: dict[tuple[int, str], datetime], one: Work, places: Sequence[str]) -> None:
    if one.ended is not None:
        for place in places:
            ended[one.coat, place] = max(one.ended, ended.get((one.coat, place), one.ended))
