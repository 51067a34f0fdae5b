"""The limits of a reading on site: the strictest of the trade's, of the project's own, and of the coat in hand."""

from functools import partial
from typing import Any, NamedTuple

from specgen.judging.choice_groups import SPRAYED
from specgen.judging.rule import Limits
from specgen.model.absence import all_known, any_of, if_given
from specgen.model.field import Path
from specgen.model.project import Project, View
from specgen.model.source import Source
from specgen.model.typed_views import Description, Shading, SiteRecordEntry
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity
from specgen.resolving.limits_in_force import given_source


class Figure(NamedTuple):
    """A figure that a reading is held against, and where it comes from where the clause does not tell it."""

    value: Any
    sources: tuple[Source, ...] = ()


def sources_of(project: Project, path: Path) -> tuple[Source, ...]:
    """Where a figure that is given comes from; nothing for one that is usual, as the clause tells it."""
    return (given_source(project, path),) if path in project.values else ()


def planned(project: Description, *path: str) -> Figure:
    """The figure of a field of the project; raises Absent."""
    return Figure(project.project.value(path), sources_of(project.project, path))


def least_temperature(log: SiteRecordEntry, project: Description, limits: Limits, reading: Quantity) -> Figure:
    """The least temperature of air and wall for the coats: of the trade, or the higher one of the coat in hand.

    Raises Absent where the trade allows a reading, and what the manufacturer of the coat asks for is not given.
    """
    usual = Figure(limits("weather.least_coats"))
    if log.step not in SPRAYED or (less(reading, usual.value) and _lacks(project, log.step, "least_dry_temperature")):
        return usual
    own = planned(project, log.step, "least_dry_temperature")
    return own if less(usual.value, own.value) else usual


def most_humidity(log: SiteRecordEntry, project: Description, limits: Limits) -> Figure:
    """The highest humidity in percent: of the trade, or the lower one of the project or of the coat in hand.

    Raises Absent where these allow a reading, and what the manufacturer of the coat asks for is not given.
    """
    usual, own = Figure(limits("weather.humidity")), planned(project, "weather", "most_humidity")
    figure = own if less(own.value, usual.value) else usual
    step = if_given(lambda: log.step)
    if step not in SPRAYED or (more(log.humidity, figure.value) and _lacks(project, str(step), "most_humidity")):
        return figure
    of_coat = planned(project, str(step), "most_humidity")
    return of_coat if less(of_coat.value, figure.value) else figure


def _lacks(project: Description, *path: str) -> bool:
    return project.project.get(path) is None


def most_wind(project: Description, limits: Limits, wind: Any) -> Figure:
    """The strongest wind to spray in: of the trade, or the lower one of the project.

    Raises Absent where the project gives none and the trade allows the wind.
    """
    usual = limits("weather.wind_most")
    if if_given(lambda: project.weather.max_spray_wind) is None and more(wind, usual):
        return Figure(usual)
    own = planned(project, "weather", "max_spray_wind")
    return own if less(own.value, usual) else Figure(usual)


def is_tented(log: SiteRecordEntry, project: Description, *, heated: bool = False) -> bool:
    """Whether a tent stands at the elevation of an entry, or a heated one; raises Absent."""
    face = log.elevation
    return any_of(project.shade.find_referring("elevation", face.mark), partial(_is_tent_at, face, heated))


def _is_tent_at(face: View, heated: bool, shade: Shading) -> bool:
    return all_known(lambda: shade.kind == "tent", lambda: shade.elevation == face, lambda: not heated or shade.heated)
