"""A value of an entry as it stands on a form: in the unit of the form, else as it was written with its own."""

from collections.abc import Sequence
from datetime import date, time
from fractions import Fraction
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.field import Field
from specgen.model.record import Entry, day_of
from specgen.model.value_text import long_date, value_text, words
from specgen.quantities.format import format_decimal, format_inches, format_quantity
from specgen.quantities.quantity import Quantity


def tell_on_form(value: Any, field: Field | None, system: str) -> str:
    """A value in a blank whose title names the unit: `61`, `7-1/2`, `58` of 58%; `16 °C` as written in another unit."""
    if isinstance(value, Quantity):
        unit = "" if field is None else field.unit_ip if system == "ip" else field.unit_si
        if value.unit != unit:
            return format_quantity(value, value.unit)
        number = value.to(unit)
        return format_inches(number) if unit == "in" else format_decimal(number, 8)
    return tell_plainly(value, field).removesuffix("%")


def tell_plainly(value: Any, field: Field | None) -> str:
    """A value in words, a quantity with the unit it was written in, a time by the 24-hour clock."""
    if isinstance(value, Quantity):
        return format_quantity(value, value.unit)
    if isinstance(value, time):
        return value.strftime("%H:%M")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, (int, Fraction, float)) and not isinstance(value, bool):
        text = format_decimal(value, 8)
        return f"{text}%" if field is not None and field.kind == "percent" else text
    return value_text(value, field)


def tell_place(entry: Entry) -> str:
    """Where an entry stands in its file: `june.csv, row 12`; empty for one without a file."""
    place = entry.place
    rows = "row" if place.sheet or place.file.lower().endswith(".csv") else "line"
    where = f"row {place.row}" if place.row else f"{rows} {place.line}" if place.line else ""
    return ", ".join(filter(None, (place.file, place.sheet, where)))


def tell_face(entry: Entry) -> str:
    """`E1, left bay, gloss`: elevation, area and step of an entry, as far as it tells them."""
    step = entry.get("step")
    return ", ".join(filter(None, (entry.get("elevation"), entry.get("area"), words(step) if step else "")))


def tell_when(entry: Entry) -> str:
    """`April 5, 2027, 07:10`; without a time the day alone, empty without a day."""
    day = day_of(entry)
    at = entry.values.get("started_at", entry.values.get("time"))
    told = [long_date(day)] if day is not None else []
    return ", ".join([*told, *([at.strftime("%H:%M")] if at is not None else [])])


def tell_span(entries: Sequence[Entry]) -> str:
    """The days of entries from the first to the last: `2027-06-14 to 2027-06-20`; empty where none tells a day."""
    days = sorted(day for day in map(day_of, entries) if day is not None)
    if not days:
        return ""
    return days[0].isoformat() if days[0] == days[-1] else f"{days[0].isoformat()} to {days[-1].isoformat()}"


def tell_disposition(entry: Entry) -> str:
    """`recoated on July 16, 2027, by L. Novak: north bay only`: what was decided on a nonconformance."""
    note = f": {entry.get('note')}" if entry.get("note") else ""
    decision, day = words(entry.values["decision"]), long_date(entry.values["decided_on"])
    return f"{decision} on {day}, by {entry.values['by']}{note}"


def name_criterion(context: DocumentContext, entry: Entry) -> str:
    """What the criterion of a result is called: `Gloss`, `Project criterion 2`."""
    row, own = context.standards.criteria.get(str(entry.get("criterion"))), entry.get("own")
    return f"Project criterion {own}" if own else row.title if row else "criterion not told"
