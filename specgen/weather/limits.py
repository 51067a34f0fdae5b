"""Which limits of weather hold for a step on an elevation, each with its source: for GO, weather and records."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal, NamedTuple

from specgen.computing.shading import find_shade, list_shadings
from specgen.model.evaluation import evaluate
from specgen.model.field import Path
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.source import InForce, Source
from specgen.model.standard import Standards
from specgen.model.suggest import suggest
from specgen.quantities.comparison import less, more
from specgen.resolving.limits_in_force import limit_in_force, plan_source
from specgen.weather.heat import MOST, find_sunless, list_heat_paths
from specgen.weather.hold import EIFS_STEPS, Hold, find_hold

# Steps by the limits that they share.
COATS = ("smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss")
SPRAYED = ("primer", "gloss")
STEPS = ("wrb", *EIFS_STEPS, *COATS, "sealant")

# What is read: on the wall, in the air at it, above the dew point, by eye, or in the forecast of the hold.
Reading = Literal["air", "surface", "humidity", "margin", "wind", "gust", "rain", "sun", "frost"]
Sense = Literal["least", "most", "none"]


class SiteLimit(NamedTuple):
    """One limit of a step: what is read, which side of it is right, the figure and its source.

    `hold` are the hours after the work through which it must still hold, or before it for frost; 0 for the work alone.
    """

    reading: Reading
    sense: Sense
    value: Any  # a Quantity, or percent as a number; None where none of it is allowed
    source: Source
    hold: int = 0

    def breaks(self, value: Any) -> bool:
        """Whether a reading is on the wrong side; a limit itself is within."""
        if self.sense == "none":
            return bool(value)
        return less(value, self.value) if self.sense == "least" else more(value, self.value)


@dataclass(frozen=True)
class StepLimits:
    """The limits of a step, in the order in which they are told, and how the elevation is enclosed."""

    step: str
    limits: tuple[SiteLimit, ...]
    tented: bool = False
    heated: bool = False  # a tent that is
    unset: tuple[str, ...] = ()  # fields for which a figure of the trade stands in, or none is known

    def find(self, reading: Reading, sense: Sense) -> SiteLimit | None:
        """The limit of a reading, or None where the step has none."""
        return next((one for one in self.limits if (one.reading, one.sense) == (reading, sense)), None)

    def reads(self, reading: Reading) -> bool:
        """Whether the step has any limit of a reading."""
        return any(one.reading == reading for one in self.limits)


def find_limits(project: Project, standards: Standards, step: str, elevation: str = "") -> StepLimits:
    """The limits in force for a step; without an elevation those of all walls, none of them in a tent.

    Raises Refused for a step that has none, or that none of the walls takes.
    """
    _check_step(project, standards, step, elevation)
    made = _Limits(project, standards, elevation)
    kind = find_shade(project, elevation) if elevation else ""
    tented = kind == "tent"
    heated = tented and _is_heated(project, elevation)
    return StepLimits(step, tuple(made.list(step)), tented, heated, tuple(made.unset))


def _check_step(project: Project, standards: Standards, step: str, elevation: str) -> None:
    if step not in STEPS:
        told = f"the step {step!r} has no weather limits" if step in standards.steps else f"there is no step {step!r}"
        near = suggest(step, STEPS)
        raise refuse(told, near if near.startswith("did") else f"known: {', '.join(STEPS)}")
    when, walls = standards.steps[step].when, list_walls(project, elevation)
    if when and not any(evaluate(when, project, ("walls", wall)) for wall in walls):
        where = f"wall {walls[0]} of elevation {elevation}" if elevation and len(walls) == 1 else "the project"
        raise refuse(f"{where} has no step {step!r}", f"the step is taken where {when}")


def list_walls(project: Project, elevation: str = "") -> tuple[str, ...]:
    """The mark of the wall of an elevation; those of all walls where it is not told."""
    wall = project.get(("elevations", elevation, "wall")) if elevation else None
    return (wall.mark,) if wall is not None else project.members.get(("walls",), ())


def _is_heated(project: Project, elevation: str) -> bool:
    return any(project.get(("shade", mark, "heated")) is True for mark in list_shadings(project, elevation))


class _Limits:
    """The limits of one project, and what of it is not set."""

    def __init__(self, project: Project, standards: Standards, elevation: str) -> None:
        self.project, self.standards, self.elevation = project, standards, elevation
        self.unset: list[str] = []

    def list(self, step: str) -> Iterator[SiteLimit]:
        if step == "wrb":
            yield from self._of_barrier()
        elif step == "sealant":
            yield from self._of_sealant()
        else:
            yield from self._of_air(step)
        if step in EIFS_STEPS:
            frost = self._row("weather.after_frost")
            yield SiteLimit("frost", "none", None, frost.source, int(frost.value))
        if step in SPRAYED:
            yield from self._of_spraying()
        yield from self._of_heat(step)
        hold = self._hold(step)
        yield SiteLimit("rain", "none", None, hold.source, hold.hours)

    def _hold(self, step: str) -> Hold:
        """The hours after a step through which warmth and dryness must hold."""
        return find_hold(self.project, self.standards, step, list_walls(self.project, self.elevation) or ("",))

    def _of_air(self, step: str) -> Iterator[SiteLimit]:
        least = self._row("weather.least_eifs" if step in EIFS_STEPS else "weather.least_coats")
        least = self._stricter(least, (step, "least_dry_temperature"), least_counts=True)
        yield SiteLimit("air", "least", least.value, least.source, self._hold(step).hours)
        yield SiteLimit("surface", "least", least.value, least.source)
        if step in SPRAYED:
            hottest = self._stricter(self._row("weather.most_surface"), (step, MOST), least_counts=False)
            yield SiteLimit("surface", "most", hottest.value, hottest.source)
        damp = self._stricter(self._planned_humidity(), (step, "most_humidity"), least_counts=False)
        yield SiteLimit("humidity", "most", damp.value, damp.source)
        margin = self._row("weather.above_dew_point")
        yield SiteLimit("margin", "least", margin.value, margin.source)

    def _of_spraying(self) -> Iterator[SiteLimit]:
        most = self._planned_wind()
        yield SiteLimit("wind", "most", most.value, most.source)
        yield SiteLimit("gust", "most", most.value, most.source)
        yield SiteLimit("sun", "none", None, self._row("weather.hold").source)

    def _of_heat(self, step: str) -> Iterator[SiteLimit]:
        """What the instructions of the material allow: the lowest figure of the walls, and no sun where one asks."""
        walls = list_walls(self.project, self.elevation)
        paths = [path for path in list_heat_paths(step, walls, MOST) if self.project.get(path) is not None]
        if paths:
            lowest = min(paths, key=lambda path: self.project.get(path).amount)
            yield SiteLimit("surface", "most", self.project.get(lowest), self._source(lowest))
        if (shaded := find_sunless(self.project, step, walls)) is not None:
            yield SiteLimit("sun", "none", None, self._source(shaded))

    def _of_barrier(self) -> Iterator[SiteLimit]:
        paths = [("walls", mark, "wrb", "least_temperature") for mark in list_walls(self.project, self.elevation)]
        given = [(self.project.get(path), path) for path in paths if self.project.get(path) is not None]
        if not given:
            self.unset.append("walls.*.wrb.least_temperature")
            return
        value, path = max(given, key=lambda pair: pair[0].amount)
        source = self._source(path)
        yield SiteLimit("air", "least", value, source, self._hold("wrb").hours)
        yield SiteLimit("surface", "least", value, source)

    def _of_sealant(self) -> Iterator[SiteLimit]:
        for name, sense in (("install_low", "least"), ("install_high", "most")):
            paths = [("joints", mark, name) for mark in self.project.members.get(("joints",), ())]
            given = [(self.project.get(path), path) for path in paths if self.project.get(path) is not None]
            if given:
                strictest = max if sense == "least" else min
                value, path = strictest(given, key=lambda pair: pair[0].amount)
                yield SiteLimit("surface", "least" if sense == "least" else "most", value, self._source(path))
            else:
                self.unset.append(f"joints.*.{name}")

    def _planned_wind(self) -> InForce:
        """The wind that the project sprays up to, never above the published one; else the usual one of the trade."""
        most = self._row("weather.wind_most")
        planned = self.project.get(("weather", "max_spray_wind"))
        if planned is None:
            self.unset.append("weather.max_spray_wind")
            return self._row("weather.wind_usual")
        return most if more(planned, most.value) else InForce(planned, self._source(("weather", "max_spray_wind")))

    def _planned_humidity(self) -> InForce:
        most, path = self._row("weather.humidity"), ("weather", "most_humidity")
        planned = self.project.get(path)
        return most if planned is None or more(planned, most.value) else InForce(planned, self._source(path))

    def _stricter(self, figure: InForce, path: Path, *, least_counts: bool) -> InForce:
        """The figure, or that of the manufacturer of the coat where it asks for more."""
        if path[0] not in SPRAYED or (own := self.project.get(path)) is None:
            return figure
        stricter = more(own, figure.value) if least_counts else less(own, figure.value)
        return InForce(own, self._source(path)) if stricter else figure

    def _row(self, name: str) -> InForce:
        return limit_in_force(self.project, self.standards.limits[name])

    def _source(self, path: Path) -> Source:
        return plan_source(self.project, path, self.project.schema.node(path).field, self.standards)  # type: ignore[arg-type]
