"""Hours of a shift in which an elevation can be sprayed: by daylight, out of direct sun, less setup and cleanup."""

import datetime
from collections.abc import Iterable
from datetime import timedelta
from math import ceil

from specgen.computing.coats.day_area import SET_UP
from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.shading import COVERED, is_covered, list_shade_kinds
from specgen.computing.sunlight import DECLINATION, DEGREE, EDGE, Hours, count_hours
from specgen.computing.time._shift import DAY, Face, Split, count_day, name_spans, split_shift
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import read_all
from specgen.model.dates import MONTHS, months_between
from specgen.model.project import asked_once
from specgen.model.schedule import UsableMonth
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.typed_views import Description, Elevation, root_of
from specgen.model.value_text import words
from specgen.model.working import UNIT_CHANGE, InputRow, Working
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import read_bearing
from specgen.reading.moment_texts import ShiftTimes, read_shift
from specgen.resolving.provider import Ask

DARK, SUNNY, SETTING_UP = "dark", "direct sun", "setup and cleanup"
SOLAR = (
    "Middle day of the month; hours are local solar time, with the sun at its highest at 12:00. By the clock they "
    "differ with longitude, and are an hour later in summer time."
)
RISE = Source(Kind.MEMORY, "the upper edge of the sun rises with its middle 0.833° under a level horizon")
SOURCES = (
    Source(Kind.COMPUTED, "the shift, less its dark hours, its hours of direct sun, setup and cleanup"),
    DECLINATION,
    RISE,
)
HORIZON = "Level horizon: neighboring buildings and trees may give more shade."
WEATHER = "Wind, rain, and temperature take further hours."
LAMP = "Dark hours count: night work by lamp."
OBSERVED = "Shade as observed, in place of the computed sun."
MIDDLE = 15  # day of the month
MIDDLE_DAY = "middle day of the month with the fewest hours"
NO_SEASON = 2001  # a year that is not printed, for the months of a project without a season
# No sunrise can be told at the poles themselves.
POLES = (Quantity.of("-89.9", "deg"), Quantity.of("89.9", "deg"))


class UsableInputs(Inputs):
    """A face under the sun in a month, and the shift that is worked at it."""

    latitude: Quantity = given_input(
        "L", "latitude of the site", "angle", "site.latitude", "degrees, minus south", bare="deg", within=POLES
    )
    facing: Quantity | None = given_input(
        "p",
        "wall facing",
        "angle",
        "elevations.*.facing",
        "such as SW, or degrees from north; left out under shade cloth or in a tent",
        read=read_bearing,
        default=None,
        optional=True,
    )
    month: str = option_input("month of the year, jan to dec", MONTHS)
    shift: ShiftTimes = option_input("shift, such as 07:00-15:30, in solar time", read=read_shift)

    def face(self, shade: Hours | None = None, *, covered: bool = False, lamp: bool = False) -> Face:
        """The face on the middle day of the month."""
        facing = None if covered or self.facing is None else float(self.facing.number("deg"))
        start, length = count_day(self.shift.start), self.shift.length / timedelta(hours=1)
        return Face(float(self.latitude.number("deg")), find_day(self.month), facing, start, length, shade, lamp)


def find_day(month: str) -> int:
    """The middle day of a month as a day of the year, February with 28 days."""
    return datetime.date(NO_SEASON, MONTHS.index(month) + 1, MIDDLE).timetuple().tm_yday


def usable_hours(inputs: UsableInputs) -> Working:
    """Hours of a shift in which a face can be sprayed in a month. Raises Refused."""
    return _work_out(inputs, inputs.face())


def _work_out(inputs: UsableInputs, face: Face, told: tuple[str, ...] = ()) -> Working:
    split = split_shift(face, SET_UP)
    working = WorkingBuilder(_rows(inputs, face, split))
    working.step("d", "solar declination", "23.45 * sin(k * 360 * (284 + N) / 365)", "deg")
    share = "(sin(k * h_0) - sin(k * L) * sin(k * d)) / (cos(k * L) * cos(k * d))"
    working.step("w", "hours from sunrise to noon", f"(90 - asin(min(max({share}, -1), 1)) / k) / 15", "h")
    working.step("T_r", "sunrise, solar time", "12 - w", "h")
    working.step("T_s", "sunset, solar time", "12 + w", "h")
    today = "max(min(T_s, S_0 + S) - max(T_r, S_0), 0)"
    tomorrow = "max(min(T_s + 24, S_0 + S) - max(T_r + 24, S_0), 0)" if face.start + face.hours > DAY else ""
    lit = "S" if face.lamp else " + ".join(filter(None, (today, tomorrow)))
    working.step("S_d", "hours of the shift with light", lit, "h")
    working.step("H", "usable spray hours", "max(S_d - B - u, 0)", "h")
    spans = "; ".join(f"{a:%H:%M} to {b:%H:%M}" for a, b in name_spans(split.usable)) or "none"
    lamp = (LAMP,) if face.lamp else ()
    notes = (f"Hours: {spans}.", *told, *lamp, SOLAR, *(() if face.facing is None else (HORIZON,)), WEATHER)
    return working.build("usable-hours", "H", SOURCES, notes, f"{words(inputs.month)} {MIDDLE}", ("T_r", "T_s"))


def _rows(inputs: UsableInputs, face: Face, split: Split) -> tuple[InputRow, ...]:
    facing = () if face.facing is None else (inputs.row("facing"),)
    sun = "shade hours as observed" if face.shade is not None else "by latitude and facing"
    return (
        inputs.row("latitude"),
        *facing,
        InputRow("N", f"day of the year, {words(inputs.month)} {MIDDLE}", face.day, "", MIDDLE_DAY),
        InputRow("k", "radians per degree", DEGREE, "", UNIT_CHANGE),
        InputRow("h_0", "solar altitude at sunrise", EDGE, "deg", source=RISE),
        InputRow("S_0", "shift start", face.start, "h", "schedule.shift_start"),
        InputRow("S", "shift", face.hours, "h", "schedule.shift_hours"),
        InputRow("B", "direct sun on the face within the lit hours", _round_up(split.sunny), "h", sun),
        InputRow("u", "setup and cleanup in the remaining hours", split.set_up, "h", source=PRACTICE),
    )


def _round_up(hours: float) -> float:
    """Hours with so many digits that what they leave of a shift is nothing where it is nothing."""
    return ceil(hours * 1e9) / 1e9


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The working of the month with the fewest usable hours in the season on an elevation. Raises Absent."""
    months = list_usable_months(elevation)
    least = min(months, key=lambda one: one.hours)
    month = MONTHS[least.month.month - 1]
    covered = is_covered(elevation)
    inputs, face = _read_face(elevation, month, covered=covered)
    told = [said for kind, said in COVERED.items() if kind in list_shade_kinds(elevation)]
    if face.shade is not None:
        told.append(OBSERVED)
    if len(months) > 1:
        told.append(f"The month with the fewest hours of {len(months)}.")
    return _work_out(inputs, face, tuple(told))


def list_usable_months(elevation: Elevation) -> tuple[UsableMonth, ...]:
    """The usable hours of an elevation in each month of the season, or of the year without one. Raises Absent."""
    return elevation.project.remember(
        ("usable hours", elevation.mark), lambda: list_months(elevation, covered=is_covered(elevation))
    )


def list_months(elevation: Elevation, *, covered: bool) -> tuple[UsableMonth, ...]:
    """The usable hours of an elevation by month as they would be under cover, or in its own shade. Raises Absent."""
    return _list_months(elevation, find_season(root_of(elevation)), covered)


def list_year(elevation: Elevation) -> tuple[UsableMonth, ...]:
    """The usable hours of an elevation in each month of the year, whatever the season is. Raises Absent."""
    year = _list_first_days()
    return elevation.project.remember(
        ("usable hours of the year", elevation.mark), lambda: _list_months(elevation, year, is_covered(elevation))
    )


def _list_months(elevation: Elevation, months: Iterable[datetime.date], covered: bool) -> tuple[UsableMonth, ...]:
    found = []
    for month in months:
        _, face = _read_face(elevation, MONTHS[month.month - 1], covered=covered)
        split = split_shift(face, SET_UP)
        lost = ((DARK, split.dark), (SUNNY, split.sunny), (SETTING_UP, split.set_up))
        spans = name_spans(split.usable)
        found.append(UsableMonth(month, spans, count_hours(split.usable), tuple((cause, h) for cause, h in lost if h)))
    return tuple(found)


def round_hours(hours: float) -> Quantity:
    """Hours as they are told: to a tenth."""
    return Quantity.of(format_decimal(hours, 3, 1), "h")


@asked_once
def find_season(project: Description) -> tuple[datetime.date, ...]:
    """The first day of each month from the start of spraying to its end; of a year that has no season, all twelve."""
    start, end = (project.schedule.get(name) for name in ("spray_start", "spray_end"))
    if start is None or end is None:
        return _list_first_days()
    return months_between(start, end)


def _list_first_days() -> tuple[datetime.date, ...]:
    """The first day of each month of a year that is not printed."""
    return tuple(datetime.date(NO_SEASON, month, 1) for month in range(1, len(MONTHS) + 1))


def _read_face(elevation: Elevation, month: str, *, covered: bool) -> tuple[UsableInputs, Face]:
    """The face of an elevation on the middle day of a month, with the inputs it is made of. Raises Absent."""
    project = root_of(elevation)
    schedule = project.schedule
    (latitude, start, hours), facing = read_all(
        lambda: read_all(lambda: project.site.latitude, lambda: schedule.shift_start, lambda: schedule.shift_hours),
        lambda: None if covered else elevation.facing,
    )
    shift = ShiftTimes(start, timedelta(hours=float(hours)))
    inputs = UsableInputs(system=elevation.project.system, latitude=latitude, facing=facing, month=month, shift=shift)
    shade = None if covered else _read_shade(elevation, month)
    return inputs, inputs.face(shade, lamp=schedule.get("night_work") is True)


def _read_shade(elevation: Elevation, month: str) -> Hours | None:
    """The hours of own shade observed in a month; None where none were."""
    entries = [entry for entry in elevation.shade_hours if entry.get("month") == month]
    given = [(entry.get("from"), entry.get("to")) for entry in entries]
    return tuple((count_day(start), count_day(end)) for start, end in given if start and end) or None


PROVIDER = provide(
    "Usable spray hours",
    UsableInputs,
    usable_hours,
    each=("elevations",),
    for_member=for_elevation,
    reads=("schedule.shift_start", "schedule.shift_hours"),
    columns=("T_r", "T_s", "S_d", "B", "u", "H"),
    order=40,
    example="latitude=40deg facing=W month=jun shift=07:00-15:30",
)
