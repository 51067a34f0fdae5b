"""The sol-air temperature: table constants of the handbook, a units library, and both unit systems."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing.asked import sum_of
from tests.computing.units_library import UNITS

WALL = {"air": "95 F", "irradiance": "250 Btu/h.ft2", "absorptance": "0.9", "h_o": "3 Btu/(h.ft2.F)"}


def heated(**more: str) -> Working:
    return sum_of("sol-air", **WALL | more)


# Absorptance over h_o as the handbook's tables have it: 0.30 dark, 0.15 light, h_o 3.0 Btu/(h ft2 F); from memory.
@pytest.mark.parametrize(("absorptance", "wanted"), [("0.9", 170.0), ("0.45", 132.5)])
def test_dark_and_light_faces_of_the_handbook(absorptance: str, wanted: float) -> None:
    assert heated(absorptance=absorptance).result == pytest.approx(wanted)


def test_a_roof_loses_seven_degrees_to_the_sky() -> None:
    # 20 Btu/(h ft2) over 3.0 Btu/(h ft2 F), 7 F, for level faces alone; ASHRAE Fundamentals, from memory.
    assert heated().result - heated(long_wave="7 F").result == pytest.approx(7)


def test_metric_sums() -> None:
    # Computed: 35 C + 0.9 x 800 / 17.
    made = heated(air="35 C", irradiance="800 W/m2", h_o="17 W/m2K")
    assert made.unit == "C"
    assert made.result == pytest.approx(77.35, abs=0.01)


@given(st.integers(-40, 55), st.integers(0, 1400), st.integers(0, 100), st.integers(2, 60), st.integers(0, 20))
def test_a_units_library_agrees_and_so_do_both_unit_systems(
    air: int, sun: int, absorptance: int, film: int, loss: int
) -> None:
    q = UNITS.Quantity
    kelvin = q(air, "degC").to("kelvin") + (q(absorptance / 100, "") * q(sun, "W/m^2") / q(film, "W/m^2/kelvin")).to(
        "kelvin"
    )
    wanted = (kelvin - q(loss, "kelvin")).to("degF").magnitude
    si = sum_of(
        "sol-air",
        air=f"{air} C",
        irradiance=f"{sun} W/m2",
        absorptance=f"{absorptance / 100}",
        h_o=f"{film} W/m2K",
        long_wave=f"{loss} C",
    )
    ip = sum_of(
        "sol-air",
        air=f"{air * 1.8 + 32:.6f} F",
        irradiance=f"{q(sun, 'W/m^2').to('BTU/hour/foot^2').magnitude:.9f} Btu/h.ft2",
        absorptance=f"{absorptance / 100}",
        h_o=f"{q(film, 'W/m^2/kelvin').to('BTU/hour/foot^2/delta_degF').magnitude:.9f} Btu/(h.ft2.F)",
        long_wave=f"{loss * 1.8:.6f} F",
    )
    assert si.result * 1.8 + 32 == pytest.approx(wanted, abs=1e-6)
    assert ip.result == pytest.approx(wanted, abs=1e-3)


@given(st.integers(0, 99), st.integers(1, 450), st.integers(1, 17))
def test_the_temperature_moves_as_physics_says(absorptance: int, sun: int, film: int) -> None:
    keys = {"absorptance": f"{absorptance / 100}", "irradiance": f"{sun} Btu/h.ft2", "h_o": f"{film} Btu/(h.ft2.F)"}
    base = heated(**keys).result
    assert base >= 95
    assert heated(**keys | {"absorptance": f"{(absorptance + 1) / 100}"}).result > base
    if absorptance:
        assert heated(**keys | {"irradiance": f"{sun + 1} Btu/h.ft2"}).result > base
        assert heated(**keys | {"h_o": f"{film + 0.5} Btu/(h.ft2.F)"}).result < base
    assert heated(**keys | {"long_wave": "1 F"}).result == pytest.approx(base - 1)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"absorptance": "1.1"}, "it lies from 0 to 1"),
        ({"absorptance": "90"}, "absorptance is 90"),
        ({"h_o": "0 W/m2K"}, "h_o is 0"),
        ({"h_o": "3"}, "has no unit"),
        ({"irradiance": "-5 W/m2"}, "irradiance is -5"),
        ({"long_wave": "-1 F"}, "long_wave is -1"),
        ({"long_wave": "60 F"}, "it lies from 0 .F to 50 .F"),
        ({"air": "180 F"}, "air is 180"),
    ],
)
def test_what_lies_outside_the_range_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        heated(**wrong)
