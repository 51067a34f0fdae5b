"""The work of a step on an elevation, in rounds: what is done on an area until its release, then what is done anew."""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from specgen.model.record import Entry
from specgen.model.standard import Step
from specgen.model.status import Moment
from specgen.recording.site_entries import Decision, FaceEntries, Work


@dataclass
class Round:
    """The work on one area until it is released or refused."""

    area: str  # folded
    passes: list[Work] = field(default_factory=list)
    readings: list[Work] = field(default_factory=list)
    first: bool = True  # whether none was before it on its area
    again: bool = False  # whether what was released before is worked anew
    superseded: bool = False  # whether a later round takes the place of all of it

    @property
    def began(self) -> Moment:
        """When its first entry began."""
        return (self.passes or self.readings)[0].began

    @property
    def last_began(self) -> datetime:
        """When its last entry began."""
        return (self.passes or self.readings)[-1].began.at

    @property
    def ended(self) -> datetime | None:
        """The end of its last pass; None while no end is written."""
        return max((work.ended for work in self.passes if work.ended is not None), default=None)

    @property
    def goes_on(self) -> bool:
        """Whether a pass has no end yet."""
        ended = self.ended
        return ended is None or any(work.ended is None and work.began.at > ended for work in self.passes)

    @property
    def panels(self) -> tuple[str, ...]:
        """The panels that its entries name, each once."""
        return tuple(dict.fromkeys(panel for work in self.passes for panel in work.panels))

    @property
    def coats(self) -> set[int]:
        """The coats that its passes tell of."""
        return {work.coat for work in self.passes}

    @property
    def entries(self) -> tuple[Entry, ...]:
        """All its entries."""
        return tuple(work.entry for work in (*self.passes, *self.readings))


class Closings:
    """The moments at which a step, or one after it, was released or refused, by area."""

    def __init__(self, decisions: Iterable[Decision]) -> None:
        self._times: dict[str | None, list[datetime]] = defaultdict(list)
        for decision in decisions:
            self._times[decision.area].append(decision.moment.at)
            self._times[None].append(decision.moment.at)
        for times in self._times.values():
            times.sort()

    def has_one(self, area: str, after: datetime, until: datetime) -> bool:
        """Whether one lies after a moment and not after another; of the whole face any area's counts."""
        for key in ("", area) if area else (None,):
            times = self._times.get(key, ())
            if bisect_right(times, after) < bisect_right(times, until):
                return True
        return False


def list_closings(face: FaceEntries, steps: Sequence[Step]) -> dict[str, Closings]:
    """Those of each step that has work: releases of it and of later steps, and inspections of their hold points."""
    closing: list[Decision] = []
    found = {}
    for step in reversed(steps):
        decisions = face.decisions.get(step.name, ())
        closing += [one for one in decisions if one.is_release or step.point == "H"]
        if step.name in face.works:
            found[step.name] = Closings(closing)
    return found


def make_rounds(works: Sequence[Work], closings: Closings, coats: int) -> list[Round]:
    """The rounds of a step in the order of time; readings alone make one of the whole face."""
    rounds: list[Round] = []
    current: dict[str, Round] = {}
    for work in (work for work in works if work.is_pass):
        here = current.get(work.area)
        if here is None or _is_done(here, work, closings, coats):
            again = here is not None and (not work.panels or bool(set(work.panels) & set(here.panels)))
            current[work.area] = Round(work.area, first=here is None, again=again)
            rounds.append(current[work.area])
        current[work.area].passes.append(work)
    readings = [work for work in works if not work.is_pass]
    if readings and not rounds:
        return [Round("", readings=readings)]
    _mark_superseded(rounds)
    _attach(readings, rounds)
    return rounds


def _is_done(here: Round, work: Work, closings: Closings, coats: int) -> bool:
    """Whether the round was released or refused before a pass that is not its next coat."""
    if not closings.has_one(work.area, max(here.last_began, here.passes[-1].ended or here.last_began), work.began.at):
        return False
    done = here.coats
    return work.coat in done or max(done) >= coats


def _mark_superseded(rounds: Sequence[Round]) -> None:
    whole: set[str] = set()  # areas that a later round works anew as a whole
    covered: dict[str, set[str]] = defaultdict(set)  # the panels of later rounds, by area
    for one in reversed(rounds):
        panels = set(one.panels)
        one.superseded = one.area in whole or (bool(panels) and panels <= covered[one.area])
        if not panels:
            whole.add(one.area)
        covered[one.area] |= panels


def _attach(readings: Sequence[Work], rounds: Sequence[Round]) -> None:
    """Each reading to the last round of its area that had begun, else to the first; without an area to that of any."""
    by_area: dict[str, list[Round]] = defaultdict(list)
    for one in rounds:
        by_area[one.area].append(one)
    began: Mapping[str, list[datetime]] = {area: [one.began.at for one in listed] for area, listed in by_area.items()}
    every = [one.began.at for one in rounds]
    for work in readings:
        listed, times = (by_area[work.area], began[work.area]) if work.area in by_area else (rounds, every)
        at = bisect_right(times, work.began.at)
        listed[max(at - 1, 0)].readings.append(work)
