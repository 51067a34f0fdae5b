"""An entry of the site record as a report names it: when, where, and in which row of which file."""

from specgen.model.field import Schema
from specgen.model.record import Entry, day_of
from specgen.model.value_text import long_date, words


def tell_when(entry: Entry) -> str:
    """`April 5, 2027, 07:10`; without a time the day alone, empty without a day."""
    day, at = day_of(entry), entry.values.get("started_at", entry.values.get("time"))
    return ", ".join([*([long_date(day)] if day else []), *([at.strftime("%H:%M")] if at else [])])


def tell_where(entry: Entry) -> str:
    """`E1, left bay`: the elevation and the area, as far as they are told."""
    return ", ".join(filter(None, (entry.get("elevation"), entry.get("area"))))


def tell_row(entry: Entry) -> str:
    """`june.csv row 12`, `june.xlsx sheet Weather row 4`, `week.pdf row c3`: where an entry stands."""
    place = entry.place
    in_table = place.sheet or place.file.lower().endswith(".csv")
    row = f"row {place.row}" if place.row else f"{'row' if in_table else 'line'} {place.line}" if place.line else ""
    return " ".join(filter(None, (place.file, f"sheet {place.sheet}" if place.sheet else "", row)))


def name_reading(schema: Schema, collection: str, name: str) -> str:
    """The label of a field of an entry as it stands within a sentence: `air temperature`."""
    field = schema.field_at((collection, "*", name))
    label = field.label if field is not None else words(name)
    return label[:1].lower() + label[1:]


def name_group(collection: str, step: str) -> str:
    """`gloss`, `release of primer`: what the entries of a step are of."""
    said = words(step) if step else "no step told"
    return said if collection == "log" else f"{collection} of {said}" if step else f"{collection}, {said}"
