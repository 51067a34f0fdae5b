"""Air of a compressor at altitude, against published forms of the sum and a library of the standard atmosphere."""

from pathlib import Path
from typing import Any

import pytest
from ambiance import Atmosphere
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.computing.arguments import direct
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.quantities.two_systems import tell_in
from specgen.resolving.provider import Resolver
from tests.support import case_of


def supply(cfm: str = "100 cfm", altitude: str = "0 ft", **more: str) -> Working:
    return direct(computing.find("air-supply"), {"cfm": cfm, "altitude": altitude} | more)


# Gas law: scfm = acfm (P - RH Psat) / Pstd x Tstd / T. Steam tables: Psat is 0.949 psia at 100 F.
# Basis and state, 100 acfm at sea level, 100 F, 50 %.
@pytest.mark.parametrize(
    ("basis", "pressure", "kelvin_like"),
    [("sea_level_68f", 14.696, 527.67), ("dry_68f", 14.5, 527.67), ("sea_level_60f", 14.696, 519.67)],
)
def test_hot_damp_air_by_the_published_form(basis: str, pressure: float, kelvin_like: float) -> None:
    wanted = 100 * (14.696 - 0.5 * 0.949) / pressure * kelvin_like / 559.67
    assert supply(temperature="100 F", rh="50", basis=basis).result == pytest.approx(wanted, rel=1e-4)


def test_the_standard_state_is_printed_and_moves_the_figure() -> None:
    keys = {"temperature": "100 F", "rh": "50%"}
    low, high = supply(**keys), supply(**keys, basis="dry_68f")
    # 91.2 and 92.5 scfm, computed from the published form.
    assert (low.result, high.result) == (pytest.approx(91.2, abs=0.05), pytest.approx(92.5, abs=0.05))
    assert "14.696 psia (101.33 kPa) and 68 °F (20 °C)" in tell_in(low.notes[0])
    assert "14.5 psia (100 kPa) and 68 °F (20 °C), dry" in tell_in(high.notes[0])


@pytest.mark.parametrize("feet", [0, 1850, 5200, 8000, 12000])
def test_thin_air_by_a_library_of_the_standard_atmosphere(feet: int) -> None:
    share = float(Atmosphere(feet * 0.3048).pressure[0]) / 101325
    assert supply("12 cfm", f"{feet} ft").result == pytest.approx(12 * share, rel=1e-5)


def test_twelve_cfm_at_a_mile_high_site() -> None:
    # U.S. Standard Atmosphere, 1976, printed at 5,000 ft: 12.228 psia; 12.1 at 5,200 ft: 9.9 scfm.
    assert supply("12 cfm", "5200 ft").result == pytest.approx(9.9, abs=0.02)


# U.S. Bureau of Reclamation, Design Guide for Heating, Ventilating, and Air Conditioning Systems, September 2006, page
# 38, table 6a: altitude in feet, pressure in psi. Over 14.696 psi it is the share of the air that is left.
RECLAMATION = [(5900, 11.82), (6000, 11.78), (6500, 11.56), (7000, 11.34), (7500, 11.13), (8000, 10.92), (8700, 10.63)]


@pytest.mark.parametrize(("feet", "psi"), RECLAMATION)
def test_thin_air_by_a_printed_table_of_altitudes(feet: int, psi: float) -> None:
    assert supply("100 cfm", f"{feet} ft").result == pytest.approx(100 * psi / 14.696, abs=0.08)


def test_a_printed_change_of_standard_air_to_that_of_a_site() -> None:
    # An undated web guide, scfm to acfm: 100 scfm at 12.23 psia, 540 R, 80 % of 0.5069 psia; of 14.7 psia and 520 R as
    # standard: 129.1 acfm. 12.23 psia is the air at 5,000 ft, U.S. Standard Atmosphere; 540 R is 80.33 F.
    made = supply("129.1 cfm", "5000 ft", temperature="80.33 F", rh="80", basis="sea_level_60f")
    assert made.result == pytest.approx(100, abs=0.1)


def test_an_engine_loses_its_percent_for_each_thousand_feet() -> None:
    plain, engine = supply(altitude="5000 ft"), supply(altitude="5000 ft", derate="3 %/1000 ft")
    assert engine.result == pytest.approx(plain.result * 0.85)
    assert supply(altitude="-200 ft", derate="3 %/1000 ft").result == pytest.approx(supply(altitude="-200 ft").result)
    assert supply(altitude="0 ft", derate="0 %/1000 ft").result == pytest.approx(supply().result)


@given(st.floats(0, 30000), st.floats(1, 6000), st.floats(0, 100), st.floats(-30, 130))
def test_more_altitude_humidity_or_warmth_gives_less(feet: float, more: float, rh: float, warm: float) -> None:
    keys = {"temperature": f"{warm:.3f} F", "rh": f"{rh:.3f}%"}
    base = supply(altitude=f"{feet:.3f} ft", **keys).result
    assert supply(altitude=f"{feet + more:.3f} ft", **keys).result < base
    assert supply(altitude=f"{feet:.3f} ft", **keys | {"rh": "100"}).result <= base
    assert supply(altitude=f"{feet:.3f} ft", **keys | {"temperature": f"{warm + 10:.3f} F"}).result < base
    assert supply("50 cfm", f"{feet:.3f} ft", **keys).result == pytest.approx(base / 2)


@pytest.mark.parametrize("more", [{}, {"basis": "dry_68f"}, {"derate": "3 %/1000 ft"}])
@pytest.mark.parametrize("warm", [("95 F", "35 C"), ("23 F", "-5 C")])
def test_both_unit_systems_agree(more: dict[str, str], warm: tuple[str, str]) -> None:
    # 1 ft is 0.3048 m, 1 L/s is 60/28.316846592 cfm.
    ip = supply("100 cfm", "5000 ft", temperature=warm[0], rh="60", **more)
    si = supply("47.19474432 L/s", "1524 m", temperature=warm[1], rh="60", **more)
    assert (ip.unit, si.unit) == ("scfm", "L/s")
    assert si.result * 60 / 28.316846592 == pytest.approx(ip.result, rel=1e-9)


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ({"altitude": "36001 ft"}, "from -16400 ft to 36000 ft"),
        ({"altitude": "-16401 ft"}, "from -16400 ft to 36000 ft"),
        ({"cfm": "-1 cfm"}, "from 1 cfm to 2000 cfm"),
        ({"rh": "50"}, "without temperature"),
        ({"temperature": "70 F", "rh": "101"}, "from 0 % to 100 %"),
        ({"temperature": "141 F"}, "from -40 °F to 140 °F"),
        ({"altitude": "20000 ft", "derate": "5 %/1000 ft"}, "no power left"),
        ({"derate": "-1 %/1000 ft"}, "from 0 %/1000 ft to 8 %/1000 ft"),
        ({"basis": "scfm"}, "not a choice"),
    ],
)
def test_what_lies_outside_the_method_is_refused_with_its_range(keys: dict[str, str], told: str) -> None:
    with pytest.raises(Refused, match=told):
        supply(**keys)


JOB: dict[str, Any] = {
    "site": {"altitude": "5200 ft"},
    "compressor": {"air_flow": "12 cfm", "engine_derate": "0 %/1000 ft"},
}


def asked(folder: Path, change: Any) -> Working:
    return Resolver(case_of(folder, change).project, computing.find)((), "air-supply")


def test_a_project_takes_its_compressor_to_its_site(tmp_path: Path) -> None:
    assert asked(tmp_path, JOB).result == pytest.approx(supply("12 cfm", "5200 ft").result)
    metric = asked(tmp_path, JOB | {"package": {"purpose": "design_draft", "units": "si"}})
    assert metric.unit == "L/s"
    assert metric.result == pytest.approx(supply("12 cfm", "5200 ft").result * 28.316846592 / 60)


def test_a_compressor_whose_engine_is_not_told_of_is_waited_for(tmp_path: Path) -> None:
    with pytest.raises(Absent, match=r"compressor\.engine_derate"):
        asked(tmp_path, JOB | {"compressor": {"air_flow": "12 cfm"}})
