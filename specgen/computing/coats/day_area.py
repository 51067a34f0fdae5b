"""Area that can be given its two gloss coats in one day: the second follows when the first is dry to touch."""

from fractions import Fraction

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.shading import COVERED, is_covered, list_shade_kinds
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import Absent, if_given
from specgen.model.field import Path, dotted_field
from specgen.model.project import asked_once
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.typed_views import Description, Elevation, root_of
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

SOURCES = (
    Source(Kind.COMPUTED, "an area A takes max(A / r, touch-dry) and A / r: the second coat goes over it as the first"),
    PRACTICE,
)
NOTES = ("The second coat starts where the first began, once dry to touch: common practice, no source.",)
# Hours of each shift for setting up and cleaning, and for both again between the coats; common practice, no source.
SET_UP, BETWEEN = 1.0, 1.0


class DayInputs(Inputs):
    """Output of a sprayer, drying of the first coat, and the hours of a day; a project counts those by hand."""

    rate: Quantity = given_input(
        "r",
        "spray rate",
        "area_rate",
        about="output of the sprayer in one pass, such as 300 sq ft/h",
        above=0,
        span="crews.*.rates.*",
    )
    touch_dry: Quantity = given_input(
        "t",
        "touch-dry time",
        "time",
        origin="gloss.touch_dry_hours",
        about="first coat to second, in hours",
        bare="h",
        least=0,
        span="gloss.touch_dry_hours",
    )
    hours: Quantity | None = given_input(
        "H",
        "spraying hours",
        "time",
        about="usable hours of the day",
        bare="h",
        least=0,
        span=("0 h", "24 h"),  # method's own: the hours there are in a day
    )


def day_area(inputs: DayInputs) -> Working:
    """Area that two gloss coats allow in one day, in sq ft or m², the hours of its passes beside it. Raises Refused."""
    return _add_day(WorkingBuilder(inputs.rows()), inputs.system)


def _add_day(working: WorkingBuilder, system: str) -> Working:
    # As long as a pass takes longer than drying, the day is two passes; a shorter day is drying and one pass.
    area = "ft2" if system == "ip" else "m2"
    most = working.step("A", "daily area", "r * max(min(H / 2, H - t), 0)", area)
    working.step("H_1", "hours per pass", "A / r", "h")
    working.step("H_2", "second pass start", "max(H_1, t)", "h")
    working.step("H_w", "wait between passes", "H_2 - H_1", "h")
    case = "spraying" if working.known["H"] >= 2 * working.known["t"] else "drying of the first coat"
    none = () if most else ("The first coat is not dry to touch within these hours: no second coat the same day.",)
    return working.build("day-area", "A", SOURCES, none + NOTES, case, ("H_1", "H_2", "H_w"))


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The area of a day on an elevation, by the slowest gloss crew, the shift and the elevation's own shade."""
    project = root_of(elevation)
    crew, rate = _slowest(project)
    touch_dry = Quantity.of(Fraction(project.gloss.touch_dry_hours), "h")
    inputs = DayInputs.from_project(elevation, ask, rate=rate, touch_dry=touch_dry, hours=None)
    output = inputs.row("rate")._replace(origin=dotted_field(crew, "rates.gloss"))
    usable = if_given(lambda: ask("usable-hours"))
    rows = _hours_rows(project, elevation) if usable is None else _usable_rows(usable)
    working = WorkingBuilder((output, inputs.row("touch_dry"), *rows))
    told = [f"The spray rate is that of crew {crew[-1]}."]
    told += _add_usable(working, usable) if usable is not None else _add_hours(working)
    told += [words for kind, words in COVERED.items() if kind in list_shade_kinds(elevation)]
    if usable is None and "S_o" not in working.known and list_shade_kinds(elevation) == {"natural"}:
        told.append("Limit to the hours of its own shade.")
    if project.gloss.coats != 2:
        told.append(f"Calculated for two coats; number of coats in this project: {project.gloss.coats}.")
    day = _add_day(working, inputs.system)
    return day._replace(notes=(*day.notes, *told))


def _usable_rows(usable: Working) -> tuple[InputRow, ...]:
    """The hours of the shortest month of the season, out of direct sun, and what the break between the coats takes."""
    return (
        InputRow("H_u", "usable spray hours, shortest month", float(usable.result), "h", "usable-hours"),
        InputRow("u_b", "cleanup and setup between coats", BETWEEN, "h", source=PRACTICE),
    )


def _add_usable(working: WorkingBuilder, usable: Working) -> list[str]:
    """Adds the spraying hours of the shortest month; which it is, as a note."""
    working.step("H", "spraying hours", "max(H_u - u_b, 0)", "h")
    return [f"Usable hours of {usable.governing_case}."]


def _add_hours(working: WorkingBuilder) -> list[str]:
    """Adds the spraying hours of a shift where latitude, facing or its start is not known; the notes to that."""
    known = working.known
    hours = "spraying hours, own shade" if "S_o" in known else "spraying hours"
    working.step("H", hours, f"max({'min(S - u, S_o)' if 'S_o' in known else 'S - u'} - u_b, 0)", "h")
    told = ["Daylight hours are not considered."]
    if "S_o" in known and known["S_o"] < known["S"] - known["u"]:
        told.append("Limited to its own shade, shortest month; set up before it and clean after it.")
    return told


def _hours_rows(project: Description, elevation: Elevation) -> tuple[InputRow, ...]:
    """The shift, what is kept of it for setting up, and the hours of own shade where these bound the day."""
    shade = None if is_covered(elevation) else _shortest_shade(elevation)
    own = dotted_field(elevation.path, "shade_hours")
    return (
        InputRow("S", "shift", float(project.schedule.shift_hours), "h", "schedule.shift_hours"),
        *(() if shade is None else (InputRow("S_o", "own shade, shortest month", float(shade), "h", own),)),
        InputRow("u", "setup and cleanup", SET_UP, "h", source=PRACTICE),
        InputRow("u_b", "cleanup and setup between coats", BETWEEN, "h", source=PRACTICE),
    )


@asked_once
def _slowest(project: Description) -> tuple[Path, Quantity]:
    """The crew that sprays the gloss and its output; of several the slowest, so that every one of them can do it."""
    every = list(project.crews)
    if not every:
        raise Absent(("crews",))
    crews = [crew for crew in every if crew.get("rates.gloss") is not None or "gloss" in crew.steps]
    rate, path = min((crew.rates["gloss"], crew.path) for crew in crews or every)
    return path, rate


def _shortest_shade(elevation: Elevation) -> Fraction | None:
    """The hours of own shade in the month that has least; None where none are told."""
    spans: dict[str, Fraction] = {}
    for entry in elevation.shade_hours:
        start, end = entry["from"], entry.to
        span = Fraction(60 * (end.hour - start.hour) + end.minute - start.minute, 60)
        spans[entry.month] = spans.get(entry.month, Fraction(0)) + max(span, Fraction(0))
    return min(spans.values(), default=None)


PROVIDER = provide(
    "Daily area, two gloss coats",
    DayInputs,
    day_area,
    each=("elevations",),
    for_member=for_elevation,
    reads=("crews", "gloss.touch_dry_hours", "schedule.shift_hours"),
    columns=("H", "A", "H_1", "H_2", "H_w"),
    beside=("elevation-area",),
    order=50,
    example="rate=300sqft/h touch_dry=1h hours=4",
)
