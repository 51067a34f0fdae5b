"""One line for each reading of the weather, below the limits of the work in hand."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.form_units import UNITS
from specgen.documents.views._record_blanks import make_blank, make_boxes
from specgen.documents.views._weather_limits import list_limits
from specgen.model.block import CheckBox

_READINGS = 5
_HEADS = (
    "Time",
    "Place, work",
    "Air, {temperature}",
    "Wall in sun, {temperature}",
    "Wall in shade, {temperature}",
    "RH, %",
    "Dew point, {temperature}",
    "Wind, {speed}",
    "Gust, {speed}",
    "Sky",
    "Now",
    "Until dry: low, {temperature}",
    "Until dry: rain",
    "Go",
)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """The limits of each kind of work, then a line for each reading."""
    lines = (*list_limits(context), *map(_reading, range(1, _READINGS + 1)))
    heads = tuple(head.format_map(UNITS[context.first]) for head in _HEADS)
    return TableView(heads, lines, (5, 8, 6, 6, 9, 6, 9, 7, 7, 4, 9, 10, 6, 8))


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
