"""Hours of a shift in which an elevation can be sprayed: by daylight, out of direct sun, less setup and cleanup."""

import datetime
from collections.abc import Iterable
from datetime import timedelta
from math import ceil

from specgen.computing.coats.day_area import SET_UP
from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.shading import COVERED, is_covered, list_shade_kinds
from specgen.computing.shift_hours import DAY, Face, Split, count_day, name_spans, split_shift
from specgen.computing.sunlight import DECLINATION, DEGREE, EDGE, Hours, count_hours, find_daylight
from specgen.computing.time._clock import SOURCES as CLOCK_SOURCES
from specgen.computing.time._clock import Clock, add_clock, find_clock, read_zone, require_near
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import read_all
from specgen.model.dates import MONTHS, months_between
from specgen.model.problem import refuse
from specgen.model.project import Project, asked_once
from specgen.model.schedule import UsableMonth
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.typed_views import Description, Elevation, root_of
from specgen.model.value_text import value_text, words
from specgen.model.working import UNIT_CHANGE, InputRow, Working
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import read_bearing
from specgen.reading.moment_texts import ShiftTimes, read_shift
from specgen.resolving.provider import Ask

DARK, SUNNY, SETTING_UP = "dark", "direct sun", "setup and cleanup"
SOLAR = (
    "Sunrise, sunset, and direct sun in solar time, with the sun at its highest at 12:00: longitude and time zone of "
    "the site are not given. Shift and given shade hours are taken as they stand."
)
BY_CLOCK = "Hours by the clock in {}, summer time included."
RISE = Source(Kind.MEMORY, "the upper edge of the sun rises with its middle 0.833° under a level horizon")
SOURCES = (
    Source(Kind.COMPUTED, "the shift, less its dark hours, its hours of direct sun, setup and cleanup"),
    DECLINATION,
    RISE,
)
HORIZON = "Level horizon: neighboring buildings and trees may give more shade."
WEATHER = "Wind, rain, and temperature take further hours."
LAMP = "Dark hours count: night work by lamp."
GIVEN = "Shade given by the applicator for {:%B}, {}, in place of the computed sun."
LEAST = "Month of fewest usable hours of {:%B} to {:%B}, by its 15th, whether or not the season reaches it."
AT_ENDS = "Setup and cleanup stand at the ends of the shift; what of them falls in dark or in sun costs no spray hour."
MIDDLE = 15  # day of the month
MIDDLE_DAY = "middle day of the month with the fewest hours"
_ENDS = f"{SET_UP:g} h at the ends of the shift, less what falls in dark or in sun"
NO_SEASON = 2027  # a year of 365 days that is not printed, for the months of a project without a season
TURN = (Quantity.of("-180", "deg"), Quantity.of("180", "deg"))
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
    shift: ShiftTimes = option_input(
        "shift, such as 07:00-15:30; in solar time without longitude and time_zone", read=read_shift
    )
    longitude: Quantity | None = given_input(
        "",
        "",
        "angle",
        "site.longitude",
        "degrees east, minus west; with time_zone hours are by the clock",
        bare="deg",
        within=TURN,
        default=None,
        optional=True,
    )
    time_zone: str | None = option_input("such as America/Denver", read=read_zone, default=None)

    def face(
        self, clock: Clock | None, shade: Hours | None = None, *, covered: bool = False, lamp: bool = False
    ) -> Face:
        """The face on the middle day of the month."""
        facing = None if covered or self.facing is None else float(self.facing.number("deg"))
        start, length = count_day(self.shift.start), self.shift.length / timedelta(hours=1)
        day = find_day(self.month)
        ahead = clock.count_ahead(day) if clock else 0.0
        return Face(float(self.latitude.number("deg")), day, facing, start, length, shade, lamp, ahead)


def find_day(month: str) -> int:
    """The middle day of a month as a day of the year, February with 28 days."""
    return _date_middle(month).timetuple().tm_yday


def _date_middle(month: str, year: int = NO_SEASON) -> datetime.date:
    return datetime.date(year, MONTHS.index(month) + 1, MIDDLE)


def usable_hours(inputs: UsableInputs) -> Working:
    """Hours of a shift in which a face can be sprayed in a month. Raises Refused."""
    if (inputs.longitude is None) != (inputs.time_zone is None):
        missing = "longitude" if inputs.longitude is None else "time_zone"
        raise refuse(f"{missing} is missing", "give longitude and time_zone, or neither")
    clock = find_clock(inputs.longitude, inputs.time_zone, _date_middle(inputs.month))
    if clock:
        require_near(clock)
    return _work_out(inputs, inputs.face(clock), clock)


def _tell_polar(daylight: float) -> tuple[str, ...]:
    """Sunrise and sunset at one moment, or a day apart, are no times to plan by: say what the sun does."""
    if daylight <= 0:
        return ("The sun does not rise on this day: sunrise and sunset above are no times of day.",)
    if daylight >= DAY:
        return ("The sun does not set on this day: sunrise and sunset above are no times of day.",)
    return ()


def _work_out(inputs: UsableInputs, face: Face, clock: Clock | None, told: tuple[str, ...] = ()) -> Working:
    split = split_shift(face, SET_UP)
    working = WorkingBuilder((*_rows(inputs, face, split), *(clock.rows() if clock else ())))
    working.step("d", "solar declination", "23.45 * sin(k * 360 * (284 + N) / 365)", "deg")
    share = "(sin(k * h_0) - sin(k * L) * sin(k * d)) / (cos(k * L) * cos(k * d))"
    daylight = count_hours(find_daylight(float(inputs.latitude.number("deg")), face.day))
    if not 0 < daylight < DAY:
        share = f"min(max({share}, -1), 1)"  # the sun does not rise, or does not set
    working.step("w", "hours from sunrise to noon", f"(90 - asin({share}) / k) / 15", "h")
    if clock:
        add_clock(working)
    turned, said = (" - D", "by the clock") if clock else ("", "solar time")
    working.step("T_r", f"sunrise, {said}", f"12 - w{turned}", "h")
    working.step("T_s", f"sunset, {said}", f"12 + w{turned}", "h")
    working.step("S_d", "hours of the shift with light", "S" if face.lamp else _add_light(working.known), "h")
    working.step("H", "usable spray hours", "max(S_d - B - u, 0)", "h")
    spans = "; ".join(f"{a:%H:%M} to {b:%H:%M}" for a, b in name_spans(split.usable)) or "none"
    lamp = (LAMP,) if face.lamp else ()
    sun = BY_CLOCK.format(clock.zone) if clock else SOLAR
    level = () if face.facing is None or face.shade is not None else (HORIZON,)
    notes = (f"Hours: {spans}.", *_tell_polar(daylight), *told, *lamp, sun, *level, WEATHER)
    sources = (*SOURCES, *(CLOCK_SOURCES if clock else ()))
    return working.build("usable-hours", "H", sources, notes, f"{words(inputs.month)} {MIDDLE}", ("T_r", "T_s"))


def _add_light(known: dict[str, float]) -> str:
    """The formula of the hours between sunrise and sunset, with those of the days beside that the shift reaches."""
    start, end, days = known["S_s"], known["S_s"] + known["S"], [""]
    if known["T_s"] - DAY > start:
        days.insert(0, " - 24")
    if end > min(DAY, known["T_r"] + DAY):
        days.append(" + 24")
    return " + ".join(f"max(min(T_s{day}, S_s + S) - max(T_r{day}, S_s), 0)" for day in days)


def _rows(inputs: UsableInputs, face: Face, split: Split) -> tuple[InputRow, ...]:
    facing = () if face.facing is None or face.shade is not None else (inputs.row("facing"),)
    sun = "shade hours as given" if face.shade is not None else "by latitude and facing"
    return (
        inputs.row("latitude"),
        *facing,
        InputRow("N", f"day of the year, {words(inputs.month)} {MIDDLE}", face.day, "", MIDDLE_DAY),
        InputRow("k", "radians per degree", DEGREE, "", UNIT_CHANGE),
        InputRow("h_0", "solar altitude at sunrise", EDGE, "deg", source=RISE),
        InputRow("S_s", "shift start", face.start, "h", "schedule.shift_start"),
        InputRow("S", "shift", face.hours, "h", "schedule.shift_hours"),
        InputRow("B", "direct sun on the face within the lit hours", _round_up(split.sunny), "h", sun),
        InputRow("u", "setup and cleanup in the remaining hours", split.set_up, "h", _ENDS, PRACTICE),
    )


def _round_up(hours: float) -> float:
    """Hours with so many digits that what they leave of a shift is nothing where it is nothing."""
    return ceil(hours * 1e9) / 1e9


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The working of the month with the fewest usable hours in the season on an elevation. Raises Absent."""
    months = list_usable_months(elevation)
    least = min(months, key=lambda one: one.hours)
    inputs, face, clock = read_face(elevation, least.month, covered=is_covered(elevation))
    told = [said for kind, said in COVERED.items() if kind in list_shade_kinds(elevation)]
    if face.shade is not None:
        spans = (" to ".join(map(value_text, span)) for span in name_spans(face.shade))
        told.append(GIVEN.format(least.month, ", ".join(spans)))
    if len(months) > 1:
        told += [LEAST.format(months[0].month, months[-1].month), AT_ENDS]
    return _work_out(inputs, face, clock, tuple(told))


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
    year = list_first_days()
    return elevation.project.remember(
        ("usable hours of the year", elevation.mark), lambda: _list_months(elevation, year, is_covered(elevation))
    )


def list_viewing_year(elevation: Elevation, *, covered: bool) -> tuple[UsableMonth, ...]:
    """The hours of the shift by daylight and out of direct sun in each month, in which a finish is viewed.

    Raises Absent.
    """
    faces = {month: read_face(elevation, month, covered=covered)[1] for month in list_first_days()}
    splits = {month: split_shift(face._replace(lamp=False), 0).usable for month, face in faces.items()}
    return tuple(UsableMonth(month, name_spans(hours), count_hours(hours)) for month, hours in splits.items())


def _list_months(elevation: Elevation, months: Iterable[datetime.date], covered: bool) -> tuple[UsableMonth, ...]:
    found = []
    for month in months:
        _, face, _ = read_face(elevation, month, covered=covered)
        split = split_shift(face, SET_UP)
        lost = ((DARK, split.dark), (SUNNY, split.sunny), (SETTING_UP, split.set_up))
        spans = name_spans(split.usable)
        found.append(UsableMonth(month, spans, count_hours(split.usable), tuple((cause, h) for cause, h in lost if h)))
    return tuple(found)


def is_by_clock(project: Project) -> bool:
    """Whether longitude and time zone of the site turn the hours of the sun into those of the clock."""
    return None not in (project.get(("site", "longitude")), project.get(("site", "time_zone")))


def round_hours(hours: float) -> Quantity:
    """Hours as they are told: to a tenth."""
    return Quantity.of(format_decimal(hours, 3, 1), "h")


@asked_once
def find_season(project: Description) -> tuple[datetime.date, ...]:
    """The first day of each month from the start of spraying to its end; of a year that has no season, all twelve."""
    start, end = (project.schedule.get(name) for name in ("spray_start", "spray_end"))
    if start is None or end is None:
        return list_first_days()
    return months_between(start, end)


def list_first_days() -> tuple[datetime.date, ...]:
    """The first day of each month of a year that is not printed."""
    return tuple(datetime.date(NO_SEASON, month, 1) for month in range(1, len(MONTHS) + 1))


def read_face(elevation: Elevation, first: datetime.date, *, covered: bool) -> tuple[UsableInputs, Face, Clock | None]:
    """The face of an elevation on the middle day of a month, its inputs, and the clock. Raises Absent."""
    project, month = root_of(elevation), MONTHS[first.month - 1]
    schedule, site = project.schedule, project.site
    (latitude, start, hours), facing = read_all(
        lambda: read_all(lambda: site.latitude, lambda: schedule.shift_start, lambda: schedule.shift_hours),
        lambda: None if covered else elevation.facing,
    )
    place = {name: site.get(name) for name in ("longitude", "time_zone")}
    clock = find_clock(place["longitude"], place["time_zone"], _date_middle(month, first.year))
    shift = ShiftTimes(start, timedelta(hours=float(hours)))
    system = elevation.project.system
    inputs = UsableInputs(system=system, latitude=latitude, facing=facing, month=month, shift=shift, **place)
    shade = None if covered else _read_shade(elevation, month)
    return inputs, inputs.face(clock, shade, lamp=schedule.get("night_work") is True), clock


def _read_shade(elevation: Elevation, month: str) -> Hours | None:
    """The hours of own shade given for a month, by the clock; None where none are."""
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
