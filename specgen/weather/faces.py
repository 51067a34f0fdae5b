"""The elevations of a project in the hours of a file: shift, daylight, shade and tents, and the weather at each."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from fractions import Fraction
from functools import cached_property
from typing import Literal, NamedTuple

from specgen.computing.shading import find_shade
from specgen.model.absence import Absent
from specgen.model.dates import MONTHS
from specgen.model.field import Path
from specgen.model.problem import Refused, refuse
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.reading.time_zones import AT, find_offset, find_zone
from specgen.weather.hours import Column, HourlyData
from specgen.weather.judging import BIT, judge_weather, settle
from specgen.weather.limits import StepLimits, find_limits
from specgen.weather.sunshine import Sunshine, find_sunshine, list_dark, list_sunlit
from specgen.weather.surfaces import Face, is_measured, model_surface

Surface = Literal["air", "reading", "model"]
_DAY = 24 * 60


class Asked(NamedTuple):
    """What the hours are judged for: a step, how the wall's temperature is told, and whether shift and shade count.

    `thin_air` is the pressure of the air at the site over that at sea level; without an elevation every one is judged.
    """

    step: str
    surface: Surface
    all_hours: bool
    thin_air: float = 1.0
    elevation: str = ""


@dataclass(frozen=True)
class FaceHours:
    """An elevation, or the whole site under an empty mark, with the causes of each hour; 0 for one that is fit."""

    elevation: str
    limits: StepLimits
    causes: list[int]


@dataclass(frozen=True)
class Judged:
    """The faces judged, what could not be judged of them, and what is to be told."""

    faces: tuple[FaceHours, ...]
    left_out: tuple[str, ...]
    notes: tuple[str, ...]


def judge_faces(project: Project, standards: Standards, data: HourlyData, asked: Asked) -> Judged:
    """Every elevation in the hours of a file; without shift and shade one site, save where each wall is modeled.

    Raises Refused where no elevation can be judged.
    """
    if asked.surface == "reading" and "surface" not in data.columns:
        raise refuse(f"{data.name} has no column surface", "name one surface F or surface C, or give --surface air")
    judge = _Faces(project, standards, data, asked)
    faces, missing = list[FaceHours](), list[str]()
    problems: list[Refused] = []
    for mark in judge.list_marks():
        try:
            faces.append(judge.judge(mark))
        except Absent as absent:
            fields = ", ".join(dict.fromkeys(".".join(path) for path in absent.paths))
            hint = "" if asked.all_hours or asked.surface == "model" else ", or --all-hours"
            missing.append(f"{mark or 'the site'} is not judged (give {fields}{hint})")
            problems.append(refuse(f"{mark or 'the site'} is not judged", f"give {fields}{hint}"))
    if not faces:
        raise Refused(*(problem for refused in problems for problem in refused.problems))
    return Judged(tuple(faces), tuple(missing), tuple(judge.notes()))


class _Faces:
    """One project and one file."""

    def __init__(self, project: Project, standards: Standards, data: HourlyData, asked: Asked) -> None:
        self.project, self.standards, self.data, self.asked = project, standards, data, asked
        self._weather: dict[StepLimits, list[int]] = {}
        self._sunshine: Sunshine | None = None

    def list_marks(self) -> tuple[str, ...]:
        """The elevations; an empty mark where the hours are the same for all, or there are none."""
        if self.asked.elevation:
            return (self.asked.elevation,)
        marks = self.project.members.get(("elevations",), ())
        alike = self.asked.all_hours and self.asked.surface != "model"
        return marks if marks and not alike else ("",)

    def judge(self, mark: str) -> FaceHours:
        """The hours of an elevation; raises Absent for what its sun waits for."""
        limits = find_limits(self.project, self.standards, self.asked.step, "" if self.asked.all_hours else mark)
        causes = self._judge_weather(mark, limits)
        if not self.asked.all_hours:
            self._mark_shift(causes)
            if limits.reads("sun") and mark:
                self._mark_sun(causes, mark)
        return FaceHours(mark, limits, settle(causes))

    def _judge_weather(self, mark: str, limits: StepLimits) -> list[int]:
        """The causes in the weather alone; what is the same for several elevations is judged once."""
        if self.asked.surface == "model":
            return judge_weather(self.data, limits, self._model(mark))
        if limits not in self._weather:
            surface = self.data.column("surface" if self.asked.surface == "reading" else "air")
            self._weather[limits] = judge_weather(self.data, limits, surface)
        return list(self._weather[limits])

    def _model(self, mark: str) -> Column:
        at = ("elevations", mark)
        color = self.project.value((*at, "color")) if mark else None
        if color is None:
            raise Absent(("elevations",))
        shaded = not self.asked.all_hours and find_shade(self.project, mark) in ("tent", "shade_cloth")
        facing = self.project.value((*at, "facing")).number("deg")
        reflectance, emittance = (float(self._value((*color.path, name))) for name in _PAINT)
        ground = float(self._value(("site", "ground_reflectance")))
        reflected = self.project.get((*at, "reflecting_surface_near")) is True
        face = Face(facing, reflectance, emittance, ground, self.asked.thin_air, reflected, shaded)
        return model_surface(self.data, self._find_sun(), face)

    def _value(self, path: Path) -> Fraction | float:
        value: Fraction | float = self.project.value(path)
        return value

    def _find_sun(self) -> Sunshine:
        """The sun through the hours; raises Absent where neither project nor file tells the latitude."""
        if self._sunshine is None:
            given = self.project.get(("site", "latitude"))
            if given is None and self.data.station is None:
                raise Absent(("site", "latitude"))
            latitude = given.number("deg") if given is not None else self.data.station.latitude  # type: ignore[union-attr]
            self._sunshine = find_sunshine(self.data, latitude)
        return self._sunshine

    def _mark_shift(self, causes: list[int]) -> None:
        """Mark the hours that do not lie within the shift as a whole."""
        start: time | None = self.project.get(("schedule", "shift_start"))
        hours = self.project.get(("schedule", "shift_hours"))
        if start is None or hours is None:
            raise Absent(*(("schedule", name) for name in ("shift_start", "shift_hours") if not self._has(name)))
        begin, length = start.hour * 60 + start.minute, round(float(hours) * 60)
        outside = BIT["outside shift"]
        for at, slot in enumerate(self._clock):
            since = (slot.hour * 60 + slot.minute - begin) % _DAY
            if since + 60 > length:
                causes[at] |= outside

    @cached_property
    def _clock(self) -> list[datetime]:
        """The beginnings of the hours by the clock of the site, by which shift and shade are told.

        A file with a station has standard time through the year, any other the times that people wrote.
        """
        station, zone = self.data.station, find_zone(self.project.get(AT) or "")
        if station is None or zone is None:
            return self.data.starts
        days = {start.date() for start in self.data.starts}
        ahead = {day: timedelta(hours=find_offset(zone, day) - station.zone) for day in days}
        return [start + ahead[start.date()] for start in self.data.starts]

    def _has(self, name: str) -> bool:
        return self.project.get(("schedule", name)) is not None

    def _mark_sun(self, causes: list[int], mark: str) -> None:
        """Mark the hours without daylight, unless nights are worked, and those of direct sun on a wall left open."""
        sunshine = self._find_sun()
        if self.project.get(("schedule", "night_work")) is not True:
            for at, dark in enumerate(list_dark(sunshine)):
                causes[at] |= BIT["dark"] if dark else 0
        if find_shade(self.project, mark) in ("tent", "shade_cloth"):
            return
        observed = dict(self._list_observed(mark))
        facing = None
        if len(observed) < len(MONTHS):
            facing = self.project.value(("elevations", mark, "facing")).number("deg")
        sunlit = list_sunlit(self.data, sunshine, facing) if facing is not None else []
        bit = BIT["direct sun"]
        for at, slot in enumerate(self._clock):
            spans = observed.get(slot.month)
            lit = sunlit[at] if spans is None else not _lies_in(slot.hour * 60 + slot.minute, spans)
            causes[at] |= bit if lit else 0

    def _list_observed(self, mark: str) -> Iterator[tuple[int, list[tuple[int, int]]]]:
        """The hours of shade that were observed on an elevation, in minutes of the day, by month from 1 to 12."""
        at = ("elevations", mark, "shade_hours")
        spans: dict[int, list[tuple[int, int]]] = {}
        for one in self.project.members.get(at, ()):
            month, begin, end = (self.project.get((*at, one, name)) for name in ("month", "from", "to"))
            if None not in (month, begin, end):
                span = (begin.hour * 60 + begin.minute, end.hour * 60 + end.minute)
                spans.setdefault(MONTHS.index(month) + 1, []).append(span)
        yield from spans.items()

    def notes(self) -> Iterator[str]:
        """What is to be told of how the hours were judged."""
        station = self.data.station
        given = self.project.get(("site", "latitude"))
        if station is not None and given is not None and abs(station.latitude - given.number("deg")) > 2:
            yield (
                f"the file is of latitude {station.latitude:g}°, the site lies at {given.number('deg'):g}°: is it the "
                "nearest station?"
            )
        if self._sunshine is not None and station is None:
            yield "sun by solar time: give hours in local standard time"
        if not self.asked.all_hours and self._clock != self.data.starts:
            yield (
                f"hours are told in the file's standard time; shift and shade are held by the clock of "
                f"{self.project.value(AT)}, with summer time"
            )
        if self.asked.surface == "model" and not is_measured(self.data):
            yield "the file has no direct and diffuse sun: the wall is modeled under a clear sky, the hottest it can be"


def _lies_in(minutes: int, spans: list[tuple[int, int]]) -> bool:
    return any(begin <= minutes and minutes + 60 <= end for begin, end in spans)


_PAINT = ("solar_reflectance", "emittance")
