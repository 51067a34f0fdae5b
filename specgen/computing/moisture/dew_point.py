"""Dew point of air from its temperature and humidity; below freezing the frost point too."""

from fractions import Fraction

from specgen.computing.moisture._dew import SOURCES, dew_and_frost, given, notes, refuse_unfit_air
from specgen.model.working import Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider


def dew_point(air: Quantity, rh: Fraction, system: str = "ip") -> Working:
    """Dew point over water, in °F or °C; the frost point over ice beside it below freezing. Raises Refused.

    `rh` is relative humidity in percent; source: `SOURCES` of the Magnus form.
    """
    refuse_unfit_air(air, rh)
    degree = "F" if system == "ip" else "C"
    made = Sum(given(air, rh, degree))
    frost = dew_and_frost(made, degree)
    beside = ("T_f",) if frost else ()
    told, dew = notes(air, frost), made.known["T_d"]
    return Working("dew-point", made.given, tuple(made.steps), dew, degree, SOURCES, told, beside=beside)


PROVIDER = Provider(
    "dew-point",
    "Dew point, over water",
    (),
    None,
    direct=dew_point,
    units=("F", "C"),
    keys=(
        Key("air", "temperature", "air temperature"),
        Key("rh", "percent", "relative humidity, above 0 to 100 %"),
    ),
)
