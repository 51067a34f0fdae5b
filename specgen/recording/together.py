"""What the passes on an elevation show beside each other: two crews in the same hours, one panel in two areas."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import date, datetime

from specgen.model.problem import Problem
from specgen.model.record import Entry
from specgen.model.standard import Step
from specgen.model.status import Remark, tell_time
from specgen.model.suggest import suggest
from specgen.reading.records.gathering import locate_entry
from specgen.recording.site_entries import FaceEntries, Work


def tell_crews_together(face: FaceEntries) -> Iterator[Remark]:
    """Crews that were at work in the same hours, each once a day with the one that worked longest."""
    passes = [work for works in face.works.values() for work in works if _has_hours(work)]
    passes.sort(key=lambda work: (work.began.at, work.entry.number))
    longest: list[tuple[datetime, str, Entry]] = []  # the two crews whose work so far ends last
    told: set[tuple[str, date]] = set()
    for work in passes:
        crew, began, ended = str(work.entry.get("crew")), work.began.at, work.ended or work.began.at
        until, other, entry = next((one for one in longest if one[1] != crew), (began, "", work.entry))
        if until > began and (crew, began.date()) not in told:
            told |= {(crew, began.date()), (other, began.date())}
            hours = f"{tell_time(began)} to {min(ended, until):%H:%M}"
            yield Remark(f"crews {other} and {crew} were both at work {hours}", (entry, work.entry))
        longest = _take_longest(longest, (ended, crew, work.entry))


def _take_longest(
    longest: list[tuple[datetime, str, Entry]], one: tuple[datetime, str, Entry]
) -> list[tuple[datetime, str, Entry]]:
    """The two crews whose work ends last, of those so far and another pass."""
    ordered = sorted((*longest, one), key=lambda each: each[0], reverse=True)
    first = ordered[0]
    return [first, *[each for each in ordered[1:] if each[1] != first[1]][:1]]


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


def tell_unknown_panels(
    face: FaceEntries, elevation: str, panels: Sequence[str], find_face: Callable[[str], str]
) -> Iterator[Remark]:
    """The panels that entries name and that the layout of the elevation does not have."""
    known, told = set(panels), dict[str, list[Entry]]()
    for works in face.works.values() if known else ():
        for work in works:
            for panel in set(work.panels) - known:
                told.setdefault(panel, []).append(work.entry)
    for panel, entries in sorted(told.items()):
        other = find_face(panel)
        lacks = f"the layout has no panel {panel} ({suggest(panel, panels)})"
        yield Remark(f"{panel} stands on {other}, not on {elevation}" if other else lacks, tuple(entries))


def list_unknown_panels(
    log: Iterable[Entry], elevations: Sequence[str], list_panels: Callable[[str], Sequence[str]]
) -> Iterator[Problem]:
    """The panels that entries name and that the layout of their elevation does not have, each at its first entry.

    An elevation that is not laid out is passed over.
    """
    named: dict[tuple[str, str], list[Entry]] = {}
    for entry in log:
        for panel in entry.get("panels") or ():
            named.setdefault((entry.get("elevation") or "", panel), []).append(entry)
    layouts = {elevation: list_panels(elevation) for elevation in {one for one, _ in named if one}}
    for (elevation, panel), entries in named.items():
        panels = layouts.get(elevation, ())
        if panels and panel not in panels:
            times = f", named in {len(entries):,} entries" if len(entries) > 1 else ""
            other = next((mark for mark in elevations if panel in list_panels(mark)), "")
            told = f"{panel} stands on {other}, not on {elevation}" if other else ""
            message = told or f"the layout of {elevation} has no panel {panel}"
            hint = "" if other else suggest(panel, panels)
            yield Problem(f"{message}{times}", hint, "", *locate_entry(entries[0].place))
