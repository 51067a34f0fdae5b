"""The limits of field conditions in one table: condition, work under way, limit."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.field import Path

_COATS = "smoothing, primer, gloss"
_SPRAYED = "primer, gloss"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Every limit of weather and site that this project works by."""
    limit, display = context.limit, context.display
    held = [", during application and ", limit("weather.hold"), " after"]
    lines = [
        ("Air and wall temperature", "boards, base coat", ["minimum ", limit("weather.least_eifs"), *held]),
        ("Air and wall temperature", _COATS, ["minimum ", limit("weather.least_coats"), *held]),
        *_of_manufacturer(context, "Air and wall temperature until dry", "minimum", "least_dry_temperature"),
        ("Frost on the wall", "boards, base coat", ["none within ", limit("weather.after_frost")]),
        ("Wall temperature", _SPRAYED, ["maximum ", limit("weather.most_surface")]),
        ("Relative humidity", "all coats", ["maximum ", display(("weather", "most_humidity"))]),
        *_of_manufacturer(context, "Relative humidity", "maximum", "most_humidity", below=("weather", "most_humidity")),
        ("Wall temperature above dew point", "all coats", ["minimum ", limit("weather.above_dew_point")]),
        ("Wind and gusts", _SPRAYED, ["maximum ", display(("weather", "max_spray_wind"))]),
        ("Direct sun", _SPRAYED, "none"),
        ("Rain", "all work until dry", "none present or forecast, unless the wall is tented"),
        ("Readings", "at the wall, in sun and shade", ["maximum ", limit("weather.readings"), " apart"]),
    ]
    return TableView(("Condition", "During", "Limit"), tuple(lines), (34, 26, 40))


def _of_manufacturer(
    context: DocumentContext, condition: str, side: str, name: str, below: Path = ()
) -> Iterator[tuple[str, str, Any]]:
    """One row for each sprayed coat for which a figure is given, or one for both where it is the same.

    Of a condition that the project limits too, at `below`, only a lower figure prints: the stricter counts.
    """
    given = {coat: context.display((coat, name)) for coat in ("primer", "gloss") if context.project.get((coat, name))}
    bound = context.display(below) if below else None
    if bound:
        given = {coat: figure for coat, figure in given.items() if figure.raw < bound.raw}
    if len(given) == 2 and given["primer"] == given["gloss"]:
        given = {_SPRAYED: given["gloss"]}
    for coat, figure in given.items():
        yield condition, coat, [f"{side} ", figure]
