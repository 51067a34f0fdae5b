"""One line for each reading of the weather, below the limits of the work in hand."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue, take_stricter
from specgen.documents.form_units import UNITS
from specgen.documents.marks import list_marks
from specgen.documents.standing_walls import list_standing
from specgen.documents.views._record_blanks import bracket, make_blank, make_boxes
from specgen.documents.views.weather_work import ON_STANDING
from specgen.model.block import CheckBox

_READINGS = 5
_ANY = "–"
_HEADS = (
    "Time",
    "Place",
    "Air, {temperature}",
    "Wall in sun, {temperature}",
    "Wall in shade, {temperature}",
    "RH, %",
    "Dew point, {temperature}",
    "Wind, {speed}",
    "Gust, {speed}",
    "Sky",
    "Now",
    "Next 24 h: low, {temperature}",
    "Next 24 h: rain",
    "Go",
)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """The limits of each kind of work, then a line for each reading."""
    lines = (*_limits(context), *map(_reading, range(1, _READINGS + 1)))
    heads = tuple(head.format_map(UNITS[context.first]) for head in _HEADS)
    return TableView(heads, lines, (5, 8, 7, 6, 9, 6, 9, 7, 7, 4, 9, 7, 7, 9))


def _limits(context: DocumentContext) -> list[tuple[Any, ...]]:
    """The limits of each kind of work, the strictest figure where a manufacturer has his own."""
    coats, boards = context.limit("weather.least_coats"), context.limit("weather.least_eifs")
    dry = [context.display((coat, "least_dry_temperature")) for coat in ("primer", "gloss")]
    damp = [context.display((coat, "most_humidity")) for coat in ("primer", "gloss")]
    humidity = context.display(("weather", "most_humidity"))
    rain = "none, or tented" if _is_tented(context) else "none"
    wind = context.display(("weather", "max_spray_wind"))
    sprayed = take_stricter(True, coats, *dry)
    return [
        *_limits_of_repair(context),
        *_limits_of_barrier(context, rain),
        _limit(context, "boards, base coat", boards, humidity, rain),
        _limit(context, "smoothing", coats, humidity, rain),
        _limit(context, "primer, gloss", sprayed, take_stricter(False, humidity, *damp), rain, wind),
        *_limits_of_sealant(context, rain),
    ]


def _limits_of_repair(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    """The limits of work on a wall that stands already: those of its mortar and of the EIFS manufacturer."""
    if list_standing(context):
        least = "per EIFS instructions"
        cells = (ON_STANDING, "no frost", _ANY, least, *(_ANY,) * 5, "no rain", "no frost", "none", "go: all met")
        yield ("Limit", *cells)


def _limits_of_barrier(context: DocumentContext, rain: str) -> Iterator[tuple[Any, ...]]:
    """The least temperature of the barriers, the strictest where walls differ; else their manufacturer's word."""
    walls = [("walls", mark, "wrb") for mark in list_marks(context, "walls")]
    given = [
        context.display((*at, "least_temperature"))
        for at in walls
        if context.project.get((*at, "kind")) not in (None, "none")
    ]
    if given:
        least = take_stricter(True, *given)
        cell = ["min. ", least] if not least.open else "data sheet"
        yield ("Limit", "WRB", cell, _ANY, cell, *(_ANY,) * 5, "no rain", cell, rain, "go: all met")


def _limits_of_sealant(context: DocumentContext, rain: str) -> Iterator[tuple[Any, ...]]:
    """The temperatures that the widths of the joints are computed for, the narrowest where joints differ."""
    joints = list_marks(context, "joints")
    low, high = (
        [context.display(("joints", mark, name)) for mark in joints] for name in ("install_low", "install_high")
    )
    if joints:
        span = [bracket(take_stricter(True, *low), "minimum"), " to ", bracket(take_stricter(False, *high), "maximum")]
        dry = ["dry face, min. ", context.limit("weather.above_dew_point"), " above"]
        yield ("Limit", "sealant", _ANY, _ANY, span, _ANY, dry, *(_ANY,) * 3, "no rain", _ANY, rain, "go: all met")


def _limit(
    context: DocumentContext,
    work: str,
    least: DisplayValue,
    humidity: DisplayValue,
    rain: str,
    wind: DisplayValue | None = None,
) -> tuple[Any, ...]:
    """The limits of one kind of work; those of wind, heat, and sun are of the sprayed coats alone."""
    if wind is not None and wind.open:
        gust: Any = ["max. ", context.limit("weather.wind_usual")]
    else:
        gust = _ANY if wind is None else ["max. ", wind]
    shade = ["min. ", least] if wind is None else [least, " to ", context.limit("weather.most_surface")]
    dew = ["wall min. ", context.limit("weather.above_dew_point"), " above"]
    return (
        "Limit",
        work,
        ["min. ", least],
        "not in sun" if wind is not None else _ANY,
        shade,
        ["max. ", bracket(humidity, "limit")],
        dew,
        gust,
        gust,
        _ANY,
        "no sun, no rain" if wind is not None else "no rain",
        ["min. ", least],
        rain,
        "go: all met",
    )


def _is_tented(context: DocumentContext) -> bool:
    return any(context.project.get(("shade", mark, "kind")) == "tent" for mark in list_marks(context, "shade"))


def _reading(number: int) -> tuple[Any, ...]:
    row = f"c{number}"

    def blank(label: str, field: str) -> Any:
        return make_blank(f"{label}, reading {number}", field, row)

    sun, rain = (
        CheckBox(word, f"log.{field}.{row}", "yes") for word, field in (("sun", "sun_on_wall"), ("rain", "rain"))
    )
    return (
        blank("Time", "log.started_at"),
        blank("Place", "log.area"),
        blank("Air temperature", "log.air"),
        blank("Wall temperature in sun", "form.surface_in_sun"),
        blank("Wall temperature in shade", "log.surface"),
        blank("Relative humidity", "log.humidity"),
        blank("Dew point", "form.dew_point"),
        blank("Wind", "log.wind"),
        blank("Gust", "log.gust"),
        blank("Sky", "form.sky"),
        [sun, " ", rain],
        blank("Lowest temperature forecast", "log.forecast_low"),
        [CheckBox("rain", f"log.forecast_rain.{row}", "yes")],
        make_boxes((("yes", "go"), ("no", "no-go")), "form.go", row),
    )
