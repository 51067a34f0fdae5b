"""The history of a panel: passes with crew, pails and weather, releases, nonconformances, recoats."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime

from specgen.model.project import Project
from specgen.model.record import Entry, day_of
from specgen.model.record_judgment import Nonconformance, RecordJudgment
from specgen.model.standard import Standards
from specgen.model.status import Moment, PanelHistory, PanelPass, Remark
from specgen.recording.gathering import find_last_moment
from specgen.recording.site_entries import Verdict, fold_area, moment_of, to_decision, to_work
from specgen.recording.standing import is_known, stands

# Readings of the weather at the wall.
WEATHER = ("air", "surface", "humidity", "wind", "gust", "sun_on_wall", "rain", "forecast_low", "forecast_rain")
# Where the finish as a whole is accepted.
_OF_FINISH = ("acceptance", "final_viewing")


@dataclass
class _OfFace:
    """The entries of an elevation among which those of a panel are sought, by day."""

    passes: list[tuple[Entry, Moment]] = field(default_factory=list)
    masked: list[Entry] = field(default_factory=list)
    pails: dict[tuple[date | None, str], list[Entry]] = field(default_factory=lambda: defaultdict(list))
    weather: dict[date | None, list[tuple[Moment, Entry]]] = field(default_factory=lambda: defaultdict(list))


def list_panels(project: Project, layouts: Mapping[str, Sequence[str]]) -> dict[str, str]:
    """The elevation of each panel that a layout or the log names, by its mark."""
    found = {panel: elevation for elevation, panels in layouts.items() for panel in panels}
    marks = project.members.get(("elevations",), ())
    for entry in project.records.of("log"):
        for panel in entry.get("panels") or ():
            elevation = str(entry.get("elevation") or (marks[0] if len(marks) == 1 else ""))
            found.setdefault(str(panel), elevation)
    return found


def find_history(
    project: Project,
    standards: Standards,
    judgment: RecordJudgment,
    at: datetime | None,
    panel: str,
    elevation: str,
    *,
    in_layout: bool,
) -> PanelHistory:
    """The history of a panel on its elevation until a moment, that of the last entry where none is given."""
    until = at or find_last_moment(project)
    history = PanelHistory(panel, elevation, until, in_layout)
    if until is None:
        return history
    face = _sort(project, elevation, panel, until)
    passes = tuple(_list_passes(standards, face, elevation, until))
    signed = tuple(_list_signed(project, standards, passes, elevation, until))
    passes = tuple(_mark_again(passes, signed, standards))
    entries = {(e.collection, e.number) for one in passes for e in (one.entry, *one.pails, *one.readings)}
    entries |= {(entry.collection, entry.number) for entry in signed}
    known = [one for one in judgment.nonconformances if is_known(one, until)]
    return replace(
        history,
        passes=passes,
        masked=tuple(face.masked),
        signed=signed,
        against=tuple(_list_against(known, entries)),
        failed=_has_failed(known, entries, signed, elevation),
    )


def _sort(project: Project, elevation: str, panel: str, until: datetime) -> _OfFace:
    """The entries of the log until a moment that are about an elevation, or about none."""
    face = _OfFace()
    for entry in project.records.of("log"):
        moment = moment_of(entry)
        if entry.get("elevation") not in (elevation, None) or moment is None or moment.at > until:
            continue
        if panel in (entry.get("panels") or ()):
            face.passes.append((entry, moment))
        if panel in (entry.get("masked_panels") or ()):
            face.masked.append(entry)
        if entry.get("pail") is not None:
            face.pails[day_of(entry), str(entry.get("step") or "")].append(entry)
        if any(name in entry.values for name in WEATHER):
            face.weather[day_of(entry)].append((moment, entry))
    face.passes.sort(key=lambda one: (one[1].at, one[0].number))
    for readings in face.weather.values():
        readings.sort(key=lambda one: (one[0].at, one[1].number))
    return face


def _list_passes(standards: Standards, face: _OfFace, elevation: str, until: datetime) -> Iterator[PanelPass]:
    for entry, began in face.passes:
        step = standards.steps.get(str(entry.get("step") or ""))
        if step is None:
            continue
        ended = to_work(entry, began, elevation, until).ended
        same_day = face.pails[day_of(entry), step.name]
        pails = tuple(one for one in same_day if _is_same(one.get("coat"), entry.get("coat")))
        readings = tuple(_choose_readings(face.weather[day_of(entry)], began.earliest, ended or began.at))
        yield PanelPass(entry, step, began, ended, again=False, pails=pails, readings=readings)


def _is_same(one: object, other: object) -> bool:
    """Whether two values agree, as far as both are told."""
    return one is None or other is None or one == other


def _choose_readings(readings: Sequence[tuple[Moment, Entry]], began: datetime, ended: datetime) -> list[Entry]:
    """Those within the hours of a pass; where there are none, the last before, else the first after."""
    within = [entry for moment, entry in readings if began <= moment.at <= ended]
    before = [entry for moment, entry in readings if moment.at < began]
    after = [entry for moment, entry in readings if moment.at > ended]
    return within or before[-1:] or after[:1]


def _list_signed(
    project: Project, standards: Standards, passes: Sequence[PanelPass], elevation: str, until: datetime
) -> list[Entry]:
    """Releases and inspections of the steps of a panel, signed since its first pass where it is."""
    if not passes:
        return []
    steps = {one.step.name for one in passes}
    steps |= {step.name for step in standards.steps.values() if step.releases in steps} | set(_OF_FINISH)
    areas = {fold_area(str(one.entry.get("area") or ""), elevation) for one in passes}
    found = []
    for entry in (*project.records.of("release"), *project.records.of("inspection")):
        moment, area = moment_of(entry), fold_area(str(entry.get("area") or ""), elevation)
        here = entry.get("elevation") in (elevation, None) and entry.get("step") in steps
        there = not area or "" in areas or area in areas
        if here and there and moment is not None and passes[0].began.earliest <= moment.at <= until:
            found.append((moment.at, entry))
    return [entry for _, entry in sorted(found, key=lambda one: one[0])]


def _mark_again(passes: Sequence[PanelPass], signed: Sequence[Entry], standards: Standards) -> Iterator[PanelPass]:
    """Each pass with whether its coat had been applied before, or released."""
    released: dict[str, list[datetime]] = defaultdict(list)
    for entry in signed:
        step = standards.steps.get(str(entry.get("step")))
        moment = moment_of(entry)
        if step is not None and moment is not None and (entry.collection == "release" or step.point == "H"):
            released[step.releases or step.name].append(moment.at)
    coats: dict[str, set[int]] = defaultdict(set)
    for one in passes:
        coat = int(one.entry.get("coat") or 1)
        times = [*released[one.step.name], *(time for name in _OF_FINISH for time in released[name])]
        since = any(time <= one.began.at for time in times)
        yield replace(one, again=coat in coats[one.step.name] or (bool(coats[one.step.name]) and since))
        coats[one.step.name].add(coat)


def _list_against(known: Sequence[Nonconformance], entries: set[tuple[str, int]]) -> Iterator[Remark]:
    for one in known:
        if (one.entry.collection, one.entry.number) in entries:
            lifted = f" (lifted by {one.lifted_by})" if one.lifted_by else ""
            told = f"nonconformance {one.number}, {one.code}, {one.severity.value}: {one.message}{lifted}"
            yield Remark(told, (one.entry,))


def _has_failed(
    known: Sequence[Nonconformance], entries: set[tuple[str, int]], signed: Sequence[Entry], elevation: str
) -> bool:
    """Whether a nonconformance stands that stops the work, or what was signed last of a step was refused."""
    last = {str(entry.get("step")): entry for entry in signed}
    moments = ((entry, moment_of(entry)) for entry in last.values())
    refused = (moment and to_decision(entry, moment, elevation).verdict is Verdict.FAILED for entry, moment in moments)
    return any(map(bool, refused)) or any(
        stands(one) and (one.entry.collection, one.entry.number) in entries for one in known
    )
