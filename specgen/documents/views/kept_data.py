"""What is kept for a later repair: colors, batches, cup time and water, records, coating in reserve."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.model.block import Blank

Row = tuple[Any, Any, Any]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each, with what is known of it and room for what the work adds."""
    lines = (*_colors(context), *_coats(context), *_records())
    return TableView(("Keep", "Of this project", "From the work"), tuple(lines), (24, 46, 30))


def _colors(context: DocumentContext) -> Iterator[Row]:
    if not list_marks(context, "colors"):
        yield "Color", DisplayValue("[Color]", open=True, asks="colors"), Blank("Color", field="form.color")
    for mark in list_marks(context, "colors"):
        reference, number, angles = (
            context.display(("colors", mark, name)) for name in ("reference", "number", "angles")
        )
        told: list[Any] = [reference]
        told += [] if number.open else [", manufacturer’s No. ", number]
        told += [] if angles.open else ["; angles, degrees: ", angles]
        yield f"Color {mark}", told, Blank(f"Readings of color {mark}", field=f"form.color_readings.{mark}")
    units, angle, within = (context.display(("gloss_target", name)) for name in ("units", "angle", "tolerance"))
    if not units.open:
        yield (
            "Gloss",
            [units, *([] if within.open else [" ± ", within]), " gloss units at ", angle, " degrees"],
            Blank("Readings of gloss", field="form.gloss_readings"),
        )


def _coats(context: DocumentContext) -> Iterator[Row]:
    for coat in ("primer", "gloss"):
        product, least, most, water, reserve, months = (
            context.display((coat, name))
            for name in ("product", "cup_least", "cup_most", "max_water", "reserve", "shelf_life_months")
        )
        told: list[Any] = [product, "; cup time ", least, " to ", most]
        told += [", water maximum ", water]
        yield (
            f"{coat.capitalize()}: batch, cup, cup time, water",
            told,
            Blank(f"Batch, cup time, and water of {coat}", field=f"form.batch.{coat}"),
        )
        kept: list[Any] = [reserve, " of the quantity of all coats, boxed, resealed, and labeled"]
        least = context.display((coat, "least_storage_temperature"))
        kept += ["; no frost"] if least.open else ["; stored at a minimum of ", least]
        kept += [] if months.open else ["; shelf life ", months]
        place = Blank(f"Place of the reserve of {coat}", field=f"form.reserve.{coat}")
        yield f"{coat.capitalize()} in reserve", kept, place


def _records() -> Iterator[Row]:
    yield (
        "Records",
        "Form D10 with accepted settings, site record D12, releases and viewings D11, panel and joint lists D07, data "
        "and safety data sheets",
        Blank("Place of the records", field="form.place_of_records"),
    )
