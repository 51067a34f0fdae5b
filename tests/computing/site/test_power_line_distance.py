"""Least distance from a power line, 29 CFR 1926.451(f)(6), edition of 2015: the rows of its table and their sum."""

from pathlib import Path

import pytest

from specgen import computing
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.computing.asked import sum_of
from tests.support import case_of

# Insulated, voltage, feet and inches: (f)(6), insulated lines and uninsulated lines; above 50 kV by hand, 10 ft and
# 0.4 in for each kV over 50.
TABLE = [
    ("yes", "240 V", 3, 0),
    ("yes", "299 V", 3, 0),
    ("yes", "300 V", 10, 0),
    ("yes", "50 kV", 10, 0),
    ("yes", "69 kV", 10, 7.6),
    ("no", "240 V", 10, 0),
    ("no", "7.2 kV", 10, 0),
    ("no", "50 kV", 10, 0),
    ("no", "69 kV", 10, 7.6),
    ("no", "138 kV", 12, 11.2),
]


@pytest.mark.parametrize(("insulated", "voltage", "feet", "inches"), TABLE)
def test_the_rows_of_the_federal_table(insulated: str, voltage: str, feet: int, inches: float) -> None:
    made = sum_of("power-line-distance", voltage=voltage, insulated=insulated)
    assert (made.result, made.unit) == (pytest.approx(feet + inches / 12, abs=1e-9), "ft")


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ({"voltage": "0 V", "insulated": "no"}, "from 1 V to 1200000 V"),
        ({"voltage": "138", "insulated": "no"}, "138 kV"),
        ({"voltage": "138 kV", "insulated": "maybe"}, "yes or no"),
    ],
)
def test_what_is_no_power_line_is_refused(keys: dict[str, str], told: str) -> None:
    with pytest.raises(Refused) as raised:
        sum_of("power-line-distance", **keys)
    assert any(told in f"{problem.message} {problem.hint}" for problem in raised.value.problems)


def asked(folder: Path, **site: str) -> Working:
    project = case_of(folder, {"package": {"units": "si"}, "site": site | {"surroundings": ["power_lines"]}}).project
    return Resolver(project, computing.find)((), "power-line-distance")


def test_a_metric_project_goes_by_the_metric_figures_of_the_text(tmp_path: Path) -> None:
    # (f)(6): 3.1 m, and 1.0 cm for each kV over 50; 1 m for an insulated line under 300 V, where it says 0.9 m.
    made = asked(tmp_path, power_line_voltage="138 kV", power_line_insulated="no")
    assert (made.result, made.unit) == (pytest.approx(3.1 + 88 * 0.01), "m")
    assert asked(tmp_path, power_line_voltage="240 V", power_line_insulated="yes").result == pytest.approx(1)


def test_the_distance_waits_for_the_voltage(tmp_path: Path) -> None:
    with pytest.raises(Absent, match="site.power_line_voltage"):
        asked(tmp_path, power_line_insulated="no")
