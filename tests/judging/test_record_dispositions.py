"""Dispositions: which nonconformance each answers, and what is told of one that answers none.

Limits are common practice, no source; the rest is retyped by hand from what a disposition is to tell.
"""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.record_judgment import RecordJudgment
from tests.support import case_of

PROJECT: dict[str, Any] = {"elevations": {"E1": {"wall": "W1"}, "E2": {"wall": "W1"}}}
GLOSS = {"step": "gloss", "date": "2027-06-15", "started_at": "07:10", "air": "45 F"}
LOG = [GLOSS | {"elevation": "E1", "area": "left bay"}, GLOSS | {"elevation": "E2"}]
DECIDED = {"decision": "recoated", "by": "L. Novak", "decided_on": "2027-06-17"}


def judge(folder: Path, *dispositions: dict[str, Any]) -> RecordJudgment:
    return case_of(folder, PROJECT | {"log": LOG, "disposition": list(dispositions)}).records


def answered(judgment: RecordJudgment) -> list[str]:
    """The elevations whose nonconformance of cold air has a disposition."""
    found = [one for one in judgment.nonconformances if one.code == "WEA-01c"]
    assert len(found) == 2
    return [one.entry.values["elevation"] for one in found if one.disposition is not None]


@pytest.mark.parametrize(
    ("told", "elevations"),
    [
        ({"date": "2027-06-15"}, ["E1", "E2"]),
        ({"date": "2027-06-15", "elevation": "E1"}, ["E1"]),
        ({"date": "2027-06-15", "elevation": "E1", "area": "Left  Bay"}, ["E1"]),
        ({"date": "2027-06-15", "elevation": "E2", "time": "07:10", "step": "gloss"}, ["E2"]),
    ],
)
def test_it_answers_what_agrees_with_all_that_it_tells(
    tmp_path: Path, told: dict[str, str], elevations: list[str]
) -> None:
    judgment = judge(tmp_path, {"clause": "wea-01C"} | told | DECIDED)
    assert answered(judgment) == elevations
    assert judgment.unmatched == ()


def test_the_row_of_the_entry_stands_in_place_of_day_and_face(tmp_path: Path) -> None:
    first = next(one.entry for one in judge(tmp_path).nonconformances if one.entry.values["elevation"] == "E1")
    told = {"file": first.place.file, "row": f"line {first.place.line}"}
    assert answered(judge(tmp_path, {"clause": "WEA-01c"} | told | DECIDED)) == ["E1"]


@pytest.mark.parametrize(
    ("told", "message", "hint"),
    [
        ({"clause": "WEA-01x", "date": "2027-06-15"}, "there is no nonconformance of clause 'WEA-01x'", "WEA-01c"),
        ({"clause": "WEA-01c"}, "this disposition of WEA-01c tells no entry", "write its date and elevation"),
        ({"date": "2027-06-15"}, "this disposition names no clause", "write clause: "),
        (
            {"clause": "WEA-01c", "date": "2027-06-16", "elevation": "E1"},
            "no nonconformance of WEA-01c has date 2027-06-16",
            "number 1 has date 2027-06-15",
        ),
        (
            {"clause": "WEA-01c", "date": "2027-06-15", "elevation": "E1", "area": "right bay"},
            "no nonconformance of WEA-01c has ",
            "number ",
        ),
    ],
)
def test_one_that_answers_none_is_told_with_what_is_nearest(
    tmp_path: Path, told: dict[str, str], message: str, hint: str
) -> None:
    judgment = judge(tmp_path, told | DECIDED)
    assert answered(judgment) == []
    (problem,) = judgment.unmatched
    assert problem.message.startswith(message)
    assert hint in problem.hint


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"by": None}, "does not count without by"),
        ({"decision": None}, "does not count without decision"),
        ({"decided_on": "2027-06-14"}, "is dated before its entry of 2027-06-15"),
    ],
)
def test_one_that_nobody_can_have_decided_so_does_not_count(
    tmp_path: Path, change: dict[str, Any], message: str
) -> None:
    told = {"clause": "WEA-01c", "date": "2027-06-15"} | DECIDED | change
    judgment = judge(tmp_path, {name: value for name, value in told.items() if value is not None})
    assert answered(judgment) == []
    assert message in judgment.unmatched[0].message


def test_the_last_one_counts_and_a_rejection_settles_nothing(tmp_path: Path) -> None:
    first = {"clause": "WEA-01c", "date": "2027-06-15"} | DECIDED | {"decision": "rejected"}
    rejected = judge(tmp_path, first)
    assert answered(rejected) == ["E1", "E2"]
    assert not any(one.is_settled for one in rejected.nonconformances if one.code == "WEA-01c")
    again = judge(tmp_path, first, first | {"decision": "accepted_as_is", "decided_on": "2027-06-20"})
    assert all(one.is_settled for one in again.nonconformances if one.code == "WEA-01c")


def test_a_disposition_is_no_reading(tmp_path: Path) -> None:
    with_one = judge(tmp_path, {"clause": "WEA-01c", "date": "2027-06-15"} | DECIDED)
    assert with_one.counts == judge(tmp_path).counts
