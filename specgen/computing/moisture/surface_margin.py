"""How far a surface lies above the dew point of the air at it, and the least surface temperature for a coat."""

from fractions import Fraction

from specgen.computing.guards import refuse_beyond
from specgen.computing.moisture._dew import SOURCES, dew_and_frost, given, notes, refuse_unfit_air
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider

UFC = Source(Kind.PUBLISHED, "UFC 3-190-06: no paint on a surface less than 5 °F (3 °C) above the dew point")
# Two published figures, not one converted: that of the unit system counts.
MARGIN = {"F": 5.0, "C": 3.0}
# Walls from deep winter to a dark face in the sun; bounds of our own.
COLDEST, HOTTEST = Quantity.of(-80, "F"), Quantity.of(250, "F")


def surface_margin(air: Quantity, rh: Fraction, surface: Quantity, system: str = "ip") -> Working:
    """Surface less dew point over water, in °F or °C apart; beside it the least surface temperature. Raises Refused.

    `rh` is relative humidity in percent; below freezing the margin to the frost point stands beside it too.
    """
    refuse_unfit_air(air, rh)
    refuse_beyond("surface", surface, COLDEST, HOTTEST)
    degree = "F" if system == "ip" else "C"
    apart = f"{degree} apart"
    more = (
        Given("T_s", "surface", surface.number(degree), degree),
        Given("m", "least margin of a surface to be coated", MARGIN[degree], apart),
    )
    made = Sum((*given(air, rh, degree), *more))
    frost = dew_and_frost(made, degree)
    margin = made.step("M", "surface above the dew point", "T_s - T_d", apart)
    made.step("T_m", "least surface temperature allowed", "T_d + m", degree)
    if frost:
        made.step("M_f", "surface above the frost point", "T_s - T_f", apart)
    beside, told = ("T_m", "M_f") if frost else ("T_m",), notes(air, frost)
    return Working("surface-margin", made.given, tuple(made.steps), margin, apart, (UFC, *SOURCES), told, beside=beside)


PROVIDER = Provider(
    "surface-margin",
    "Surface above the dew point",
    (),
    None,
    direct=surface_margin,
    units=("F apart", "C apart"),
    keys=(
        Key("air", "temperature", "air at the wall"),
        Key("rh", "percent", "relative humidity, above 0 to 100 %"),
        Key("surface", "temperature", "surface to be coated"),
    ),
)
