"""What the passes on an elevation show beside each other: two crews in the same hours, one panel in two areas."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from specgen.model.record import Entry
from specgen.model.standard import Step
from specgen.model.status import Remark, tell_time
from specgen.model.suggest import suggest
from specgen.recording.site_entries import FaceEntries, Work


def tell_crews_together(face: FaceEntries) -> Iterator[Remark]:
    """Two crews that were at work in the same hours, each pair of a day once."""
    passes = [work for works in face.works.values() for work in works if _has_hours(work)]
    passes.sort(key=lambda work: (work.began.at, work.entry.number))
    last: dict[str, tuple[datetime, Entry]] = {}  # the end of each crew's work so far
    told: set[tuple[object, ...]] = set()
    for work in passes:
        crew, began = str(work.entry.get("crew")), work.began.at
        last = {other: ended for other, ended in last.items() if ended[0] > began}
        for other, (ended, entry) in last.items():
            key = (*sorted((crew, other)), began.date())
            if other != crew and key not in told:
                told.add(key)
                until = min(ended, work.ended or ended)
                hours = f"{tell_time(began)} to {until:%H:%M}"
                yield Remark(f"crews {other} and {crew} were both at work {hours}", (entry, work.entry))
        if work.ended is not None and (crew not in last or work.ended > last[crew][0]):
            last[crew] = (work.ended, work.entry)


def _has_hours(work: Work) -> bool:
    return work.is_pass and work.began.timed and work.ended is not None and bool(work.entry.get("crew"))


def tell_shared_panels(face: FaceEntries, steps: Sequence[Step], names: Mapping[str, str]) -> Iterator[Remark]:
    """Panels that entries of one step name in two areas."""
    for step in steps:
        areas: dict[str, Work] = {}
        told: set[tuple[str, str]] = set()
        for work in face.works.get(step.name, ()):
            for panel in work.panels:
                first = areas.setdefault(panel, work)
                pair = (first.area, work.area)
                if work.area and first.area and work.area != first.area and pair not in told:
                    told.add(pair)
                    both = f"{names.get(first.area, first.area)} and {names.get(work.area, work.area)}"
                    yield Remark(f"{step.title}: {both} both hold panel {panel}", (first.entry, work.entry))


def names_panels(face: FaceEntries) -> bool:
    """Whether any pass on an elevation names a panel."""
    return any(work.panels for works in face.works.values() for work in works)


def tell_unknown_panels(face: FaceEntries, panels: Sequence[str]) -> Iterator[Remark]:
    """The panels that entries name and that the layout of the elevation does not have."""
    known, told = set(panels), dict[str, list[Entry]]()
    for works in face.works.values() if known else ():
        for work in works:
            for panel in set(work.panels) - known:
                told.setdefault(panel, []).append(work.entry)
    for panel, entries in sorted(told.items()):
        yield Remark(f"the layout has no panel {panel} ({suggest(panel, panels)})", tuple(entries))
