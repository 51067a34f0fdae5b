"""The readings that trends are drawn of: each with its limits, as far as the project gives them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from typing import Literal, NamedTuple

from specgen.computing import find
from specgen.computing.coats.wet_film import name_aimed
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue, take_stricter
from specgen.documents.form_units import UNITS
from specgen.documents.records.dew import compute_dew_point
from specgen.documents.records.reading_figures import read_figure
from specgen.documents.records.sheets_of_record import mark_entries
from specgen.model.record import Entry, day_of
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity
from specgen.recording.mockup_results import split_readings

# Nothing is drawn of fewer readings: two points make no trend.
LEAST_READINGS = 3
COATS = ("primer", "gloss")
Sense = Literal["minimum", "maximum", "target"]


class Point(NamedTuple):
    """A reading: its place along the figure, its value, and whether it is outside its limit."""

    at: float  # the number of the pail or reading, or a day with its time
    value: float
    outside: bool
    entry: Entry


class Bound(NamedTuple):
    """A limit that is drawn: its value in the unit of the trend, and as it prints with its source."""

    sense: Sense
    value: float
    shown: DisplayValue


@dataclass(frozen=True)
class Trend:
    """The readings of one quantity in their order; `dated` where they stand at their days and not one by one."""

    title: str
    unit: str
    points: tuple[Point, ...]
    bounds: tuple[Bound, ...]
    dated: bool = False
    of_each: str = "pail"  # what stands along the figure where they are not dated
    is_within: bool = False  # whether the limits are both sides of one figure


def list_trends(context: DocumentContext) -> tuple[Trend, ...]:
    """The trends of all that was read at least once, in the order of the work."""
    return tuple(trend for trend in _gather(context) if trend.points)


def _gather(context: DocumentContext) -> Iterator[Trend]:
    for coat in COATS:
        window = _bounds(context, ("minimum", (coat, "cup_least")), ("maximum", (coat, "cup_most")))
        yield _of_pails(context, f"Cup time after water, {coat}", "cup_time", coat, "s", window)
        water = _bounds(context, ("maximum", (coat, "max_water")))
        yield _of_pails(context, f"Water, {coat}", "water", coat, "%", water)
    for coat in COATS:
        yield _films(context, coat)
    yield _gloss(context)
    yield from _temperatures(context)


def _bounds(context: DocumentContext, *asked: tuple[Sense, tuple[str, ...]]) -> tuple[Bound, ...]:
    """The limits that the project gives; one that is open is left out."""
    shown = ((sense, context.display(path)) for sense, path in asked)
    return tuple(Bound(sense, _number(value.raw, ""), value) for sense, value in shown if not value.open)


def _number(value: object, unit: str) -> float:
    if isinstance(value, Quantity):
        return value.number(unit or value.unit)
    return float(Fraction(str(value)))


def _entries(context: DocumentContext, name: str, coats: Iterable[str]) -> list[Entry]:
    """The entries of these coats that have a reading, in the order of their days."""
    found = [e for e in context.project.records.of("log") if name in e.values and e.get("step") in coats]
    return sorted(found, key=lambda entry: (_moment(entry), entry.number))


def _moment(entry: Entry) -> datetime:
    day = day_of(entry)
    if day is None:
        return datetime.max
    return entry.began or datetime(day.year, day.month, day.day)


def _is_outside(value: float, bounds: Iterable[Bound]) -> bool:
    return any(
        value < bound.value if bound.sense == "minimum" else bound.sense == "maximum" and value > bound.value
        for bound in bounds
    )


def _of_pails(
    context: DocumentContext, title: str, name: str, coat: str, unit: str, bounds: tuple[Bound, ...]
) -> Trend:
    points = []
    for number, entry in enumerate(_entries(context, name, (coat,)), 1):
        value = _number(entry.values[name], unit if unit != "%" else "")
        points.append(Point(number, value, _is_outside(value, bounds), entry))
    return Trend(title, unit, tuple(points), bounds)


def _films(context: DocumentContext, coat: str) -> Trend:
    """Wet film beside its target; which reading is outside is for the clauses that judge it."""
    unit = "mil" if context.first == "ip" else "um"
    bounds = tuple(_film_targets(context, coat, unit))
    marks = mark_entries(context.recorded.nonconformances)
    points = tuple(
        Point(n, _number(e.values["wet_film"], unit), "wet_film" in marks.get(("log", e.number), {}), e)
        for n, e in enumerate(_entries(context, "wet_film", (coat,)), 1)
    )
    return Trend(f"Wet film, {coat}", UNITS[context.first]["film"], points, bounds, of_each="reading")


def _film_targets(context: DocumentContext, coat: str, unit: str) -> Iterator[Bound]:
    """The wet film aimed at with the least and the most water of the pails; at the most allowed where none is told."""
    most = context.computed("wet-film", (coat,))
    water = [Fraction(entry.values["water"]) for entry in _entries(context, "water", (coat,))]
    if most.open or not water:
        yield from () if most.open else (Bound("target", _number(most.raw, unit), most),)
        return
    names = (name_aimed(context.project, coat), "volume_solids")
    film, solids = (context.project.get((coat, name)) for name in names)
    wet_film = find("wet-film")
    assert wet_film.direct is not None
    assert wet_film.as_read is not None
    of_film: dict[Quantity, list[str]] = {}
    for share in dict.fromkeys((min(water), max(water))):
        working = wet_film.direct(dft=film, volume_solids=solids, thinning=share, system=context.first)
        read = wet_film.as_read(float(working.result), working.unit)
        of_film.setdefault(read, []).append(f"{format_decimal(share, 3)}%")
    for read, shares in of_film.items():
        text = f"{context.text(read, None)} at {' and '.join(shares)} water"
        yield Bound("target", _number(read, unit), DisplayValue(text, read, most.source))


def _gloss(context: DocumentContext) -> Trend:
    """The readings of gloss on the mockup, beside the tolerance."""
    target, within = (context.display(("gloss_target", name)) for name in ("units", "tolerance"))
    bounds: tuple[Bound, ...] = ()
    if not target.open and not within.open:
        middle, span = Fraction(target.raw), Fraction(within.raw)
        told = DisplayValue(f"{target.text} ± {within.text}", source=target.source)
        bounds = (Bound("minimum", float(middle - span), told), Bound("maximum", float(middle + span), told))
    points, marks = list[Point](), mark_entries(context.recorded.nonconformances)
    for entry in context.project.records.of("result"):
        for text in split_readings(entry) if entry.get("criterion") == "gloss" else ():
            value = read_figure(text)
            if value is not None:
                outside = "reading" in marks.get(("result", entry.number), {}) or _is_outside(value, bounds)
                points.append(Point(len(points) + 1, value, outside, entry))
    return Trend("Gloss of the mockup", "gloss units", tuple(points), bounds, of_each="reading", is_within=True)


def _temperatures(context: DocumentContext) -> Iterator[Trend]:
    """Air and surface at primer and gloss over the season, and how far the surface lies above the dew point."""
    unit = "F" if context.first == "ip" else "C"
    least = take_stricter(
        True,
        context.limit("weather.least_coats"),
        *(context.display((coat, "least_dry_temperature")) for coat in COATS),
    )
    most, margin = context.limit("weather.most_surface"), context.limit("weather.above_dew_point")
    low = Bound("minimum", _number(least.raw, unit), least)
    high = Bound("maximum", _number(most.raw, unit), most)
    apart = Bound("minimum", _number(margin.raw, f"{unit} apart"), margin)
    shown = UNITS[context.first]["temperature"]
    for title, name, bounds in (("Air", "air", (low,)), ("Surface", "surface", (low, high))):
        read = [(entry, _number(entry.values[name], unit)) for entry in _entries(context, name, COATS)]
        yield _over_days(f"{title} temperature, primer and gloss", shown, read, bounds)
    yield _over_days("Surface above the dew point, primer and gloss", shown, list(_margins(context, unit)), (apart,))


def _margins(context: DocumentContext, unit: str) -> Iterator[tuple[Entry, float]]:
    for entry in _entries(context, "surface", COATS):
        if {"air", "humidity"} <= entry.values.keys():
            dew = compute_dew_point(entry.values["air"], entry.values["humidity"], context.first)
            if dew is not None:
                yield entry, entry.values["surface"].number(unit) - dew


def _over_days(title: str, unit: str, read: list[tuple[Entry, float]], bounds: tuple[Bound, ...]) -> Trend:
    points = tuple(
        Point(_moment(e).toordinal() + _share_of_day(_moment(e)), value, _is_outside(value, bounds), e)
        for e, value in read
        if day_of(e) is not None
    )
    return Trend(title, unit, points, bounds, dated=True)


def _share_of_day(at: datetime) -> float:
    return (at.hour * 60 + at.minute) / 1440
