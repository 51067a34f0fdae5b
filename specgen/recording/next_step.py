"""What comes next on an elevation, and from what hour."""

from collections.abc import Callable, Sequence
from datetime import datetime
from fractions import Fraction

from specgen.model.status import AreaStatus, NextStep, Party, StepState, StepStatus
from specgen.recording.site_entries import hours_after
from specgen.recording.step_facts import StepFacts

# The first moment at or after one at which work can begin.
NextStart = Callable[[datetime], datetime]
Deadlines = tuple[tuple[str, datetime], ...]  # each with its area, the first first
_OVER = (StepState.RELEASED, StepState.DONE, StepState.SKIPPED)


def by_the_clock(moment: datetime) -> datetime:
    """The same moment, where no working hours are known."""
    return moment


def list_next(
    steps: Sequence[StepStatus], facts: Sequence[StepFacts], at: datetime, next_start: NextStart
) -> tuple[NextStep, ...]:
    """What comes next at a moment, and what goes on beside it; nothing where all steps are over."""
    index = _find_open(steps, 0)
    if index is None:
        return ()
    first = _find_next(steps, facts, index, at, next_start)
    started = next_start(at)
    others = (step for step in steps[index + 1 :] if step.state is StepState.UNDER_WAY and not step.step.releases)
    beside = (NextStep(step.step, started, goes_on=True) for step in others if step.step.name != first.step.name)
    return (first, *beside)


def _find_next(
    steps: Sequence[StepStatus], facts: Sequence[StepFacts], index: int, at: datetime, next_start: NextStart
) -> NextStep:
    """What comes next where the step at an index is the first that is not over."""
    here = steps[index]
    if here.state is StepState.FAILED:
        anew = all(area.fails_at_release for area in here.areas if area.state is StepState.FAILED)
        areas = tuple(area.area for area in here.areas if area.state is StepState.FAILED and area.area)
        releaser = _find_releaser(steps, index) if anew else here.releaser
        return NextStep(here.step, None, True, None, None, releaser, True, areas, release_anew=anew)
    if here.state in (StepState.UNDER_WAY, StepState.NOT_BEGUN) or _lacks_coat(here):
        start = next_start(max((a.until for a in here.areas if _lacks(a) and a.until), default=at))
        goes_on = here.state is not StepState.NOT_BEGUN
        deadlines = _find_deadlines(steps, facts, index)
        start = max(start, next_start(at))
        return NextStep(here.step, start, goes_on, _first(deadlines), deadlines=deadlines)
    return _find_following(steps, facts, index, next_start)


def _find_following(
    steps: Sequence[StepStatus], facts: Sequence[StepFacts], index: int, next_start: NextStart
) -> NextStep:
    """The step after one that dries or waits for its release; where none is left, its own release."""
    here = steps[index]
    held = index
    while held + 1 < len(steps) and steps[held + 1].step.releases == here.step.name:
        held += 1
    hold = steps[held] if facts[held].holds else None
    after = _find_open(steps, held + 1)
    start = None if here.until is None else next_start(here.until)
    deadlines = () if after is None else _find_deadlines(steps, facts, after)
    if after is None:
        return NextStep(here.step, start, True, None, hold.step if hold else None, hold.releaser if hold else None)
    return NextStep(
        step=steps[after].step,
        start=start,
        goes_on=steps[after].state is not StepState.NOT_BEGUN,
        latest=_first(deadlines),
        deadlines=deadlines,
        hold=hold.step if hold else None,
        releaser=hold.releaser if hold else None,
        areas=tuple(area.area for area in steps[held].areas if area.state in _OVER and area.area),
    )


def _find_releaser(steps: Sequence[StepStatus], index: int) -> Party | None:
    """Who releases a step: at its own hold point, or at the step that only releases it."""
    here = steps[index]
    return here.releaser or next((one.releaser for one in steps if one.step.releases == here.step.name), None)


def _find_open(steps: Sequence[StepStatus], start: int) -> int | None:
    return next((n for n in range(start, len(steps)) if steps[n].state not in _OVER), None)


def _lacks(area: AreaStatus) -> bool:
    return area.coats[0] < area.coats[1]


def _lacks_coat(status: StepStatus) -> bool:
    """Whether what dries is a coat below the last one."""
    drying = [area for area in status.areas if area.state is StepState.DRIES]
    return bool(drying) and all(map(_lacks, drying))


def _find_deadlines(steps: Sequence[StepStatus], facts: Sequence[StepFacts], index: int) -> Deadlines:
    """The end of the recoat time of each area: of its own last coat where one is on, else of the step right before."""
    own = [area for area in steps[index].areas if _lacks(area)]
    begun = {area.area for area in steps[index].areas}
    below = steps[index - 1].areas if index else ()
    before = [] if "" in begun else [area for area in below if area.area not in begun and not (begun and not area.area)]
    found = [
        *_list_ends(own, facts[index].most_hours),
        *_list_ends(before, facts[index - 1].most_hours if index else None),
    ]
    return tuple(sorted(found, key=lambda one: one[1]))


def _list_ends(areas: Sequence[AreaStatus], most: Fraction | None) -> Deadlines:
    if most is None:
        return ()
    return tuple((area.area, hours_after(area.ended, most)) for area in areas if area.ended is not None)


def _first(deadlines: Deadlines) -> datetime | None:
    return deadlines[0][1] if deadlines else None
