"""The steady heat balance of a sunlit face, and what its sums share."""

import math

from specgen.quantities.quantity import Quantity

SIGMA = 5.66961e-8  # W/(m2·K4), the value ASTM E1980 uses
H_C = 12.0  # W/(m2·K), medium wind of ASTM E1980
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


def to_kelvin(symbol: str, degree: str) -> str:
    """The expression of an absolute temperature, in kelvin, from one in °F or °C."""
    return f"({symbol} + 459.67) / 1.8" if degree == "F" else f"{symbol} + 273.15"


def from_kelvin(symbol: str, degree: str) -> str:
    """The expression of a temperature in °F or °C from one in kelvin."""
    return f"{symbol} * 1.8 - 459.67" if degree == "F" else f"{symbol} - 273.15"
