"""The limits of site conditions in one table: condition, work under way, limit."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Every limit of weather and site that this project works by."""
    limit, display = context.limit, context.display
    lines = [
        ("Air and wall", "board, base coat", [limit("weather.least_eifs"), " at least"]),
        ("Air and wall", "smoothing, primer, gloss", [limit("weather.least_coats"), " at least"]),
        ("Hold of the least temperature", "after each coat", [limit("weather.hold"), " at least"]),
        ("Wall", "primer, gloss", [limit("weather.most_surface"), " at most"]),
        ("Relative humidity", "all coats", [display(("weather", "most_humidity")), " at most"]),
        ("Relative humidity, by the manufacturer", "primer", [display(("primer", "most_humidity")), " at most"]),
        ("Relative humidity, by the manufacturer", "gloss", [display(("gloss", "most_humidity")), " at most"]),
        ("Air and wall until dry", "primer", [display(("primer", "least_dry_temperature")), " at least"]),
        ("Air and wall until dry", "gloss", [display(("gloss", "least_dry_temperature")), " at least"]),
        ("Wall above dew point", "all coats", [limit("weather.above_dew_point"), " at least"]),
        ("Wind and gusts", "primer, gloss", [display(("weather", "max_spray_wind")), " at most"]),
        ("Sun", "primer, gloss", "none on the wall"),
        ("Rain", "all work until dry", "none, in the forecast either, unless the wall is tented"),
        ("Readings", "at the wall, sun and shade", ["every ", limit("weather.readings")]),
    ]
    return TableView(("Condition", "During", "Limit"), tuple(lines), (34, 33, 33))
