"""The limits of the weather record: one line for each kind of work, the strictest figure where materials differ."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from specgen.documents.composing import letter_here
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue, take_stricter
from specgen.documents.marks import list_marks
from specgen.documents.standing_walls import list_standing
from specgen.documents.views._heat import SPRAYED, list_heat, list_sprayed_heat
from specgen.documents.views._record_blanks import bracket
from specgen.documents.views.weather_work import ON_STANDING
from specgen.scheduling.applying import applies
from specgen.weather.hold import find_hold

_ANY, _GO = "–", "go: all met"
_BOARDS, _SMOOTHING, _SPRAYED = "boards, base coat", "smoothing", "primer, gloss"
# The steps of a line, of which the one that dries longest is told.
_STEPS = {
    "WRB": ("wrb",),
    _BOARDS: ("boards", "heavy_mesh", "mesh", "second_pass"),
    _SMOOTHING: ("smoothing_1", "smoothing_2"),
    _SPRAYED: ("primer", "gloss"),
}


@dataclass(frozen=True, kw_only=True)
class _Line:
    """The cells of a line that differ from `–`, in the order of the columns behind its work."""

    work: str
    air: Any = _ANY
    sun: Any = _ANY
    shade: Any = _ANY
    humidity: Any = _ANY
    dew: Any = _ANY
    wind: Any = _ANY
    now: Any = "no rain"
    low: Any = _ANY
    rain: Any

    def set(self) -> tuple[Any, ...]:
        """The cells as they print."""
        measured = (self.air, self.sun, self.shade, self.humidity, self.dew, self.wind, self.wind, _ANY)
        return ("Limit", self.work, *measured, self.now, self.low, self.rain, _GO)


def list_limits(context: DocumentContext) -> list[tuple[Any, ...]]:
    """The line of each kind of work that the project has."""
    rain = "none, or tented" if _is_tented(context) else "none"
    lines = [
        *_of_repair(context),
        *_of_barrier(context, rain),
        _of_coat(context, _BOARDS, context.limit("weather.least_eifs"), rain),
        _of_coat(context, _SMOOTHING, context.limit("weather.least_coats"), rain),
        _of_sprayed(context, rain),
        *_of_sealant(context, rain),
    ]
    return [line.set() for line in lines]


def _of_repair(context: DocumentContext) -> Iterator[_Line]:
    """Work on a wall that stands already has the limits of its mortar and of the EIFS manufacturer."""
    if list_standing(context):
        least = "per EIFS instructions"
        yield _Line(work=ON_STANDING, air="no frost", shade=least, low="no frost", rain="none")


def _of_barrier(context: DocumentContext, rain: str) -> Iterator[_Line]:
    """The least temperature of the barriers; else their manufacturer's word."""
    walls = [("walls", mark, "wrb") for mark in list_marks(context, "walls")]
    given = [
        context.display((*at, "least_temperature"))
        for at in walls
        if context.project.get((*at, "kind")) not in (None, "none")
    ]
    if given:
        least = take_stricter(True, *given)
        sheet = "data sheet" if least.open else None
        warm = sheet or _tell_range(context, ("WRB",), least)
        low = sheet or ["min. ", letter_here(least), *_tell_hours(context, "WRB")]
        yield _Line(work="WRB", air=warm, shade=warm, low=low, rain=rain, **_tell_sun(context, ("WRB",)))


def _of_coat(context: DocumentContext, work: str, least: DisplayValue, rain: str) -> _Line:
    """Boards, base coat, or smoothing: least temperature of the trade, heat and sun of its instructions."""
    works = tuple(work.split(", "))
    warm = _tell_range(context, works, least)
    return _Line(
        work=work,
        air=warm,
        shade=warm,
        humidity=_tell_humidity(context.display(("weather", "most_humidity"))),
        dew=_tell_dew(context),
        low=["min. ", letter_here(least), *_tell_hours(context, work)],
        rain=rain,
        **_tell_sun(context, works),
    )


def _of_sprayed(context: DocumentContext, rain: str) -> _Line:
    """Primer and gloss: what their manufacturer asks for beyond the trade, wind, and the heat of the wall."""
    dry, damp = (
        [context.display((coat, name)) for coat in SPRAYED] for name in ("least_dry_temperature", "most_humidity")
    )
    least = take_stricter(True, *dry, context.limit("weather.least_coats"))
    hottest = [one.most for one in list_sprayed_heat(context) if one.most is not None]
    wind = context.display(("weather", "max_spray_wind"))
    return _Line(
        work=_SPRAYED,
        air=[least, " to ", take_stricter(False, *hottest)] if hottest else ["min. ", least],
        sun="not in sun",
        shade=[least, " to ", take_stricter(False, *hottest, context.limit("weather.most_surface"))],
        humidity=_tell_humidity(take_stricter(False, context.display(("weather", "most_humidity")), *damp)),
        dew=_tell_dew(context),
        wind=["max. ", context.limit("weather.wind_usual") if wind.open else wind],
        now="no sun, no rain",
        low=["min. ", letter_here(least), *_tell_hours(context, _SPRAYED)],
        rain=rain,
    )


def _of_sealant(context: DocumentContext, rain: str) -> Iterator[_Line]:
    """The temperatures that the widths of the joints are computed for, the narrowest where joints differ."""
    joints = list_marks(context, "joints")
    low, high = (
        [context.display(("joints", mark, name)) for mark in joints] for name in ("install_low", "install_high")
    )
    if joints:
        span = [bracket(take_stricter(True, *low), "minimum"), " to ", bracket(take_stricter(False, *high), "maximum")]
        dry = ["dry face, min. ", context.limit("weather.above_dew_point"), " above"]
        yield _Line(work="sealant", sun="as in shade", shade=span, dew=dry, rain=rain)


def _tell_range(context: DocumentContext, works: Sequence[str], least: DisplayValue) -> list[Any]:
    """`min. 40 °F`, or `40 °F to 100 °F` where the instructions give the upper end too."""
    tops = [one.most for one in list_heat(context) if one.work in works and one.most is not None]
    return [least, " to ", take_stricter(False, *tops)] if tops else ["min. ", least]


def _tell_sun(context: DocumentContext, works: Sequence[str]) -> dict[str, str]:
    """The cells of sun where the instructions forbid it."""
    shaded = any(one.sun is False for one in list_heat(context) if one.work in works)
    return {"sun": "not in sun", "now": "no sun, no rain"} if shaded else {}


def _tell_hours(context: DocumentContext, work: str) -> list[str]:
    """`, 36 h`, or `, 24 h to 48 h` by the step: how long warmth must last; `until dry` where no hours are known."""
    project, steps, walls = context.project, context.standards.steps, list_marks(context, "walls")
    found = (
        find_hold(project, context.standards, step, walls or ("",)).hours
        for step in _STEPS[work]
        if not walls or any(applies(steps[step].when, project, wall) for wall in walls)
    )
    hours = sorted({one for one in found if one})
    return [f", {' to '.join(f'{one} h' for one in dict.fromkeys((hours[0], hours[-1])))}"] if hours else [" until dry"]


def _tell_humidity(most: DisplayValue) -> list[Any]:
    return ["max. ", bracket(most, "limit")]


def _tell_dew(context: DocumentContext) -> list[Any]:
    return ["wall min. ", context.limit("weather.above_dew_point"), " above"]


def _is_tented(context: DocumentContext) -> bool:
    return any(context.project.get(("shade", mark, "kind")) == "tent" for mark in list_marks(context, "shade"))
