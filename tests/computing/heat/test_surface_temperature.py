"""The face by heat balance: published faces of ASTM E1980, and another way of solving the balance over a grid."""

from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.computing.asked import line, sum_of
from tests.support import case_of

FACE = {"solar_reflectance": "0.4", "emittance": "0.3", "air": "95 F", "irradiance": "800 W/m2"}
# The conditions of ASTM E1980: 1000 W/m2, air 310 K, sky 300 K.
ROOF = {"irradiance": "1000 W/m2", "air": "310 K", "surroundings": "300 K"}


def face(**more: str) -> Working:
    return sum_of("surface-temperature", **FACE | more)


def halved(gain: float, emittance: float, air: float, h_c: float, around: float) -> float:
    """The face, in kelvin, that gives off what it gains, by halving; the constant typed from ASTM E1980."""
    low, high = min(air, around) - 1, max(air, around) + gain / h_c + 1
    for _ in range(200):
        middle = (low + high) / 2
        lost = emittance * 5.66961e-8 * (middle**4 - around**4) + h_c * (middle - air)
        low, high = (middle, high) if lost < gain else (low, middle)
    return high


# Reflectance, face in kelvin as printed: a test laboratory's worked example after ASTM E1980, medium wind, emittance
# 0.90 for the white and black reference faces; that of the sample is not printed, and 0.90 gives its figure.
@pytest.mark.parametrize(("reflectance", "printed"), [("0.80", 317.8), ("0.05", 355.6), ("0.09", 353.7)])
def test_published_faces_of_a_roof_in_the_sun(reflectance: str, printed: float) -> None:
    made = face(solar_reflectance=reflectance, emittance="0.9", **ROOF)
    assert line(made, "K_s") == pytest.approx(printed, abs=0.05)
    assert made.result == pytest.approx(printed - 273.15, abs=0.05)


# Balances of textbooks, without wind or under a cold sky: absorbed share, emittance, sun, air, h_c, surroundings, face
# in kelvin, rounding.
TEXTBOOKS = [
    # J. P. Holman, Heat Transfer, example 8-20, page 454: 700 W/m2, surroundings 298 K, no convection; white paint 0.12
    # and 0.9, flat black lacquer 0.96 and 0.95. T = (700 a / (e 5.669e-8) + 298^4)^(1/4): inputs and equation read in a
    # public program of the example, the roots worked by hand.
    (0.12, 0.9, 700, "298 K", 0, "298 K", 312.46, 0.01),
    (0.96, 0.95, 700, "298 K", 0, "298 K", 377.76, 0.01),
    # Y. A. Cengel, solutions, 11-60: water at 0 C and emissivity 0.95 in air of 4 C, h 18, under a sky of 254.8 K.
    (0.0, 0.95, 0, "4 C", 18, "254.8 K", 273.15, 0.05),
    # I. Martinez, exercise m13_p64: a black ball (0.9) reaches 37.5 C and a white one (0.2) 20 C in air of 15 C, h 10,
    # 1000 W/m2 on its disk, which is 250 on its surface, with radiation left out.
    (0.9, 0.0, 250, "15 C", 10, "air", 310.65, 0.005),
    (0.2, 0.0, 250, "15 C", 10, "air", 293.15, 0.005),
]


@pytest.mark.parametrize(("absorbed", "emittance", "sun", "air", "h_c", "around", "wanted", "rounding"), TEXTBOOKS)
def test_worked_balances_of_textbooks(
    absorbed: float, emittance: float, sun: int, air: str, h_c: int, around: str, wanted: float, rounding: float
) -> None:
    made = face(
        solar_reflectance=f"{1 - absorbed:.2f}",
        emittance=str(emittance),
        irradiance=f"{sun} W/m2",
        air=air,
        h_c=f"{h_c} W/m2K",
        surroundings=around,
    )
    assert line(made, "K_s") == pytest.approx(wanted, abs=rounding)


@pytest.mark.parametrize("emittance", ["0.05", "0.9", "1"])
@pytest.mark.parametrize("around", ["0 K", "3 K", "172 K", "300 K"])
def test_without_wind_the_face_is_the_fourth_root_of_what_it_takes_up(emittance: str, around: str) -> None:
    # Stefan-Boltzmann law: e s (T^4 - T_r^4) = G; nothing goes to the air, whatever its temperature.
    made = face(emittance=emittance, h_c="0 W/m2K", surroundings=around, air="-40 C")
    cold = float(around.split()[0])
    assert line(made, "K_s") == pytest.approx((cold**4 + 480 / (float(emittance) * 5.66961e-8)) ** 0.25, abs=1e-7)


def test_a_face_that_gives_nothing_off_has_no_temperature() -> None:
    with pytest.raises(Refused, match="no steady temperature") as refused:
        face(emittance="0", h_c="0 W/m2K")
    # Only these two terms of the balance carry heat away.
    assert refused.value.problems[0].hint == "give h_c or emittance more than 0"


GRID = list(
    product((0.05, 0.4, 1.0), (0.0, 0.3, 0.9), (-20.0, 35.0), (-40.0, 35.0), (0.0, 790.0), (0.5, 5.0, 12.0, 30.0))
)


@pytest.mark.parametrize(("reflectance", "emittance", "air", "around", "sun", "h_c"), GRID)
def test_the_balance_agrees_with_another_way_of_solving_it(
    reflectance: float, emittance: float, air: float, around: float, sun: float, h_c: float
) -> None:
    made = face(
        solar_reflectance=str(reflectance),
        emittance=str(emittance),
        air=f"{air} C",
        surroundings=f"{around} C",
        irradiance=f"{sun} W/m2",
        h_c=f"{h_c} W/m2K",
    )
    wanted = halved((1 - reflectance) * sun, emittance, air + 273.15, h_c, around + 273.15)
    assert line(made, "K_s") == pytest.approx(wanted, abs=1e-7)


def test_surroundings_are_as_the_air_where_nothing_is_said() -> None:
    assert face().result == face(surroundings="air").result == face(surroundings="95 F").result
    assert face(surroundings="0 F").result < face().result


def test_it_is_the_heat_balance_of_the_face_heat() -> None:
    assert face().result == pytest.approx(line(sum_of("face-heat", hot_air="95 F", **rest()), "T_2"))


def rest() -> dict[str, str]:
    return {key: text for key, text in FACE.items() if key != "air"}


def test_a_face_that_takes_nothing_up_and_sees_its_own_air_stays_at_it() -> None:
    assert face(solar_reflectance="1").result == pytest.approx(95)
    assert face(irradiance="0 W/m2").result == pytest.approx(95)


def test_a_face_under_a_cold_sky_falls_below_its_air() -> None:
    assert face(irradiance="0 W/m2", emittance="0.9", surroundings="0 F").result < 90


@given(st.integers(0, 99), st.integers(0, 99), st.integers(0, 1200), st.integers(0, 110), st.integers(2, 60))
def test_the_face_moves_as_physics_says(reflectance: int, emittance: int, sun: int, air: int, h_c: int) -> None:
    keys = {
        "solar_reflectance": f"{reflectance / 100}",
        "emittance": f"{emittance / 100}",
        "irradiance": f"{sun} W/m2",
        "air": f"{air} F",
        "h_c": f"{h_c} W/m2K",
    }
    base = face(**keys).result
    assert base >= air - 1e-9
    for cooler in (
        {"solar_reflectance": f"{(reflectance + 1) / 100}"},
        {"emittance": f"{(emittance + 1) / 100}"},
        {"h_c": f"{h_c + 1} W/m2K"},
        {"air": f"{air - 1} F"},
    ):
        assert face(**keys | cooler).result <= base + 1e-9, cooler
    assert face(**keys | {"irradiance": f"{sun + 1} W/m2"}).result >= base - 1e-9


@given(st.integers(-40, 55), st.integers(-40, 55), st.integers(0, 1200))
def test_both_unit_systems_agree(air: int, around: int, sun: int) -> None:
    si = face(air=f"{air} C", surroundings=f"{around} C", irradiance=f"{sun} W/m2")
    made = sum_of(
        "surface-temperature",
        air=f"{air * 1.8 + 32:.6f} F",
        surroundings=f"{around * 1.8 + 32:.6f} F",
        # 1 Btu/(h ft2) = 3.154 591 W/m2, NIST SP 811 (2008), appendix B.8.
        irradiance=f"{sun / 3.154591:.8f} Btu/h.ft2",
        # 1 Btu/(h ft2 F) = 5.678 263 W/(m2 K), the same appendix.
        h_c=f"{12 / 5.678263:.8f} Btu/(h.ft2.F)",
        solar_reflectance="0.4",
        emittance="0.3",
    )
    assert (made.unit, si.unit) == ("F", "C")
    assert made.result == pytest.approx(si.result * 1.8 + 32, abs=1e-3)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"solar_reflectance": "1.1"}, "it lies from 0 to 1"),
        ({"emittance": "-0.1"}, "emittance is -0.1"),
        ({"air": "300 F"}, "air is 300 .F .*-80 .F to 140 .F"),
        ({"air": "-70 C"}, "it lies from -62.2 .C to 60 .C"),
        ({"irradiance": "1600 W/m2"}, "it lies from 0 W/m2? ?.* to 1500"),
        ({"h_c": "-1 W/m2K"}, "h_c is -1"),
        ({"h_c": "101 W/m2K"}, "to 100 W"),
        ({"surroundings": "-274 C"}, "surroundings is -274"),
        ({"surroundings": "cold"}, "'cold' is not a quantity"),
        ({"surroundings": "none"}, "cannot be none"),
    ],
)
def test_what_lies_outside_the_range_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        face(**wrong)


def test_no_project_holds_its_figures(tmp_path: Any) -> None:
    with pytest.raises(Refused, match="surface-temperature takes its figures from keys"):
        Resolver(case_of(tmp_path).project, computing.find)((), "surface-temperature")
