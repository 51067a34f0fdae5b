"""The standard atmosphere against a general library of it and against its printed table."""

import pytest
from ambiance import Atmosphere
from hypothesis import given
from hypothesis import strategies as st

from specgen.computing._atmosphere import HIGHEST, LOWEST, pressure, pressure_kpa, pressure_psia
from specgen.vocabulary.problem import Refused
from specgen.vocabulary.quantity import Quantity

# The formula takes geopotential altitude and the library geometric; at 2.5 km the two lie 1 m apart.
AS_GEOPOTENTIAL = Atmosphere.geop2geom_height


@given(st.floats(-4900, 10900))
def test_pressure_is_that_of_a_library_of_the_standard_atmosphere(meters: float) -> None:
    wanted = float(Atmosphere(AS_GEOPOTENTIAL(meters)).pressure[0]) / 1000
    assert pressure_kpa(meters) == pytest.approx(wanted, rel=2e-5)


# Feet and psia by 14.696 (1 - 6.8754e-6 z)^5.2559: U.S. Standard Atmosphere, from memory.
TABLE = [(0, 14.70), (1000, 14.17), (2000, 13.66), (3000, 13.17), (4000, 12.69), (5000, 12.23), (6000, 11.78)]
TABLE += [(8000, 10.92), (10000, 10.11)]


@pytest.mark.parametrize(("feet", "wanted"), TABLE)
def test_pressure_is_that_of_the_table_in_feet(feet: float, wanted: float) -> None:
    assert pressure_psia(feet) == pytest.approx(wanted, abs=0.0051)


@given(st.floats(-16000, 36000), st.floats(-16000, 36000))
def test_pressure_falls_with_altitude(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert pressure_psia(low) >= pressure_psia(high)


def test_feet_and_meters_give_one_pressure() -> None:
    made = pressure(Quantity.of(12000, "ft"))
    assert made.number("psi") == pytest.approx(pressure_psia(12000))
    assert made.number("kPa") == pytest.approx(pressure_kpa(3657.6))


@pytest.mark.parametrize("feet", [-16401, 36001, 40000])
def test_an_altitude_beyond_the_formula_is_refused_with_its_reach(feet: int) -> None:
    assert LOWEST < HIGHEST
    with pytest.raises(Refused, match="-16400 ft to 36000 ft"):
        pressure(Quantity.of(feet, "ft"))
