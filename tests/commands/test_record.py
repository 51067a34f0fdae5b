"""`specgen record`: what was read, each nonconformance, what is missing; exit codes, and what is written."""

import csv
import json
from pathlib import Path
from typing import Any

import pytest

from specgen.cli import main
from tests.support import SMALL, merged, written

# Limits are common practice, no source: 50 °F for coats, material is strained.
PROJECT = merged(SMALL, {"elevations": {"E1": {"wall": "W1"}}, "weather": {"max_spray_wind": "12 mph"}})
JUNE = "date,started_at,elevation,area,step,air (F),wind (mph),strained\n"
COLD = f"{JUNE}2027-06-15,07:10,E1,left bay,gloss,45,9,yes\n"
GOOD = "date,elevation,step,air (F),surface (F),humidity (%),wind (mph)\n2027-06-15,E1,boards,61,61,58,5\n"


@pytest.fixture(name="folder")
def make_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    written(tmp_path, PROJECT)
    (tmp_path / "june.csv").write_text(COLD, "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run_json(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, Any]:
    code = main(["record", *words, "--format", "json"])
    return code, json.loads(capsys.readouterr().out)


def test_a_nonconformance_is_told_with_reading_limit_source_and_measure(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["record", "project.yaml", "june.csv"]) == 1
    text = capsys.readouterr().out
    assert "Trial: June 15, 2027\nread: 1 site record entry\n  june.csv: 1\n" in text
    block = text[text.index("STOP WEA-01c") :].partition("\n\n")[0]
    assert block.splitlines()[:4] == [
        "STOP WEA-01c  June 15, 2027, 07:10",
        "     E1, left bay, gloss",
        "     The air is at 45 °F; minimum 50 °F for this step.",
        "     reading: air temperature, 45 °F (7.2 °C)",
    ]
    assert "     limit: 50 °F (10 °C)\n     source: common practice, no source\n     measure: " in block
    assert block.endswith("     at june.csv row 2")
    assert text.endswith("\nnext: specgen record project.yaml june.csv --out site-record\n")


def test_what_is_missing_is_told_by_step_and_not_by_entry(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rows = "".join(f"2027-06-{day},07:10,E1,left bay,gloss,61,9,yes\n" for day in range(10, 30))
    (folder / "june.csv").write_text(JUNE + rows, "utf-8")
    main(["record", "project.yaml", "june.csv"])
    missing = capsys.readouterr().out.partition("\nMissing (")[2].partition("\n\n")[0]
    assert "gloss: wall surface temperature, relative humidity, " in missing
    assert len(missing.splitlines()) < 20
    assert "(all 20 entries)" in missing.replace("\n    ", " ")


def test_a_record_stands_alone_where_the_project_is_that_of_the_folder(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, data = run_json(capsys, "june.csv")
    assert (code, data["project"], data["entries"]["log"]) == (1, "Trial", 1)


def test_records_that_the_project_names_need_no_argument(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    written(folder, merged(PROJECT, {"records": ["june.csv"]}))
    code, data = run_json(capsys)
    assert code == 1
    (one,) = [one for one in data["nonconformances"] if one["code"] == "WEA-01c"]
    wanted = {"date": "2027-06-15", "time": "07:10", "elevation": "E1", "area": "left bay", "step": "gloss"}
    assert wanted.items() <= one.items()
    assert (one["field"], one["file"], one["line"], one["row"]) == ("air", "june.csv", 2, None)
    assert main(["check", "project.yaml"]) in (0, 1)
    assert "\nSite record: 1 nonconformance; specgen record project.yaml\n" in capsys.readouterr().out


SETTLED = """\
format: 1
disposition:
  - {clause: WEA-01c, date: 2027-06-15, elevation: E1, decision: DECISION, by: L. Novak, decided_on: 2027-06-17}
"""


@pytest.mark.parametrize(
    ("decision", "code", "told"),
    [
        ("accepted_as_is", 0, "Site record: 1 nonconformance, none open\n"),
        ("rejected", 1, "Site record: 1 nonconformance\n"),
    ],
)
def test_a_record_whose_nonconformances_are_all_settled_ends_with_zero(
    decision: str, code: int, told: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "june.csv").write_text(COLD, "utf-8")
    (folder / "decided.yaml").write_text(SETTLED.replace("DECISION", decision), "utf-8")
    assert main(["record", "project.yaml", "june.csv", "decided.yaml"]) == code
    assert told in capsys.readouterr().out
    found, data = run_json(capsys, "june.csv", "decided.yaml")
    assert (found, data["open"], len(data["nonconformances"])) == (code, code, 1)


def test_record_tells_how_many_criteria_of_the_mockup_are_recorded(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "mockup.csv").write_text("criterion,reading,passed\nlook,none,yes\nmesh,none,yes\n", "utf-8")
    _, data = run_json(capsys, "mockup.csv")
    counted = data["mockup"]
    assert counted["criteria"] - counted["recorded"] == len(counted["missing"]) > 0
    assert counted["recorded"] == 2
    assert not {"look", "mesh"} & {one["criterion"] for one in counted["missing"]}
    main(["record", "project.yaml", "mockup.csv"])
    assert f"mockup: 2 of {counted['criteria']} criteria recorded; not recorded: 1 " in capsys.readouterr().out
    _, data = run_json(capsys, "june.csv")
    assert data["mockup"] is None  # nothing of the mockup is in it, and no closeout is asked for


def test_a_record_in_order_ends_with_zero(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "june.csv").write_text(GOOD, "utf-8")
    code, data = run_json(capsys, "june.csv")
    assert (code, data["nonconformances"], data["errors"]) == (0, [], [])
    assert data["counts"]["outside"] == 0 and data["counts"]["within"] > 0


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("project.yaml",), "there is no site record to judge"),
        (("project.yaml", "july.csv"), "july.csv"),
        (("project.yaml", "june.csv", "--out", "out", "--formats", "papyrus"), "papyrus"),
    ],
)
def test_what_cannot_be_judged_is_refused(
    words: tuple[str, ...], message: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, data = run_json(capsys, *words)
    assert code == 2 and message in json.dumps(data["errors"])
    assert {*data["counts"].values(), *data["entries"].values(), data["days"]["number"], data["open"]} == {0}
    assert not (folder / "out").exists()


def test_out_writes_a_list_of_every_reading_and_leaves_the_record_as_it_is(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _, data = run_json(capsys, "june.csv", "--out", "record", "--formats", "txt")
    rows = list(csv.DictReader((folder / "record/readings.csv").read_text("utf-8-sig").splitlines()))
    assert len(rows) == sum(data["counts"].values())
    (air,) = [row for row in rows if row["field"] == "air"]
    assert (air["number"], air["date"], air["reading"], air["state"], air["reason"]) == (
        ("1", "2027-06-15", "45 °F", "outside", "WEA-01c")
    )
    assert (folder / "june.csv").read_text("utf-8") == COLD


def test_the_documents_take_the_place_of_no_package(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["layout", "project.yaml", "--out", "out"]) == 2
    assert main(["build", "project.yaml", "--draft", "--only", "D00", "--formats", "txt", "--out", "out"]) in (0, 1)
    before = sorted(file.name for file in (folder / "out").iterdir())
    assert main(["record", "project.yaml", "june.csv", "--out", "out", "--formats", "txt"]) == 2
    assert "the folder holds a package" in capsys.readouterr().err
    assert sorted(file.name for file in (folder / "out").iterdir()) == before


TWO_DAYS = f"{COLD}2027-06-15,10:10,E2,,gloss,45,9,yes\n2027-06-17,07:10,E1,left bay,gloss,61,9,no\n"
TWO_FACES = merged(PROJECT, {"elevations": {"E2": {"wall": "W1"}}})


@pytest.mark.parametrize(
    ("asked", "entries", "codes", "exit_code"),
    [
        (("--elevation", "e1"), 2, ["WEA-01c", "AIR-03b"], 1),
        (("--on", "2027-06-17"), 1, ["AIR-03b"], 1),
        (("--on", "June 15, 2027", "--elevation", "E2"), 1, ["WEA-01c"], 1),
        (("--elevation", "E2", "--on", "6/17/2027"), 0, [], 0),
    ],
)
def test_one_elevation_or_one_day_is_told_alone_under_the_numbers_of_the_whole(
    asked: tuple[str, ...],
    entries: int,
    codes: list[str],
    exit_code: int,
    folder: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    written(folder, TWO_FACES)
    (folder / "june.csv").write_text(TWO_DAYS, "utf-8")
    _, whole = run_json(capsys, "june.csv")
    code, data = run_json(capsys, "june.csv", *asked)
    assert (code, data["entries"]["log"], data["part"]["of"]["entries"]["log"]) == (exit_code, entries, 3)
    assert [one["code"] for one in data["nonconformances"]] == codes
    assert all(one in whole["nonconformances"] for one in data["nonconformances"])
    assert data["part"]["of"]["counts"] == whole["counts"]
    main(["record", "june.csv", *asked])
    assert f": {len(codes)} of 3 nonconformances" in capsys.readouterr().out.splitlines()[0]


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (("--elevation", "E9"), "there is no elevation 'E9' (known: E1)"),
        (("--on", "2027-06-16"), "the record has no entry of 2027-06-16 (nearest: 2027-06-15)"),
        (("--on", "yesterday"), "--on: 'yesterday' is not a date (write year-month-day, such as 2027-03-01)"),
        (("--elevation", "E1", "--out", "out"), "--out writes the whole record (leave out --elevation and --on)"),
    ],
)
def test_a_part_that_the_record_does_not_have_is_refused(
    asked: tuple[str, ...], told: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["record", "june.csv", *asked]) == 2
    assert capsys.readouterr().err == f"specgen: {told}\n"
    assert not (folder / "out").exists()


def test_a_project_in_place_of_a_record_is_told_in_one_line(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    written(folder, PROJECT, "other.yaml")
    assert main(["record", "project.yaml", "other.yaml"]) == 2
    told = "other.yaml: this is a project, not a record of one (name its records behind it)"
    assert capsys.readouterr().err == f"specgen: {told}\n"


def test_a_record_alone_in_a_folder_without_a_project_is_told_to_be_one(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "project.yaml").rename(folder / "wall.txt")
    assert main(["record", "june.csv"]) == 2
    assert "june.csv is a record, and the folder has no project.yaml" in capsys.readouterr().err


def test_a_reading_and_its_limit_never_look_alike(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "june.csv").write_text(f"{JUNE}2027-06-15,07:10,E1,,gloss,61,12.1,yes\n", "utf-8")
    main(["record", "june.csv"])
    # 12.1 mph and 12 mph are both 5.4 m/s, to a tenth.
    assert "     reading: wind, 12.1 mph\n     limit: 12 mph\n" in capsys.readouterr().out
