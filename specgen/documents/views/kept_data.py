"""What is kept for a later repair: colors, batches, cup time and water, records, coating in reserve."""

import datetime
from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.documents.views.orders import find_delivery
from specgen.model.block import Blank
from specgen.model.dates import months_after
from specgen.model.value_text import long_date

Row = tuple[Any, Any, Any]
# The beginning of spring in the north and in the south.
_EQUINOX = ((3, 20), (9, 22))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each, with what is known of it and room for what the work adds."""
    lines = (*_colors(context), *_coats(context), *_records())
    return TableView(("Keep", "Of this project", "From the work"), tuple(lines), (21, 55, 24))


def _colors(context: DocumentContext) -> Iterator[Row]:
    if not list_marks(context, "colors"):
        yield "Color", DisplayValue("[Color]", open=True, asks="colors"), Blank("Color", field="form.color")
    for mark in list_marks(context, "colors"):
        reference, number, angles = (
            context.display(("colors", mark, name)) for name in ("reference", "number", "angles")
        )
        told: list[Any] = [reference]
        told += [] if number.open else [", manufacturer's No. ", number]
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
        kept += [] if months.open else ["; shelf life ", months, *_tell_use_by(context, int(months.raw))]
        place = Blank(f"Place of the reserve of {coat}", field=f"form.reserve.{coat}")
        yield f"{coat.capitalize()} in reserve", kept, place


def _tell_use_by(context: DocumentContext, months: int) -> list[str]:
    """The day by which coating of the work is too old, and whether that is before anybody looks for damage."""
    delivered = find_delivery(context)
    if delivered is None:
        return []
    last, spring = months_after(delivered, months), _find_first_spring(context)
    early = ""
    if spring and last < spring:
        early = "; make the first inspection before that day, or have the manufacturer extend it in writing"
    latest = f"use by {long_date(last)} at the latest (arrival {long_date(delivered)})"
    return [f" from manufacture per its label: {latest}{early}"]


def _find_first_spring(context: DocumentContext) -> datetime.date | None:
    """The first day of spring behind the completion of the contract; None while that is open."""
    completed, latitude = (
        context.project.get(path) for path in (("contract", "completion_date"), ("site", "latitude"))
    )
    if completed is None:
        return None
    month, day = _EQUINOX[bool(latitude and latitude.amount < 0)]
    spring = datetime.date(completed.year, month, day)
    return spring if spring > completed else spring.replace(year=completed.year + 1)


def _records() -> Iterator[Row]:
    yield (
        "Records",
        "Form D10 with accepted settings, site record D12, releases and viewings D11, panel and joint lists D07, data "
        "and safety data sheets",
        Blank("Place of the records", field="form.place_of_records"),
    )
