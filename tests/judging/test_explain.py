"""What `check --rule` tells of a long record: what is wrong one by one and bounded, what is right as a count."""

from pathlib import Path
from typing import Any

from specgen.judging.explain import explain
from tests.support import alone, context_of, project_of

# A cup time from 25 s to 35 s: common practice, no source.
WINDOW = {"gloss": {"cup_least": "25 s", "cup_most": "35 s"}}


def told(folder: Path, log: list[dict[str, Any]], code: str = "FIN-05h") -> list[tuple[str, str]]:
    context = context_of(project_of(folder, WINDOW | {"log": log}))
    return [(one.subject, one.outcome) for one in explain(context, alone("FIN-05h"), code)]


def pail(seconds: int | None, number: int = 3) -> dict[str, Any]:
    return {"step": "gloss", "pail": str(number)} | ({"cup_time": f"{seconds} s"} if seconds else {})


def test_entries_that_meet_a_clause_are_counted(tmp_path: Path) -> None:
    log = [pail(30), pail(40), pail(31)]
    assert told(tmp_path, log) == [("site record entry 2", "not met"), ("2 entries", "met")]


def test_of_many_entries_that_fail_ten_are_told_and_the_others_counted(tmp_path: Path) -> None:
    found = told(tmp_path, [pail(40, number) for number in range(25)])
    assert [outcome for _, outcome in found] == ["not met"] * 11
    assert [subject for subject, _ in found][9:] == ["site record entry 10", "15 more entries"]


def test_an_entry_of_a_kind_that_holds_no_such_reading_does_not_wait_for_it(tmp_path: Path) -> None:
    weather = {"step": "gloss", "air": "70 F"}
    assert told(tmp_path, [weather, pail(None)]) == [
        ("site record entry 2", "pending: log.1.cup_time"),
        ("1 entry", "no such reading"),
    ]


def test_the_figures_of_an_entry_are_those_that_its_clause_read(tmp_path: Path) -> None:
    context = context_of(project_of(tmp_path, WINDOW | {"log": [pail(40)]}))
    (found,) = explain(context, alone("FIN-05h"), "FIN-05h")
    figures = dict(found.figures)
    assert (figures["log.0.step"], figures["log.0.cup_time"], figures["gloss.cup_most"]) == ("gloss", "40 s", "35 s")
    assert "log" not in figures
