"""Sun on the wall that gets most of it, under a clear sky: the facing, the month and the hour are searched."""

from specgen.computing.heat import _clear_sky
from specgen.computing.heat._sun import NOTES, SunInputs, months_of, tell_months
from specgen.computing.inputs import provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.typed_views import Description
from specgen.model.working import Working
from specgen.quantities.comparison import more
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Ask


def peak_sun(inputs: SunInputs) -> Working:
    """Irradiance on the sunniest wall at a latitude, in W/m2. Raises Refused."""
    peak = inputs.peak()
    working = WorkingBuilder(inputs.sky_rows(peak))
    _clear_sky.add_sun(working, "Z")
    when = f"{_clear_sky.tell_peak(peak)}; the wall faces the sun"
    return working.build("peak-sun", "E", _clear_sky.SOURCES, (*NOTES, tell_months(inputs)), when, ("Z",))


def for_project(project: Description, ask: Ask) -> Working:
    """The sunniest wall of the site, at its altitude and in its hot months."""
    return peak_sun(SunInputs.from_project(project, ask, months=months_of(project)))


def compare_sun(project: Description, ask: Ask) -> Comparison | None:
    """The clear-sky sun against the sun given, high up alone: the usual figures are those of low ground."""
    given = project.climate.get("peak_wall_irradiance")
    high = find_limit("altitude.strong_sun", project.project).value
    if given is None or not more(project.site.altitude, high):
        return None
    return at_most(ask("peak-sun").rounded, given)


PROVIDER = provide(
    "Peak sun, governing orientation",
    SunInputs,
    peak_sun,
    for_member=for_project,
    checks=(Check("clear-sky sun", "design value given", ("HEA-03d",), compare_sun),),
    order=1,
    example="latitude=40deg",
)
