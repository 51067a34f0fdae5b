"""Peak sun on a wall by its facing: the project's own figure, or a clear-sky sum by latitude, month and facing."""

from specgen.computing.heat import _clear_sky
from specgen.computing.heat._sun import NOTES, SunInputs, months_of, tell_months
from specgen.computing.inputs import given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import PROJECT
from specgen.model.typed_views import Elevation, root_of
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import read_bearing
from specgen.resolving.provider import Ask

OWN_NOTE = "The irradiance on this face is given by the project, not calculated."
LEVEL_NOTE = (
    "The sunniest wall takes the greater of the design value given and the clear-sky value; each face takes its "
    "clear-sky share."
)
SHARE_NOTE = "The share scales the joint rule for face temperature, which is written for full sun."
OWN_FIELD, LEVEL_FIELD = "elevations.*.peak_irradiance", "climate.peak_wall_irradiance"


class WallSunInputs(SunInputs):
    """A wall of a facing at a site, and the sun on the sunniest wall where the project gives it.

    A figure below that of the clear sky bounds nothing: the greater of both counts.
    """

    facing: Quantity = given_input(
        "p",
        "wall facing",
        "angle",
        "elevations.*.facing",
        "such as SW, or degrees from north",
        read=read_bearing,
    )
    sunniest: Quantity | None = given_input(
        "I_c", "peak irradiance, sunniest wall", "irradiance", LEVEL_FIELD, default=None, optional=True, above=0
    )


def wall_sun(inputs: WallSunInputs) -> Working:
    """Peak irradiance on a wall, in W/m2; the share of the sunniest wall's sun stands beside. Raises Refused."""
    peak, most = inputs.peak(inputs.facing), inputs.peak()
    working = WorkingBuilder((inputs.row("facing"), *inputs.sky_rows(peak), *inputs.rows("sunniest")))
    working.add_inputs(InputRow("E_w", "clear-sky irradiance, sunniest wall", most.sun, "W/m2", "peak-sun"))
    _clear_sky.add_sun(working, "p")
    working.step("s", "share of sunniest wall", "min(E / E_w, 1)", "")
    given = inputs.sunniest is not None
    working.step("I", "irradiance on this face", "max(I_c, E_w) * s" if given else "E", "W/m2")
    notes = (*NOTES, tell_months(inputs), *((LEVEL_NOTE,) if given else ()), SHARE_NOTE)
    return working.build("wall-sun", "I", _clear_sky.SOURCES, notes, _clear_sky.tell_peak(peak), ("s",))


def take_own(own: Quantity, most: InputRow) -> Working:
    """The project's own figure for a face, and its share of the most that a wall of the site gets."""
    working = WorkingBuilder((InputRow("I_o", "irradiance on this face", own.number("W/m2"), "W/m2", OWN_FIELD), most))
    working.step("I", "irradiance on this face", "I_o", "W/m2")
    working.step("s", "share of sunniest wall", f"min(I / {most.symbol}, 1)", "")
    return working.build("wall-sun", "I", (PROJECT,), (OWN_NOTE, SHARE_NOTE), "the project's own figure", ("s",))


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The sun in force on an elevation: its own figure, else the site's by facing, else the clear-sky sum."""
    project = root_of(elevation)
    own = elevation.get("peak_irradiance")
    if own is None:
        return wall_sun(WallSunInputs.from_project(elevation, ask, months=months_of(project)))
    level = project.climate.get("peak_wall_irradiance")
    if level is not None:
        return take_own(
            own, InputRow("I_c", "peak irradiance, sunniest wall", level.number("W/m2"), "W/m2", LEVEL_FIELD)
        )
    most = ask("peak-sun").result
    return take_own(own, InputRow("E_w", "clear-sky irradiance, sunniest wall", most, "W/m2", "peak-sun"))


def share_of(working: Working) -> float:
    """The share of the sunniest wall's sun in a working of this calculation."""
    return next(float(step.value) for step in working.steps if step.symbol == "s")


PROVIDER = provide(
    "Peak sun by elevation",
    WallSunInputs,
    wall_sun,
    each=("elevations",),
    for_member=for_elevation,
    keys_first=("latitude", "facing"),
    order=5,
    example="latitude=40deg facing=W",
)
