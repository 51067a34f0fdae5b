"""The steady heat balance of a sunlit face, and what its sums share."""

import math

from specgen.quantities.quantity import Quantity

SIGMA = 5.66961e-8  # W/(m2·K4), the value ASTM E1980 uses
# ASTM E1980: W/(m2·K) passed to the air at low (0 to 2 m/s), medium (2 to 6) and high (6 to 10) wind.
WINDS = {"low": 5.0, "medium": 12.0, "high": 30.0}
LOW_WIND, MEDIUM_WIND = 2.0, 6.0  # m/s, up to which a wind is low or medium
H_C = WINDS["medium"]
REFLECTED_SUN = 1.3  # irradiance with that of glass or metal that sends a second sun
# Air and sun that a building can meet; bounds of our own, so that a slip of a digit is told.
AIR = (Quantity.of(-80, "F"), Quantity.of(140, "F"))
SUN = (Quantity.of(0, "W/m2"), Quantity.of(1500, "W/m2"))
NOTES = ("Conduction into the board is neglected, which is conservative.",)


def balance_face(gain: float, emittance: float, air: float, h_c: float = H_C, around: float | None = None) -> float:
    """The face temperature, in kelvin, at which heat given off equals `gain`, in W/m2; surroundings as the air if None.

    Newton's method from above the root: the curve bends upward, so every step falls toward it. One of `emittance` and
    `h_c` may be 0; with both at 0 there is no such temperature.
    """
    around = air if around is None else around
    radiated = emittance * SIGMA  # 0 also for an emittance too small for a number
    warmer = max(air, around)
    by_air = warmer + gain / h_c if h_c else math.inf
    by_sky = (warmer**4 + gain / radiated) ** 0.25 if radiated else math.inf
    face = min(by_air, by_sky)
    for _ in range(60):
        lost = radiated * (face**4 - around**4) + h_c * (face - air)
        step = (lost - gain) / (4 * radiated * face**3 + h_c)
        face -= step
        if abs(step) < 1e-10:
            break
    return face


def find_h_c(wind: float) -> float:
    """The heat passed to the air, in W/(m2·K), at a wind in m/s, by the classes of ASTM E1980."""
    return WINDS["low" if wind <= LOW_WIND else "medium" if wind <= MEDIUM_WIND else "high"]


def to_kelvin(symbol: str, degree: str) -> str:
    """The expression of an absolute temperature, in kelvin, from one in °F or °C."""
    return f"({symbol} + 459.67) / 1.8" if degree == "F" else f"{symbol} + 273.15"


def from_kelvin(symbol: str, degree: str) -> str:
    """The expression of a temperature in °F or °C from one in kelvin."""
    return f"{symbol} * 1.8 - 459.67" if degree == "F" else f"{symbol} - 273.15"
