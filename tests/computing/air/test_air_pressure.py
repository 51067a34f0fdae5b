"""The standard atmosphere: its printed tables, two general libraries over the whole range, and both unit systems."""

from pathlib import Path

import ambiance
import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.computing.asked import line, sum_of
from tests.support import case_of


def air(altitude: float, unit: str = "ft") -> Working:
    return sum_of("air-pressure", altitude=f"{altitude:.9f} {unit}")


# Feet and psi of the U.S. Standard Atmosphere 1976 as an engineering reference page prints it. The page tabulates by
# height at even gravity, which at 30,000 ft differs from the height itself by 43 ft: hence a little more room there.
TABLE = [(0, 14.696, 6e-4), (5000, 12.228, 1e-3), (10000, 10.108, 2e-3), (20000, 6.759, 6e-3), (30000, 4.373, 9e-3)]


@pytest.mark.parametrize(("feet", "printed", "within"), TABLE)
def test_the_printed_table_of_the_standard(feet: float, printed: float, within: float) -> None:
    assert air(feet).result == pytest.approx(printed, abs=within)


def test_the_top_of_the_troposphere() -> None:
    # 226.32 hPa at 11 km of even gravity, U.S. Standard Atmosphere 1976; 10 972 m is 10 953.9 m there.
    made = air(36000)
    assert line(made, "H") * 0.3048 == pytest.approx(10953.9, abs=0.1)
    assert made.result * 6.894757 > 22.632
    assert made.result * 6.894757 == pytest.approx(22.632, rel=0.01)


# Feet and psi below sea level: -1000 ft on a page of engineering data; -5000 ft in the printed table of the standard.
@pytest.mark.parametrize(("feet", "printed"), [(-1000, 15.236), (-5000, 17.554)])
def test_the_air_below_sea_level(feet: float, printed: float) -> None:
    assert air(feet).result == pytest.approx(printed, abs=2e-3)


# Feet and psi by 14.696 (1 - 6.8754e-6 z)^5.2559, from memory.
COARSE = [(0, 14.70), (1000, 14.17), (2000, 13.66), (3000, 13.17), (4000, 12.69), (6000, 11.78), (8000, 10.92)]


@pytest.mark.parametrize(("feet", "printed"), COARSE)
def test_the_table_to_four_digits(feet: float, printed: float) -> None:
    assert air(feet).result == pytest.approx(printed, abs=0.0065)


@pytest.mark.parametrize("metres", range(-4900, 10973, 651))
def test_a_library_of_the_standard_atmosphere_agrees(metres: int) -> None:
    # It takes the molar gas constant with fewer digits; the two differ in the sixth.
    wanted = float(ambiance.Atmosphere(metres).pressure[0]) / 1000
    assert air(metres, "m").result == pytest.approx(wanted, rel=3e-6)


@pytest.mark.parametrize("metres", range(-300, 4300, 200))
def test_a_library_of_moist_air_agrees(metres: int) -> None:
    # The short ASHRAE formula takes gravity as even; up to the highest sites that is less than 0.04 %.
    psychrolib.SetUnitSystem(psychrolib.SI)
    assert air(metres, "m").result * 1000 == pytest.approx(psychrolib.GetStandardAtmPressure(metres), rel=4e-4)


@given(st.integers(-16400, 35999))
def test_air_thins_with_height(feet: int) -> None:
    assert air(feet + 1).result < air(feet).result


@given(st.integers(-4998, 10972))
def test_both_unit_systems_agree(metres: int) -> None:
    # 1 ft = 0.3048 m and 1 psi = 6.894 757 kPa, NIST SP 811 (2008), appendix B.8.
    si, ip = air(metres, "m"), air(metres / 0.3048)
    assert (si.unit, ip.unit) == ("kPa", "psi")
    assert ip.result * 6.894757 == pytest.approx(si.result, rel=1e-6)
    assert line(ip, "x") == pytest.approx(line(si, "x"))


def test_the_share_of_sea_level_stands_beside() -> None:
    assert [step.symbol for step in air(5200).secondary_steps] == ["x"]
    assert line(air(0), "x") == pytest.approx(1)
    # 12 cfm at 5200 ft are 9.9 scfm, computed from the standard.
    assert 12 * line(air(5200), "x") == pytest.approx(9.9, abs=0.05)


@pytest.mark.parametrize(
    ("altitude", "said"),
    [
        ("36001 ft", "it lies from -16400 ft to 36000 ft"),
        ("-16401 ft", "altitude is -16401 ft"),
        ("12000 m", "it lies from -4999 m to 10973 m"),
        ("5200", "has no unit"),
        ("5200 psi", "not a unit of length"),
    ],
)
def test_what_lies_outside_the_troposphere_is_refused(altitude: str, said: str) -> None:
    with pytest.raises(Refused, match=said):
        sum_of("air-pressure", altitude=altitude)


@pytest.mark.parametrize(("units", "unit"), [("ip", "psi"), ("si", "kPa")])
def test_the_site_of_a_project_has_its_air_pressure(units: str, unit: str, tmp_path: Path) -> None:
    job = {"package": {"purpose": "design_draft", "units": units}, "site": {"altitude": "5200 ft"}}
    made = Resolver(case_of(tmp_path, job).project, computing.find)((), "air-pressure")
    assert made.unit == unit
    assert made.result == pytest.approx(sum_of("air-pressure", altitude="5200 ft", unit=unit).result)


def test_a_site_without_an_altitude_waits_for_it(tmp_path: Path) -> None:
    resolver = Resolver(case_of(tmp_path).project, computing.find)
    assert resolver.missing((), "air-pressure") == [("site", "altitude")]
