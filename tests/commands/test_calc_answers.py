"""`calc --from`: the answer first, in one table. The figures are those of the example's own sheets, retyped."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.commands.terminals import on_terminal
from tests.running import run_main
from tests.support import EXAMPLES, SMALL, merged, written

CLEAN = EXAMPLES / "clean" / "project.yaml"
STOPS = EXAMPLES / "stops" / "project.yaml"


def rows_of(capsys: Any, file: Path, *name: str) -> list[dict[str, str]]:
    """The lines of a table by their heads; columns stand at least two blanks apart."""
    done = run_main(capsys, "calc", *name, "--from", str(file))
    assert (done.code, done.err) == (0, "")
    lines = done.out.splitlines()
    heads, *lines = lines[2:] if name else lines
    starts = [0, *(at for at in range(2, len(heads)) if heads[at - 2 : at] == "  " and heads[at] != " ")]
    ends = [*starts[1:], None]
    cut = [[line[start:end].strip() for start, end in zip(starts, ends, strict=True)] for line in lines if line]
    names = [heads[start:end].strip() for start, end in zip(starts, ends, strict=True)]
    return [dict(zip(names, cells, strict=True)) for cells in cut]


def test_all_joints_stand_in_one_table_with_class_need_and_status(capsys: Any) -> None:
    rows = rows_of(capsys, CLEAN, "joint-width")
    assert [row["joint"] for row in rows] == [f"J{number}" for number in range(1, 10)]
    assert rows[0] == {
        "joint": "J1",
        "joint sealant": "S1",
        "sealant movement class": "50",
        "required width": "7/16 in",
        "width given": "3/4 in",
        "use or margin": "0.58",
        "yes or no": "yes",
    }
    assert [row["yes or no"] for row in rows_of(capsys, STOPS, "joint-width")[:1]] == ["no: exceeds"]


def test_air_is_told_by_need_have_and_yes_or_no(capsys: Any) -> None:
    rows = rows_of(capsys, CLEAN, "air-demand")
    sides = [(row["found"], row["held against"], row["yes or no"]) for row in rows]
    assert rows[0]["rating of a compressor that does"] == "9.87 cfm"  # 26 cfm by 8.712 scfm over 22.96 scfm
    assert sides == [
        ("air with leaks and reserve 8.71 scfm", "compressor air 23 scfm", "yes"),
        ("air draw, all triggers pulled 11 scfm", "compressor air 23 scfm", "yes"),
    ]


def test_the_area_of_a_day_stands_beside_that_of_the_elevation(capsys: Any) -> None:
    rows = rows_of(capsys, CLEAN, "day-area")
    assert [(row["elevation"], row["daily area"], row["net elevation area"]) for row in rows] == [
        # On September 15 the sun rises at 6:45 a.m. by the clock at 41.2 N, 75.4 W: 9.25 h of the shift, less 1.5 h.
        ("E1", "1163 sq ft", "936 sq ft"),
        # Two windows of 36 sq ft and 9 ft by 6 in at the porch roof, its thickness and as much over it, go off 864.
        ("E2", "1163 sq ft", "787.5 sq ft"),
        # In July its own shade leaves 6 h 30 min of the shift, 5 h 30 min of them for the two coats: 300 x 5.5 / 2.
        ("E3", "825 sq ft", "756 sq ft"),
    ]


def test_heat_is_told_for_each_face_with_its_color_margin_and_least_reflectance(capsys: Any) -> None:
    rows = rows_of(capsys, CLEAN, "face-heat")
    assert rows[1] == {
        "elevation": "E2",
        "color of the elevation": "C1",
        "solar reflectance of the color": "0.62",
        "thermal emittance of the color": "0.62",
        "face temperature": "129.9 °F",
        "board service limit": "165 °F",
        "use or margin": "35.1 °F",
        "yes or no": "yes",
        "minimum reflectance for the limit": "0.25",
    }


def test_without_a_name_each_sum_has_a_line_with_the_member_nearest_to_its_limit(capsys: Any) -> None:
    told = {row["calculation"]: row for row in rows_of(capsys, CLEAN)}
    assert told["joint-width"] == {
        "calculation": "joint-width",
        "for": "J6 (of 9)",
        "result": "required width 1-3/16 in",
        "held against": "width given 1-3/16 in",
        "yes or no": "yes",
        "missing": "",
    }
    assert told["day-area"]["result"] == "daily area 1163 sq ft"
    assert told["bond-pulls"]["result"] == "does not apply"
    assert told["power-line-distance"]["missing"] == "site.power_line_voltage, site.power_line_insulated"
    assert "dew-point" not in told  # it takes its figures from keys
    stopped = {row["calculation"]: row for row in rows_of(capsys, STOPS)}
    assert stopped["face-heat"]["yes or no"] == "no: exceeds"
    assert stopped["joint-width"]["missing"].startswith("joints.J2.panel_length, ")


def test_a_limit_that_is_not_given_is_asked_for_beside_what_is_found(tmp_path: Path, capsys: Any) -> None:
    clean = CLEAN.read_text("utf-8")
    file = written(tmp_path, clean)
    for beside in ("firm.yaml", "coating-system.yaml"):
        written(tmp_path, (CLEAN.parent / beside).read_text("utf-8"), beside)
    text = clean.replace("\n    width: 3/4 in", "\n    width: tbd", 1)
    assert text != clean
    file.write_text(text, "utf-8")
    row = rows_of(capsys, file, "joint-width")[0]
    assert (row["required width"], row["width given"]) == ("7/16 in", "")
    assert row["yes or no"] == "not compared, pending joints.J1.width"


def test_the_sums_stand_below_where_they_are_asked_for(capsys: Any) -> None:
    words = ("calc", "joint-width", "--from", str(CLEAN))
    answers, sums = run_main(capsys, *words).out, run_main(capsys, *words, "--working").out
    assert "source:" not in answers
    assert sums.startswith(f"{answers}\nJ1: joint-width\n")


def test_data_keep_their_keys_and_tell_what_is_held_against(capsys: Any) -> None:
    made = json.loads(run_main(capsys, "calc", "joint-width", "--from", str(CLEAN), "--format", "json").out)
    row = made["instances"][0]
    assert {"subject", "name", "given", "result", "unit", "steps", "source", "notes", "checks"} == {*row}
    assert row["checks"] == [
        {
            "demand": "required width",
            "found": "7/16 in",
            "limit": "width given",
            "wanted": "3/4 in",
            "use": "0.58",
            "outcome": "within",
            "clauses": ["SLT-02a"],
            "needs": [],
        }
    ]
    every = json.loads(run_main(capsys, "calc", "--from", str(CLEAN), "--format", "json").out)
    assert made in every


def test_a_project_that_gives_nothing_is_told_what_each_sum_waits_for(tmp_path: Path, capsys: Any) -> None:
    told = {row["calculation"]: row for row in rows_of(capsys, written(tmp_path, SMALL))}
    assert (told["joint-width"]["missing"], told["air-demand"]["missing"]) == ("joints", "guns")
    assert told["joint-width"]["result"] == ""


def test_a_figure_that_cannot_be_is_told_of_all_sums_too(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, merged(SMALL, {"primer": {"cup": "zahn_4", "cup_least": "15 s", "cup_most": "30 s"}}))
    told = {row["calculation"]: row for row in rows_of(capsys, file)}
    assert told["cup-viscosity"]["missing"].startswith("15 s is outside the range of the cup Zahn No. 4")


@pytest.mark.no_cover
def test_on_a_narrow_terminal_each_figure_has_a_line(tmp_path: Path) -> None:
    with on_terminal("calc", "face-heat", "--from", str(CLEAN), folder=tmp_path, columns=60) as terminal:
        assert terminal.end() == 0
    lines = terminal.shown.splitlines()
    assert lines[2:5] == ["elevation E1", "  color of the elevation: C1", "  solar reflectance of the color: 0.62"]
    assert [line for line in lines if len(line) > 60] == []
