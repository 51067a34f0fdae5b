"""The temperature of a wall through the hours of a file by the heat balance of its face, in °C."""

from typing import NamedTuple

from specgen.computing.heat_balance import H_C, REFLECTED_SUN, balance_face, find_h_c
from specgen.computing.sunlight import clear_beam, find_facing, find_sky, sun_on_wall
from specgen.weather.hours import Column, HourlyData
from specgen.weather.sunshine import Sunshine, day_of_year

_ABSOLUTE = 273.15
# How far the balance lies from published cases, as the tests hold it: the worked faces after ASTM E1980, and the dark
# face of the sol-air temperature of the ASHRAE Handbook, 95 °F air and 250 Btu/(h·sq ft), at a wind of 2 to 6 m/s.
STATED_ERROR = (
    "The model is the heat balance of D06, hour by hour. It gives the worked faces after ASTM E1980 within 0.1 °F; for "
    "a dark wall in air of 95 °F and a sun of 250 Btu/(h·sq ft) it gives 162 °F, where the sol-air temperature of the "
    "ASHRAE Handbook is 170 °F. It leaves out stored heat, and cooling below air under a clear night sky, and was not "
    "held against a measured wall: read the wall before work."
)


class Face(NamedTuple):
    """A face in the sun: its bearing in degrees, reflectance, emittance, the ground before it, and air over sea level.

    `shaded` keeps off the direct sun; `reflected` doubles part of it from glass or metal nearby.
    """

    facing: float
    reflectance: float
    emittance: float
    ground: float
    thin_air: float
    reflected: bool = False
    shaded: bool = False


def model_surface(data: HourlyData, sunshine: Sunshine, face: Face) -> Column:
    """The temperature of a face in each hour, in °C; that of the air where no sun reaches it or none is known."""
    north, east = find_facing(face.facing)
    direct, diffuse, wind = data.column("direct"), data.column("diffuse"), data.column("wind")
    skies = {day: find_sky(day) for day in range(1, 366)}
    faces: Column = []
    factor = (1 - face.reflectance) * (REFLECTED_SUN if face.reflected else 1.0)
    for at, air in enumerate(data.column("air")):
        sun = sunshine.middles[at]
        if air is None or (sun.up <= 0 and not diffuse[at]):
            faces.append(air)
            continue
        beam, sky = direct[at], diffuse[at]
        if beam is None or sky is None:
            clear = skies[day_of_year(data.starts[at])]
            beam = clear_beam(clear, sun.up, face.thin_air)
            sky = clear.c * beam
        if face.shaded or sun.up <= 0:
            beam = 0.0
        gain = factor * sun_on_wall(beam, sky, sun.up, sun.on_wall(north, east), face.ground)
        blown = wind[at]
        h_c = H_C if blown is None else find_h_c(blown)
        faces.append(balance_face(gain, face.emittance, air + _ABSOLUTE, h_c) - _ABSOLUTE if gain > 0 else air)
    return faces


def is_measured(data: HourlyData) -> bool:
    """Whether the file tells the sun itself, direct and diffuse."""
    return {"direct", "diffuse"} <= data.columns.keys()
