"""Air, wall and humidity are within limits while work goes on, and are read often enough to know.

Why: cement and films do not set in the cold, and on a wall near the dew point water stands under the coat. On a hot
wall the spray dries as it lands, and the gloss is dull and rough.

passes
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, date: 2027-06-14, started_at: 07:00, air: 62 F, surface: 64 F, humidity: 55}]
fails WEA-01a at log.0.air
    log: [{step: mesh, air: 38 F}]
fails WEA-01b at log.0.surface
    log: [{step: boards, surface: 36 F}]
fails WEA-01c at log.0.air
    log: [{step: primer, air: 48 F}]
fails WEA-01d at log.0.surface
    log: [{step: smoothing_1, surface: 45 F}]
fails WEA-01e at log.0.surface
    log: [{step: gloss, surface: 96 F}]
fails WEA-01f at log.0.humidity
    log: [{step: gloss, humidity: 90}]
fails WEA-01g at log.0.surface
    log: [{step: gloss, air: 60 F, surface: 54 F, humidity: 80}]
fails WEA-01h at log.1.started_at
    elevations: {E1: {wall: W1}}
    log:
      - {elevation: E1, date: 2027-06-14, started_at: 07:00, air: 62 F}
      - {elevation: E1, date: 2027-06-14, started_at: "12:30", air: 71 F}
"""

from collections.abc import Collection
from fractions import Fraction
from functools import cache
from math import floor

from specgen.computing.dew import find_dew_point
from specgen.judging.choice_groups import COAT_WORK, DRY_WORK
from specgen.judging.entry_view import FieldFact, FoundFact, GivenFact, ask_fact
from specgen.judging.rule import STOP, Limits, Rule, Violations, violation
from specgen.judging.site_limits import least_temperature, most_humidity
from specgen.model.absence import if_given, read_all
from specgen.model.typed_views import Description, Number, SiteRecordEntry
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity
from specgen.recording.elapsed import hours_text
from specgen.recording.entry_kinds import tells_weather
from specgen.recording.reading_gaps import find_reading_gaps

RULE = Rule(
    "WEA-01",
    "Weather at the wall during work",
    remedy="Stop. Wait, shade, or tent and heat until the reading at the wall is within its limit.",
    steps="boards second_pass smoothing_1 smoothing_2 primer gloss",
    documents="D08 D12c",
)

COLD_EIFS = (
    "Stop. Reject and replace adhesive or base coat placed below {weather.least_eifs}; go on where air and wall are at "
    "{weather.least_eifs} or more and rising, or in a heated tent."
)
COLD_COAT = (
    "Stop. Recoat to a natural break what was placed below {wanted}, after it has dried; go on where air and wall are "
    "at {wanted} or more, or in a heated tent."
)

_FAR = "far enough"  # as a wall lies above the dew point
_NOISE = 1e-9  # what floating-point results leave over, as a share of the limit

RULE.clause(
    "a",
    STOP,
    "The air is at {found}; minimum {wanted} for this step.",
    when="log.step in eifs_work and log.air < limit",
    limit="weather.least_eifs",
    step="boards",
    remedy=COLD_EIFS,
)

RULE.clause(
    "b",
    STOP,
    "The wall is at {found}; minimum {wanted} for this step.",
    when="log.step in eifs_work and log.surface < limit",
    limit="weather.least_eifs",
    step="boards",
    remedy=COLD_EIFS,
)


@RULE.test(
    "c",
    STOP,
    "The air is at {found}; minimum {wanted} for this step.",
    at="log.air",
    limit="weather.least_coats",
    step="smoothing_1",
    remedy=COLD_COAT,
)
def cold_air(log: SiteRecordEntry, project: Description, limits: Limits) -> Violations:
    """A coat goes on in colder air than the trade, or the manufacturer of that coat, allows."""
    if log.step in COAT_WORK:
        yield from _find_colder(log, log.air, project, limits)


@RULE.test(
    "d",
    STOP,
    "The wall is at {found}; minimum {wanted} for this step.",
    at="log.surface",
    limit="weather.least_coats",
    step="smoothing_1",
    remedy=COLD_COAT,
)
def cold_wall(log: SiteRecordEntry, project: Description, limits: Limits) -> Violations:
    """A coat goes on a colder wall than the trade, or the manufacturer of that coat, allows."""
    if log.step in COAT_WORK:
        yield from _find_colder(log, log.surface, project, limits)


def _find_colder(log: SiteRecordEntry, reading: Quantity, project: Description, limits: Limits) -> Violations:
    least = least_temperature(log, project, limits, reading)
    if less(reading, least.value):
        yield violation(reading, wanted=least.value, sources=least.sources)


RULE.clause(
    "e",
    STOP,
    "The wall is at {found}; above {wanted}, the spray dries as it lands and loses gloss and smoothness.",
    when="log.step in sprayed and log.surface > limit",
    limit="weather.most_surface",
    step="gloss",
    remedy=(
        "Stop. Spray in shade or at a cooler hour, with the wall at {weather.most_surface} or less; view what was "
        "sprayed against the mockup, and recoat dull or rough panels to a natural break."
    ),
    why="a hot wall dries the spray as it lands, so that it does not flow out",
)


@RULE.test(
    "f",
    STOP,
    "Relative humidity is {found} %; maximum {wanted} %.",
    at="log.humidity",
    limit="weather.humidity",
    remedy="Stop. Go on at {wanted} % or less, or in a tent with vented heat and exhaust.",
    why="in damp air cement and films dry too slowly, and take dirt and marks",
)
def damp_air(log: SiteRecordEntry, project: Description, limits: Limits) -> Violations:
    """Work goes on in damper air than the trade, the project, or the manufacturer of the coat allows."""
    if if_given(lambda: log.step) not in DRY_WORK:
        most = most_humidity(log, project, limits)
        if more(log.humidity, most.value):
            yield violation(log.humidity, wanted=most.value, sources=most.sources)


@RULE.test(
    "g",
    STOP,
    "The wall is {found} above the dew point; minimum {wanted}.",
    at="log.surface",
    basis="computed",
    limit="weather.above_dew_point",
    remedy=(
        "Stop. Wipe the wall dry, and go on where it is {weather.above_dew_point} or more above the dew point: warm "
        "the wall, or dry the air in a tent."
    ),
    why="on a wall near the dew point, water forms under the coat and lifts it",
)
def near_dew_point(log: SiteRecordEntry, limit: Quantity) -> Violations:
    """The wall is less above the dew point of the air than a coat needs."""
    if if_given(lambda: log.step) in DRY_WORK:
        return
    apart = ask_fact(log, _apart_below(limit))
    if apart is None:
        read_all(lambda: log.surface, lambda: log.air, lambda: log.humidity)
    elif apart is not _FAR:
        yield violation(Quantity.of(_tell_apart(apart, limit.number(limit.unit)), limit.unit), wanted=limit)


@cache
def _apart_below(limit: Quantity) -> FieldFact:
    """Degrees of a wall above the dew point, in the unit of the limit, where they are fewer; None where not told.

    As plain numbers: a long record has as many of them as readings, and hardly two alike.
    """
    degrees, least = (1.8 if limit.unit == "F apart" else 1.0), limit.number(limit.unit)
    enough = least - least * _NOISE

    def find(surface: float | None, air: float | None, humidity: float | None) -> float | str | None:
        if surface is None or air is None or humidity is None:
            return None
        if humidity <= 0:
            return _FAR
        apart = degrees * (surface - find_dew_point(air, humidity))
        return _FAR if apart >= enough else apart

    return FieldFact(("surface", "air", "humidity"), _to_number, find)


def _to_number(value: Quantity | Number) -> float:
    """A temperature in °C, or a humidity in percent."""
    return value.number("C") if isinstance(value, Quantity) else float(value)


def _tell_apart(apart: float, least: float) -> str:
    """Degrees to the tenth that is printed, none of which prints as the limit that it misses."""
    told = f"{apart:.1f}"
    return told if float(told) < least else f"{floor(apart * 10) / 10:.1f}"


@RULE.test(
    "h",
    STOP,
    "No weather reading for {found}; maximum {wanted} apart.",
    at="log.started_at",
    limit="weather.readings",
    remedy=(
        "Read air, wall, humidity, and wind at the wall at once, then every {weather.readings} or less while work goes "
        "on; hold the work of the hours without a reading for inspection."
    ),
    why="a limit that nobody read may have been passed for hours",
)
def readings_apart(log: SiteRecordEntry, limit: int) -> Violations:
    """Work went on at a face for longer than allowed without a reading of the weather."""
    gap = ask_fact(log, _gap_over(limit))
    if gap is not None:
        wanted = hours_text(Fraction(limit))
        yield violation(hours_text(gap.hours), wanted=wanted, at=(*log.path, gap.field))
    elif ask_fact(log, _UNPLACED):
        read_all(lambda: log.date, lambda: log.started_at, lambda: log.elevation)


@cache
def _gap_over(limit: int) -> FoundFact:
    """The gap of more than so many hours that ends at an entry; the same question for the same hours."""
    return FoundFact(lambda project: find_reading_gaps(project, limit))


def _is_unplaced_reading(given: Collection[str]) -> bool:
    """Whether an entry that gives these fields gives a reading, and not its day, its time and its face."""
    return tells_weather(given) and not {"date", "started_at", "elevation"}.issubset(given)


_UNPLACED = GivenFact(_is_unplaced_reading)
