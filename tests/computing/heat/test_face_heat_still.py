"""The face in still air: the heat balance at the low wind of ASTM E1980, by another way of solving it."""

from pathlib import Path
from typing import Any

import pytest

from specgen import computing
from specgen.model.absence import Absent
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.support import case_of

JOB: dict[str, Any] = {
    "climate": {"hot_air": "95 F", "peak_wall_irradiance": "800 W/m2"},
    "colors": {"C1": {"solar_reflectance": 0.4, "emittance": 0.3}},
    "elevations": {
        "E1": {"wall": "W1", "color": "C1", "peak_irradiance": "800 W/m2", "reflecting_surface_near": "no"},
        "E2": {"wall": "W1", "color": "C1", "peak_irradiance": "800 W/m2", "reflecting_surface_near": "yes"},
    },
}


def still(folder: Path, mark: str = "E1", name: str = "face-heat-still", **change: Any) -> Working:
    made = Resolver(case_of(folder, JOB | change).project, computing.find)(("elevations", mark), name)
    assert isinstance(made, Working)
    return made


def halved(gain: float, emittance: float, air: float) -> float:
    """The face, in kelvin, that gives off what it gains at 5 W/(m2 K), low wind of ASTM E1980; by halving."""
    low, high = air, air + gain / 5
    for _ in range(100):
        middle = (low + high) / 2
        lost = emittance * 5.66961e-8 * (middle**4 - air**4) + 5 * (middle - air)
        low, high = (middle, high) if lost < gain else (low, middle)
    return high


def test_a_face_of_metal_look_in_still_air(tmp_path: Path) -> None:
    # Computed from the stated balance: 480 W/m2 given off at 207.5 F.
    made = still(tmp_path)
    assert made.result == pytest.approx(207.5, abs=0.05)
    assert made.result == pytest.approx(halved(480, 0.3, 308.15) * 1.8 - 459.67, abs=1e-6)
    assert made.unit == "F"


def test_the_second_sun_is_taken_in(tmp_path: Path) -> None:
    # Three tenths more sun, from memory.
    assert still(tmp_path, "E2").result == pytest.approx(halved(624, 0.3, 308.15) * 1.8 - 459.67, abs=1e-6)


@pytest.mark.parametrize("mark", ["E1", "E2"])
def test_still_air_is_hotter_than_wind(mark: str, tmp_path: Path) -> None:
    by_wind = still(tmp_path, mark, "face-heat")
    assert still(tmp_path, mark).result > next(step.value for step in by_wind.steps if step.symbol == "T_2") + 20


def test_a_metric_project_is_told_in_celsius(tmp_path: Path) -> None:
    made = still(tmp_path, package={"purpose": "design_draft", "units": "si"})
    assert made.unit == "C"
    assert made.result == pytest.approx(halved(480, 0.3, 308.15) - 273.15, abs=1e-6)


def test_the_margin_to_the_board_stands_beside(tmp_path: Path) -> None:
    walls = {"W1": {"insulation": {"kind": "eps", "service_limit": "165 F"}}}
    made = still(tmp_path, walls=walls)
    assert [(line.symbol, line.unit) for line in made.secondary_steps] == [("M", "F apart"), ("SR_w", "")]
    assert made.secondary_steps[0].value == pytest.approx(165 - made.result)
    assert made.notes[-1].startswith("The face lies 42.5 °F above 165 °F")


def test_the_least_reflectance_keeps_the_margin_in_still_air(tmp_path: Path) -> None:
    # 10 F of margin, common practice: 155 F holds at the least reflectance, by another way of solving it; not below.
    walls = {"W1": {"insulation": {"kind": "eps", "service_limit": "165 F"}}}
    least = still(tmp_path, walls=walls).secondary_steps[1].value
    kept, lost = (halved((1 - least + less) * 800, 0.3, 308.15) * 1.8 - 459.67 for less in (0, 0.01))
    assert kept <= 155 < lost


def test_the_joint_rule_counts_where_it_is_hotter(tmp_path: Path) -> None:
    # 95 + 0.6 x 100 x 1, ASTM C1472 from memory: a face in the full sun of a site that gets little of it.
    face = JOB["elevations"]["E1"] | {"peak_irradiance": "300 W/m2"}
    climate = JOB["climate"] | {"peak_wall_irradiance": "300 W/m2"}
    assert still(tmp_path, elevations={"E1": face}, climate=climate).result == pytest.approx(155)


def test_a_face_without_its_figures_waits_for_them(tmp_path: Path) -> None:
    resolver = Resolver(case_of(tmp_path, {"elevations": {"E1": {"wall": "W1"}}}).project, computing.find)
    with pytest.raises(Absent):
        resolver(("elevations", "E1"), "face-heat-still")
    # Hot air, color, reflecting surface; latitude, altitude and facing for the sun.
    assert len(resolver.missing(("elevations", "E1"), "face-heat-still")) == 6
