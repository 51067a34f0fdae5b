"""The log sorted by panels in one pass: the passes over each with their pails and weather, and what was signed."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime

from specgen.model.project import Project
from specgen.model.record import Entry, day_of
from specgen.model.standard import Standards
from specgen.model.status import Moment, PanelPass
from specgen.recording.entry_kinds import is_on_mockup
from specgen.recording.pails import choose_pails, is_in
from specgen.recording.site_entries import fold_area, moment_of, to_work

# Readings of the weather at the wall.
WEATHER = ("air", "surface", "humidity", "wind", "gust", "sun_on_wall", "rain", "forecast_low", "forecast_rain")
# Where the finish as a whole is accepted.
OF_FINISH = ("acceptance", "final_viewing")
_Timed = tuple[Moment, Entry]


@dataclass
class _OfFace:
    """The entries that name an elevation, or none, in the order of time."""

    passes: dict[str, list[_Timed]] = field(default_factory=lambda: defaultdict(list))  # by panel
    masked: dict[str, list[Entry]] = field(default_factory=lambda: defaultdict(list))  # by panel
    pails: dict[tuple[date | None, str], list[Entry]] = field(default_factory=lambda: defaultdict(list))
    weather: dict[date | None, list[_Timed]] = field(default_factory=lambda: defaultdict(list))
    signed: dict[str, list[_Timed]] = field(default_factory=lambda: defaultdict(list))  # by step


class PanelLog:
    """The entries until a moment by elevation; those that name none are of each."""

    def __init__(self, project: Project, standards: Standards, until: datetime) -> None:
        self.standards, self.until = standards, until
        self._faces: dict[str, _OfFace] = defaultdict(_OfFace)
        self._made: dict[tuple[str, int], PanelPass] = {}
        timed = [
            (moment, entry)
            for name in ("log", "release", "inspection")
            for entry in project.records.of(name)
            if (moment := moment_of(entry)) is not None and moment.at <= until and not is_on_mockup(entry)
        ]
        for moment, entry in sorted(timed, key=lambda one: (one[0].at, one[1].number)):
            self._add(moment, entry)

    def list_panels(self) -> list[tuple[str, str]]:
        """The elevation and the mark of each panel over which a pass is recorded; an empty elevation where none is."""
        return [(elevation, panel) for elevation, face in self._faces.items() for panel in face.passes]

    def list_passes(self, panel: str, elevation: str) -> tuple[PanelPass, ...]:
        """The passes over a panel of an elevation in the order of time; whether one is a recoat is not told yet."""
        found = [one for face in self._find(elevation) for one in face.passes.get(panel, ())]
        found.sort(key=lambda one: (one[0].at, one[1].number))
        passes = (self._make_pass(moment, entry, elevation) for moment, entry in found)
        return tuple(one for one in passes if one is not None)

    def list_masked(self, panel: str, elevation: str) -> tuple[Entry, ...]:
        """The entries by which a panel was masked."""
        return tuple(entry for face in self._find(elevation) for entry in face.masked.get(panel, ()))

    def list_signed(self, passes: Sequence[PanelPass], elevation: str) -> tuple[Entry, ...]:
        """Releases and inspections of the steps of a panel, signed since its first pass where it is."""
        if not passes:
            return ()
        steps = {one.step.name for one in passes}
        steps |= {step.name for step in self.standards.steps.values() if step.releases in steps} | set(OF_FINISH)
        areas = {fold_area(str(one.entry.get("area") or ""), elevation) for one in passes}
        found = [
            (moment.at, entry)
            for face in self._find(elevation)
            for step in steps
            for moment, entry in face.signed.get(step, ())
            if moment.at >= passes[0].began.earliest and is_in(entry, areas, elevation)
        ]
        return tuple(entry for _, entry in sorted(found, key=lambda one: one[0]))

    def _add(self, moment: Moment, entry: Entry) -> None:
        face, step = self._faces[str(entry.get("elevation") or "")], str(entry.get("step") or "")
        if entry.collection != "log":
            face.signed[step].append((moment, entry))
            return
        for panel in entry.get("panels") or ():
            face.passes[panel].append((moment, entry))
        for panel in entry.get("masked_panels") or ():
            face.masked[panel].append(entry)
        if entry.get("pail") is not None or entry.get("batch") is not None:
            face.pails[day_of(entry), step].append(entry)
        if any(name in entry.values for name in WEATHER):
            face.weather[day_of(entry)].append((moment, entry))

    def _find(self, elevation: str) -> Iterator[_OfFace]:
        """The entries of an elevation, and those that name none."""
        yield from (self._faces[name] for name in dict.fromkeys((elevation, "")) if name in self._faces)

    def _make_pass(self, began: Moment, entry: Entry, elevation: str) -> PanelPass | None:
        """A pass with what belongs to it; all its panels share one. None for an entry of no step."""
        step = self.standards.steps.get(str(entry.get("step") or ""))
        key = (elevation, entry.number)
        if step is not None and key not in self._made:
            ended = to_work(entry, began, elevation, self.until).ended
            day = day_of(entry)
            weather = sorted(
                (one for face in self._find(elevation) for one in face.weather.get(day, ())),
                key=lambda one: (one[0].at, one[1].number),
            )
            readings = tuple(_choose_readings(weather, began.earliest, ended or began.at))
            same_day = [pail for face in self._find(elevation) for pail in face.pails.get((day, step.name), ())]
            pails = tuple(choose_pails(same_day, entry, elevation))
            self._made[key] = PanelPass(entry, step, began, ended, again=False, pails=pails, readings=readings)
        return self._made.get(key)


def _choose_readings(readings: Sequence[_Timed], began: datetime, ended: datetime) -> list[Entry]:
    """Those within the hours of a pass; where there are none, the last before, else the first after."""
    within = [entry for moment, entry in readings if began <= moment.at <= ended]
    before = [entry for moment, entry in readings if moment.at < began]
    after = [entry for moment, entry in readings if moment.at > ended]
    return within or before[-1:] or after[:1]
