"""How a nonconformance tells its reading and its limit: figures that print alike, and days."""

from pathlib import Path
from typing import Any

from specgen.judging.record_judging import judge_records
from specgen.judging.registry import load_rules
from specgen.model.record_judgment import Nonconformance
from tests.support import context_of, project_of


def found_in(folder: Path, change: dict[str, Any], code: str) -> list[Nonconformance]:
    judgment = judge_records(context_of(project_of(folder, change)), load_rules())
    return [one for one in judgment.nonconformances if one.code == code]


def test_the_other_unit_is_left_out_where_reading_and_limit_print_alike_in_it(tmp_path: Path) -> None:
    # By hand: 8 mph x 0.44704 = 3.576 m/s, 8.1 mph 3.621 m/s: both print 3.6 m/s.
    wind = {"weather": {"max_spray_wind": "8 mph"}, "log": [{"step": "gloss", "wind": "8.1 mph"}]}
    (one,) = found_in(tmp_path, wind, "WEA-03c")
    assert (one.found, one.wanted) == ("8.1 mph", "8 mph")


def test_both_units_stand_where_they_tell_the_two_apart(tmp_path: Path) -> None:
    wind = {"weather": {"max_spray_wind": "8 mph"}, "log": [{"step": "gloss", "wind": "9 mph"}]}
    (one,) = found_in(tmp_path, wind, "WEA-03c")
    assert (one.found, one.wanted) == ("9 mph (4 m/s)", "8 mph (3.6 m/s)")


def test_a_day_that_is_a_limit_is_told_as_people_write_it(tmp_path: Path) -> None:
    change = {
        "instruments": {"HY-1": {"kind": "hygrometer", "calibrated_to": "2027-12-31"}},
        "log": [{"step": "gloss", "date": "2028-01-14", "humidity": 60}],
    }
    (one,) = found_in(tmp_path, change, "AIR-06b")
    assert one.wanted == "December 31, 2027"
