"""Heat by facing and air at altitude: two projects on which an expert's answer is known. Common practice, no source."""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.finding import Severity, Verdict
from tests.judging.test_outcomes import WHOLE, verdicts
from tests.support import case_of

WALL = WHOLE["walls"]["W1"]


def face(wall: str, facing: str, reflecting: str = "no") -> dict[str, Any]:
    return {"wall": wall, "facing": facing, "reflecting_surface_near": reflecting}


# A dark flake finish on three sides of a building at 40 degrees north; glass stands opposite the west one.
DARK = {
    "walls": {"W2": WALL, "W3": WALL},
    "climate": {"peak_wall_irradiance": "drop"},
    "colors": {"C1": {"solar_reflectance": 0.32, "metallic": "yes", "angles": [15, 45, 110], "range_samples": 3}},
    "elevations": {"E1": face("W1", "W", "yes"), "E2": face("W2", "S"), "E3": face("W3", "N")},
}


@pytest.mark.no_cover
@pytest.mark.parametrize("irradiance", ["drop", "840 W/m2"])
def test_a_dark_flake_finish_fails_in_the_west_is_a_caution_in_the_south_and_nothing_in_the_north(
    irradiance: str, tmp_path: Path
) -> None:
    change = DARK | {"climate": {"peak_wall_irradiance": irradiance}}
    judgment = case_of(tmp_path, change, WHOLE).judgment
    assert verdicts(judgment) == {"W1": Verdict.NO, "W2": Verdict.WITH_MEASURES, "W3": Verdict.YES}
    heat = {f.code: set(f.subjects) for f in judgment.findings if f.code.startswith(("HEA-02", "HEA-03"))}
    assert heat["HEA-02a"] == {"E1"}
    assert "E2" in heat["HEA-03b"]
    assert all("E3" not in subjects for subjects in heat.values())


@pytest.mark.no_cover
def test_the_own_figure_of_a_face_comes_before_that_of_its_facing(tmp_path: Path) -> None:
    shaded = DARK["elevations"]["E1"] | {"peak_irradiance": "250 W/m2"}
    change = DARK | {"elevations": DARK["elevations"] | {"E1": shaded}}
    judgment = case_of(tmp_path, change, WHOLE).judgment
    # Glass near the face stays a caution of its own.
    assert judgment.walls["W1"].verdict is Verdict.WITH_MEASURES
    assert {f.code for f in judgment.findings if "E1" in f.subjects} == {"HEA-03c"}


@pytest.mark.no_cover
@pytest.mark.parametrize("lost", ["facing", "latitude", "altitude"])
def test_a_face_without_its_facing_or_site_waits(lost: str, tmp_path: Path) -> None:
    change = DARK | (
        {"site": {lost: "drop"}}
        if lost != "facing"
        else {"elevations": DARK["elevations"] | {"E1": DARK["elevations"]["E1"] | {"facing": "drop"}}}
    )
    judgment = case_of(tmp_path, change, WHOLE).judgment
    waiting = {(n.code, n.subject) for n in judgment.not_judged}
    assert ("HEA-02a", "E1") in waiting
    assert not any(f.code == "HEA-02a" for f in judgment.findings)


# 26 cfm in the thin air of 8,200 ft, with an engine that loses 3 % for each 1,000 ft, and two guns of 8.8 scfm.
HIGH: dict[str, Any] = {
    "site": {"altitude": "8200 ft"},
    "spray": {"atomizing_pressure": "45 psi"},
    "compressor": {
        "air_flow": "26 cfm",
        "at_pressure": "90 psi",
        "rating_basis": "free_air",
        "engine_derate": "3 %/1000 ft",
    },
    "guns": {"G1": {"count": 2, "air_flow": "8.8 scfm", "duty": 1, "inlet_pressure": "30 psi"}},
    "hoses": {
        "H1": {"use": "air_gun", "length": "12 ft", "bore": "3/8 in"},
        "H2": {"use": "air_supply", "length": "50 ft", "bore": "1/2 in"},
    },
}


@pytest.mark.no_cover
def test_two_guns_high_up_draw_more_than_arrives(tmp_path: Path) -> None:
    case = case_of(tmp_path, HIGH)
    (finding,) = (f for f in case.judgment.findings if f.code == "AIR-01c")
    assert finding.severity is Severity.STOP
    # By hand: 26 x 0.7375 (U.S. Standard Atmosphere, 1976) x (1 - 0.03 x 8.2) = 14.46 scfm of the 17.6 drawn.
    assert "delivers 14.5 scfm" in finding.message
    assert "draw 17.6 scfm" in finding.message
    # 14.46 scfm feed one gun of 8.8; 26 x 17.6 / 14.46 is 31.7 cfm.
    assert "Spray with 1 gun at a time" in finding.remedy
    assert "rated, on the same basis, at a minimum of 32 cfm" in finding.remedy
    pressure = case.context.resolve(("guns", "G1"), "gun-pressure")
    share = next(step.value for step in pressure.steps if step.symbol == "x")
    assert share == pytest.approx(14.46 / 17.6, abs=0.001)
    assert any("less air than all guns draw" in note for note in pressure.notes)


@pytest.mark.no_cover
def test_one_gun_high_up_is_fed(tmp_path: Path) -> None:
    one = HIGH | {"guns": {"G1": HIGH["guns"]["G1"] | {"count": 1}}}
    case = case_of(tmp_path, one)
    assert "AIR-01c" not in {f.code for f in case.judgment.findings}
    pressure = case.context.resolve(("guns", "G1"), "gun-pressure")
    assert not any("less air than all guns draw" in note for note in pressure.notes)
