"""What is asked of an old surface: the number of its pull tests, and the bond that the wind asks of it.

Three pulls for each 1,000 sq ft or 100 m2 begun are common practice, no source; the sums are worked by hand.
"""

from pathlib import Path
from typing import Any

import pytest

from specgen import computing
from specgen.model.absence import Absent
from specgen.resolving.provider import Resolver
from tests.computing.test_workings import off_in_lines, off_in_order
from tests.support import project_of


def resolved(folder: Path, name: str, change: dict[str, Any]) -> Any:
    project = project_of(folder, change)
    return Resolver(project, computing.find, computing.names())(("walls", "W1"), name)


def wall(kind: str = "metal", **elevation: str) -> dict[str, Any]:
    return {
        "walls": {"W1": {"substrate": {"kind": kind}, "attachment": {"safety_factor": 4}}},
        "elevations": {"E1": {"wall": "W1"} | elevation},
    }


@pytest.mark.parametrize(
    ("units", "width", "height", "pulls"),
    [
        ("ip", "10 ft", "10 ft", 3),
        ("ip", "50 ft", "20 ft", 3),
        ("ip", "50 ft", "20 ft 1 in", 6),
        ("ip", "120 ft", "30 ft", 12),
        ("si", "20 m", "5 m", 3),
        ("si", "21 m", "5 m", 6),
    ],
)
def test_each_area_begun_has_its_set_of_pulls(units: str, width: str, height: str, pulls: int, tmp_path: Path) -> None:
    change = {"package": {"units": units}} | wall(width=width, height=height)
    working = resolved(tmp_path, "bond-pulls", change)
    assert working.result == pulls
    assert off_in_lines(working) == off_in_order(working) == []


# 90 psf by 4 are 360 psf, over 144 square inches 2.5 psi; 5 kPa by 4 are 20 kPa.
@pytest.mark.parametrize(("units", "pull", "bond", "unit"), [("ip", "90 psf", 2.5, "psi"), ("si", "5 kPa", 20, "kPa")])
def test_the_wind_asks_for_its_pull_times_the_factor(
    units: str, pull: str, bond: float, unit: str, tmp_path: Path
) -> None:
    change = {"package": {"units": units}} | wall(design_pressure_outward=pull)
    working = resolved(tmp_path, "bond-demand", change)
    assert (working.result, working.unit) == (pytest.approx(bond), unit)
    assert off_in_lines(working) == off_in_order(working) == []


@pytest.mark.parametrize("name", ["bond-pulls", "bond-demand"])
def test_nothing_is_asked_of_a_new_surface(name: str, tmp_path: Path) -> None:
    assert resolved(tmp_path, name, wall("concrete")) is None


@pytest.mark.parametrize(
    ("name", "lacking"), [("bond-pulls", "height"), ("bond-demand", "design_pressure_outward"), ("bond-demand", "kind")]
)
def test_a_sum_that_lacks_a_figure_waits_for_it(name: str, lacking: str, tmp_path: Path) -> None:
    change = wall("existing_coated" if lacking == "kind" else "metal", width="40 ft")
    with pytest.raises(Absent):
        resolved(tmp_path, name, change)


def test_the_sums_wait_for_whether_a_coating_stays(tmp_path: Path) -> None:
    change = wall("existing_coated", width="40 ft", height="20 ft")
    with pytest.raises(Absent) as absent:
        resolved(tmp_path, "bond-pulls", change)
    assert absent.value.path == ("walls", "W1", "substrate", "coating_removed")
