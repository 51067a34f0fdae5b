"""Sun on the wall that gets most of it, under a clear sky: the facing, the month and the hour are searched."""

from specgen.computing.heat import _clear_sky
from specgen.computing.heat._sun import NOTES, SunInputs, months_of, tell_months
from specgen.computing.inputs import provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.typed_views import Description
from specgen.model.working import Working
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


PROVIDER = provide("Sun on the wall that gets most", SunInputs, peak_sun, for_member=for_project, order=1)
