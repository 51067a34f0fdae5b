"""D21: what one clause found is told once, each nonconformance by itself, with room for its disposition."""

from dataclasses import replace
from datetime import date, time

from specgen.formats import text
from specgen.model.block import Blank, CheckBox
from specgen.model.record_judgment import Reading, ReadingState, RecordJudgment
from tests.documents.records.entries import DAY, context_with, documents_of, judgment_of, make_entries, q
from tests.documents.test_form_names import blanks_of

HOT = {"date": DAY, "elevation": "E1", "step": "gloss", "started_at": time(11, 0), "surface": q("97", "F")}


def report(judgment: RecordJudgment, entries: list[object] | None = None) -> list[str]:
    context = context_with(entries or [])  # type: ignore[arg-type]
    return text.write_text(documents_of(context, judgment)["D21"]).splitlines()


def test_the_fault_of_several_readings_is_told_once_and_each_reading_by_itself() -> None:
    entries = make_entries(("log", HOT), ("log", {**HOT, "date": date(2027, 6, 16)}))
    lines = report(judgment_of(*((entry, "surface") for entry in entries)), entries)  # type: ignore[arg-type]
    assert sum("The wall is too hot." in line for line in lines) == 1
    assert sum("Shade the wall." in line for line in lines) == 1
    assert any(line.startswith("2. Limit: maximum 90 °F. Source: ") for line in lines)
    rows = [line.split(" | ") for line in lines if line.startswith("▲")]
    assert [row[0] for row in rows] == ["▲\u00a01", "▲\u00a02"]
    assert sum("Wall surface temperature: 97 °F" in line for line in lines) == 2


def test_a_limit_that_differs_is_told_at_its_reading() -> None:
    entries = make_entries(("log", HOT), ("log", HOT))
    judgment = judgment_of(*((entry, "surface") for entry in entries))
    first, second = judgment.nonconformances
    lines = report(replace(judgment, nonconformances=(first, second._replace(wanted="maximum 80 °F"))))
    assert not any(line.startswith("2. Limit") for line in lines)
    assert sum("limit maximum 80 °F" in line for line in lines) == 1


def test_the_head_counts_by_elevation_and_by_kind() -> None:
    entries = make_entries(("log", HOT), ("log", {**HOT, "elevation": "E2"}), ("log", HOT))
    lines = report(judgment_of((entries[0], "surface"), (entries[2], "surface")), entries)  # type: ignore[arg-type]
    assert "E1 South face | 2 | 2 | 0 | 0 | 0 | 2" in lines
    assert "E2 West face | 1 | 0 | 0 | 0 | 0 | 0" in lines
    assert "All | 3 | 2 | 0 | 0 | 0 | 2" in lines
    assert any(line.startswith("WEA-01c") and line.endswith("| stop | 2 | 1, 2") for line in lines)


def test_each_nonconformance_has_blanks_of_its_own_for_disposition_by_whom_and_when() -> None:
    entries = make_entries(("log", HOT), ("log", HOT))
    judgment = judgment_of(*((entry, "surface") for entry in entries))
    blanks = blanks_of(documents_of(context_with(entries), judgment)["D21"])
    names = [blank.name for blank in blanks if isinstance(blank, Blank)]
    rows = [f"WEA-01c@{line}@june%2Ecsv" for line in (2, 3)]
    assert names == [f"disposition.{what}.{row}" for row in rows for what in ("by", "decided_on")]
    boxes = [(one.field, one.value) for one in blanks if isinstance(one, CheckBox)]
    decisions = ("accepted_as_is", "repaired", "recoated", "replaced", "rejected")
    assert boxes == [(f"disposition.decision.{row}", decision) for row in rows for decision in decisions]


def test_a_disposition_that_was_entered_stands_in_the_report() -> None:
    told = {"decision": "recoated", "by": "L. Novak", "decided_on": date(2027, 6, 17), "note": "left bay"}
    (entry, decided) = make_entries(("log", HOT), ("disposition", told))
    said = " ".join(report(judgment_of((entry, "surface"), disposition=decided), [entry]))
    assert "recoated: left bay | L. Novak" in said
    assert "June 17, 2027" in said


def test_readings_not_judged_for_one_reason_share_a_row() -> None:
    entries = make_entries(("log", HOT), ("log", {**HOT, "date": date(2027, 6, 17)}))
    unsettled = [Reading(entry, "gust", ReadingState.MISSING, "not recorded") for entry in entries]
    lines = report(RecordJudgment((), {ReadingState.MISSING: 2}, tuple(unsettled)), entries)  # type: ignore[arg-type]
    assert "Peak gust | gloss: E1 | missing | 2 | 2027-06-15 to 2027-06-17" in lines
    assert "1. No reading lies outside its limit. Of 2 readings: 0 outside, 2 missing, 0 not evaluated, 0 within," in (
        " ".join(lines)
    )


def test_the_files_of_the_record_are_named() -> None:
    assert "june.csv | 1 | 0123456789abcdef" in report(RecordJudgment())
