"""GO and the record say the same of the same readings: both hold them against the limits of one step.

The readings are drawn by chance; limits are common practice, no source, and invented figures of a manufacturer.
"""

import random
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen.judging.choice_groups import COAT_WORK, EIFS_WORK
from specgen.model.project import Project
from specgen.standards import load_standards
from specgen.weather.going import SiteReadings, judge_go
from specgen.weather.limits import find_limits
from tests.support import case_of

# What GO holds a reading against, by the clause on the record that holds it against the same.
SAME = {
    "WEA-01a": "air least", "WEA-01b": "surface least", "WEA-01c": "air least", "WEA-01d": "surface least",
    "WEA-01e": "surface most", "WEA-01f": "humidity most", "WEA-01g": "margin least", "WEA-02a": "rain none",
    "WEA-02b": "rain none ahead", "WEA-02c": "air least ahead", "WEA-02d": "air least ahead", "WEA-03c": "wind most",
    "WEA-03d": "gust most", "WEA-04a": "sun none",
}  # fmt: skip
PROJECT: dict[str, Any] = {
    "walls": {"W1": {"mesh": {"layers": [{"kind": "high_impact"}, {"kind": "standard"}]}}},
    "smoothing": {"coats": 2},
    "elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W1"}, "E3": {"wall": "W1"}},
    "shade": {
        "X1": {"elevation": "E1", "kind": "shade_cloth"},
        "X2": {"elevation": "E2", "kind": "tent", "heated": "no"},
        "X3": {"elevation": "E3", "kind": "tent", "heated": "yes"},
    },
    "weather": {"max_spray_wind": "9 mph", "most_humidity": 80},
    "coating": {
        "primer": {"least_dry_temperature": "45 F", "most_humidity": 90},
        "gloss": {"least_dry_temperature": "12 C", "most_humidity": 75},
    },
}
READ = ("air", "surface", "humidity", "wind", "gust", "rain", "forecast_rain", "forecast_low")


def draw_entry(chance: random.Random) -> dict[str, Any]:
    """An entry near its limits, in either system of units, with a few readings left out."""
    air = chance.uniform(3, 38)
    celsius = chance.random() < 1 / 3

    def warmth(degrees: float) -> str:
        return f"{degrees:.1f} C" if celsius else f"{degrees * 1.8 + 32:.{chance.choice((0, 1))}f} F"

    wind = chance.uniform(7, 11)
    entry = {
        "step": chance.choice((*EIFS_WORK, *COAT_WORK)),
        "elevation": chance.choice(("E1", "E2", "E3")),
        "date": "2027-06-14",
        "air": warmth(air),
        "surface": warmth(air + chance.gauss(0, 3)),
        "humidity": f"{chance.uniform(50, 100):.1f}",
        "wind": f"{wind:.1f} mph",
        "gust": f"{(wind + chance.uniform(0.1, 2)) * 0.44704:.2f} m/s",
        "rain": chance.choice(("yes", "no")),
        "sun_on_wall": chance.choice(("yes", "no")),
        "forecast_rain": chance.choice(("yes", "no")),
        "forecast_low": warmth(chance.uniform(2, 14)),
    }
    return {name: value for name, value in entry.items() if name not in READ or chance.random() > 1 / 20}


def go_fails(project: Project, number: int) -> set[str]:
    """What fails when GO is asked of the readings of an entry."""
    values = dict(project.records.of("log")[number].values)
    limits = find_limits(project, load_standards(), values["step"], values["elevation"])
    readings = SiteReadings(sun=values.get("sun_on_wall"), **{name: values.get(name) for name in READ})
    held = judge_go(limits, readings).held
    return {f"{one.limit.reading} {one.limit.sense}{' ahead' * one.ahead}" for one in held if one.fails}


@pytest.mark.parametrize("units", ["ip", "si"])
def test_go_and_the_record_say_the_same_of_the_same_readings(units: str, tmp_path: Path) -> None:
    chance = random.Random(7)
    log = [draw_entry(chance) for _ in range(400)]
    case = case_of(tmp_path, PROJECT | {"package": {"units": units}, "log": log})
    recorded: dict[int, set[str]] = {number: set() for number in range(len(log))}
    for one in case.records.nonconformances:
        if one.code in SAME:
            recorded[one.entry.number].add(SAME[one.code])
    assert {number: go_fails(case.project, number) for number in recorded} == recorded
    assert set(SAME.values()) == set().union(*recorded.values())


# In air of 70 °F and 84 % the dew point is 64.9 °F, at 85 % 65.3 °F (psychrometric tables); between them by steps of a
# few hundredths the Magnus form.
@pytest.mark.parametrize(
    ("surface", "humidity", "fails"),
    [
        ("70 F", "84.0", False),
        ("70 F", "84.1", False),
        ("70 F", "84.2", True),
        ("70 F", "85", True),
        ("69.9 F", "83.9", True),
    ],
)
def test_no_rounding_excuses_a_margin_above_the_dew_point(
    surface: str, humidity: str, fails: bool, tmp_path: Path
) -> None:
    entry = {"step": "boards", "elevation": "E1", "date": "2027-06-14", "air": "70 F"}
    case = case_of(tmp_path, PROJECT | {"log": [entry | {"surface": surface, "humidity": humidity}]})
    found = [one.found for one in case.records.nonconformances if one.code == "WEA-01g"]
    assert bool(found) is fails
    assert not any(text.startswith("5 ") for text in found)
    assert ("margin least" in go_fails(case.project, 0)) is fails
    assert Fraction(humidity) == case.project.records.of("log")[0].get("humidity")
