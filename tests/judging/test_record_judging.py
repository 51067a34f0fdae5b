"""Entries of the site record: how each reading ends, what is not in order, and that the fast way finds the same.

The states are retyped by hand from what the clauses say; limits are common practice, no source.
"""

import random
from dataclasses import replace
from datetime import date, time
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen.judging.engine import run_rules
from specgen.judging.record_asking import Asker
from specgen.judging.record_judging import judge_records
from specgen.judging.registry import load_rules
from specgen.model.project import Project
from specgen.model.record import Entry, EntryPlace, Records
from specgen.model.record_judgment import ReadingState, RecordJudgment
from specgen.quantities.quantity import Quantity
from tests.support import case_of, context_of, project_of, with_deviation

PROJECT: dict[str, Any] = {
    "elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W1"}},
    "weather": {"max_spray_wind": "12 mph"},
    "gloss": {"max_water": 10, "least_dry_temperature": "50 F", "most_humidity": 85},
}
RULES = tuple(rule for rule in load_rules() if any(clause.of_entries for clause in rule.clauses))


def judge(folder: Path, *entries: dict[str, Any], **more: Any) -> RecordJudgment:
    return case_of(folder, PROJECT | {"log": list(entries)} | more).records


def states(judgment: RecordJudgment, number: int = 0) -> dict[str, ReadingState]:
    """How the readings of an entry of the log end, by field."""
    return {
        one.field: one.state
        for one in judgment.alike
        for entry in one.entries
        if (entry.collection, entry.number) == ("log", number)
    }


GLOSS = {"step": "gloss", "elevation": "E1", "date": "2027-06-15", "started_at": "07:10"}


def test_a_reading_ends_within_or_outside_its_limit(tmp_path: Path) -> None:
    found = states(judge(tmp_path, GLOSS | {"air": "61 F", "surface": "61 F", "humidity": 58, "wind": "13 mph"}))
    assert (found["air"], found["wind"]) == (ReadingState.WITHIN, ReadingState.OUTSIDE)


def test_what_is_due_for_the_step_and_blank_is_missing(tmp_path: Path) -> None:
    judgment = judge(tmp_path, GLOSS | {"pail": "3"}, {"step": "boards", "elevation": "E1", "air": "61 F"})
    assert states(judgment)["cup_time"] is ReadingState.MISSING
    assert "cup_time" not in states(judgment, 1)
    assert states(judgment, 1)["humidity"] is ReadingState.MISSING


def test_a_row_owes_what_its_kind_owes_and_nothing_of_another(tmp_path: Path) -> None:
    weather = {"air": "61 F", "surface": "61 F", "humidity": 58}
    passed = {"coat": 1, "ended_at": "09:10", "wet_film": "4 mil"}
    pail = {key: GLOSS[key] for key in ("step", "elevation", "date")} | {"coat": 1, "pail": "3", "cup_time": "30 s"}
    judgment = judge(tmp_path, GLOSS | weather, GLOSS | passed, pail, GLOSS | weather | passed)
    missing = [
        {field for field, state in states(judgment, number).items() if state is ReadingState.MISSING}
        for number in range(4)
    ]
    sky = {"wind", "gust", "sun_on_wall", "rain", "forecast_rain", "forecast_low"}
    gun = {"tank_clean", "tank_lined", "lid_tight", "regulators_at_zero", "stream_length", "distance", "pattern"}
    gun |= {"atomizing_pressure", "fluid_pressure", "equipment_cleaned"}
    assert missing[0] == sky
    assert missing[1] == gun
    assert missing[2] == {
        "cup", "cup_time_before_water", "material_temperature", "batch", "boxed_batches", "water_added", "water",
        "stirred", "strained",
    }  # fmt: skip
    assert missing[3] == sky | gun


def test_a_clause_that_waits_for_the_project_leaves_its_reading_not_evaluated(tmp_path: Path) -> None:
    judgment = judge(tmp_path, GLOSS | {"wind": "9 mph"}, weather={})
    assert states(judgment)["wind"] is ReadingState.NOT_EVALUATED
    reasons = [one.reason for one in judgment.unsettled if one.field == "wind"]
    assert reasons == ["WEA-03c waits for weather.max_spray_wind"]


def test_a_reading_that_no_clause_of_the_step_reads_is_not_applicable(tmp_path: Path) -> None:
    assert states(judge(tmp_path, {"step": "boards", "elevation": "E1", "wind": "30 mph"}))["wind"] == "not_applicable"


def test_outside_stands_before_all_else_that_several_clauses_say(tmp_path: Path) -> None:
    # The wall is too cold; how far it lies above the dew point nobody knows without air and humidity.
    assert states(judge(tmp_path, GLOSS | {"surface": "45 F"}))["surface"] is ReadingState.OUTSIDE


def test_each_reading_is_counted_once(tmp_path: Path) -> None:
    judgment = judge(tmp_path, GLOSS | {"air": "45 F"}, GLOSS | {"started_at": "09:00", "air": "61 F"})
    read = [(one.collection, entry.number, one.field) for one in judgment.alike for entry in one.entries]
    assert len(read) == len(set(read)) == sum(judgment.counts.values())


def test_what_is_unsettled_stands_in_the_order_of_the_entries(tmp_path: Path) -> None:
    judgment = judge(tmp_path, GLOSS, GLOSS | {"step": "primer"}, GLOSS | {"started_at": "09:00"})
    numbers = [one.entry.number for one in judgment.unsettled]
    assert numbers == sorted(numbers) and len(numbers) == len(judgment.unsettled)
    assert judgment.unsettled[0].entry.number == 0
    assert {one.state for one in judgment.unsettled} <= {ReadingState.MISSING, ReadingState.NOT_EVALUATED}


def test_nonconformances_are_numbered_in_the_order_of_the_entries(tmp_path: Path) -> None:
    judgment = judge(
        tmp_path, GLOSS | {"air": "45 F"}, GLOSS | {"started_at": "09:00", "strained": "no", "wind": "20 mph"}
    )
    assert [one.number for one in judgment.nonconformances] == list(range(1, len(judgment.nonconformances) + 1))
    numbers = [one.entry.number for one in judgment.nonconformances]
    assert numbers == sorted(numbers)
    assert {("WEA-01c", 0), ("AIR-03b", 1), ("WEA-03c", 1)} <= {
        (one.code, one.entry.number) for one in judgment.nonconformances
    }


def test_a_limit_that_the_project_sets_prints_with_it_and_with_its_source(tmp_path: Path) -> None:
    judgment = judge(tmp_path, GLOSS | {"water": 11})
    (one,) = [one for one in judgment.nonconformances if one.code == "FIN-06b"]
    assert (one.field, one.found, one.wanted) == ("water", "11", "10")
    assert one.basis.sources[0].legend == "Project: this project's description"
    assert one.message == "The pail of gloss holds 11% water; maximum 10%."


def test_an_approved_deviation_turns_a_nonconformance_into_a_caution(tmp_path: Path) -> None:
    change = PROJECT | {"log": [GLOSS | {"strained": "no"}]}
    for approved, severity, by in (("2027-02-24", "caution", "DV9"), ("tbd", "stop", None)):
        judgment = case_of(tmp_path, with_deviation(change, "AIR-03b", approved)).records
        (one,) = [one for one in judgment.nonconformances if one.code == "AIR-03b"]
        assert (one.severity, one.lifted_by) == (severity, by)
        assert ("is not approved" in one.message) == (by is None)


def test_the_record_changes_no_verdict_and_no_finding(tmp_path: Path) -> None:
    bare, recorded = case_of(tmp_path, PROJECT), case_of(tmp_path, PROJECT | {"log": [GLOSS | {"air": "20 F"}]})
    assert recorded.records.nonconformances
    assert (bare.judgment.walls, bare.judgment.not_judged) == (recorded.judgment.walls, recorded.judgment.not_judged)
    assert not {f.code for f in recorded.judgment.findings} & {one.code for one in recorded.records.nonconformances}


def test_without_entries_there_is_nothing_to_judge(tmp_path: Path) -> None:
    judgment = case_of(tmp_path, PROJECT).records
    assert not judgment.nonconformances and not judgment.alike and not judgment.unsettled
    assert set(judgment.counts.values()) == {0}


# Random entries --------------------------------------------------------------------------------------------------

STEPS = ("boards", "mesh", "second_pass", "smoothing_1", "smoothing_2", "primer", "gloss", "sealant")


def make_entries(count: int, seed: int) -> Records:
    """Entries with readings near their limits, on few days and places, many of them blank somewhere."""
    chance = random.Random(seed)  # noqa: S311  (no secret)

    def drop(values: dict[str, Any]) -> dict[str, Any]:
        return {name: value for name, value in values.items() if chance.random() > 0.1}  # noqa: PLR2004

    def place() -> dict[str, Any]:
        day = date(2027, 6, 1 + chance.randrange(12))
        return {"elevation": chance.choice(("E1", "E2")), "area": chance.choice(("left", "right", "")), "date": day}

    log = [
        drop(place())
        | drop(
            {
                "step": chance.choice(STEPS),
                "started_at": time(7 + chance.randrange(6), 10),
                "ended_at": time(14, 0),
                "coat": chance.choice((1, 2)),
                "air": Quantity.of(chance.choice((39, 45, 50, 61)), "F"),
                "surface": Quantity.of(chance.choice((39, 50, 61, 95)), "F"),
                "humidity": Fraction(chance.choice((50, 85, 90))),
                "wind": Quantity.of(chance.choice((5, 12, 20)), "mph"),
                "water": Fraction(chance.choice((6, 7, 11))),
                "batch": chance.choice(("B-1", "B-2")),
                "strained": chance.choice((True, False)),
                "rain": chance.choice((True, False)),
            }
        )
        for _ in range(count)
    ]
    release = [drop(place()) | {"step": chance.choice(STEPS), "time": time(6)} for _ in range(count // 4)]
    kinds = {"log": log, "release": release}
    return Records(
        {
            name: tuple(Entry(name, n, one, EntryPlace("day.csv", n + 2)) for n, one in enumerate(listed))
            for name, listed in kinds.items()
        }
    )


def recorded(folder: Path, count: int, seed: int) -> Project:
    project, records = project_of(folder, PROJECT), make_entries(count, seed)
    marks = {(name,): tuple(map(str, range(len(entries)))) for name, entries in records.entries.items()}
    return replace(project, records=records, members=project.members | marks)


@pytest.mark.parametrize("seed", range(6))
def test_the_fast_way_finds_what_each_clause_finds_asked_one_by_one(seed: int, tmp_path: Path) -> None:
    context = context_of(recorded(tmp_path, 60, seed))
    findings, waiting, _ = run_rules(context, RULES)
    judgment = judge_records(context, RULES)
    plain = {
        (f.code, place.path) for f in findings for place in f.places if place.path.split(".")[0] in ("log", "release")
    }
    fast = {(one.code, ".".join((*one.entry.path, one.field))) for one in judgment.nonconformances}
    assert fast == plain and plain and waiting


def test_a_record_ten_times_as_long_is_asked_little_more_often(tmp_path: Path) -> None:
    asked = []
    for count in (400, 4_000):
        context = context_of(recorded(tmp_path, count, 1))
        asker = Asker(context)
        judge_records(context, RULES, asker)
        asked.append(asker.asked)
    assert asked[1] < 3 * asked[0]
