"""The inspection and test plan: letters defined once, a check for each step, hold points as in the procedure."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen.standards import load_standards
from tests.documents.support import context_of, context_of_example, lines_of, rows_of

INSPECTED: dict[str, Any] = {
    "contract": {"inspection_level": "periodic"},
    "parties": {"inspector": {"name": "Plumb Line"}},
}


def plan_of(context: Any) -> list[list[str]]:
    """The rows of the plan, without its header."""
    rows = rows_of("D11", context)
    first = next(number for number, row in enumerate(rows) if row[0] == "Step")
    last = next(number for number, row in enumerate(rows) if row[0] in ("Party", "Sheet, party"))
    return rows[first + 1 : last]


def test_each_letter_is_defined_once() -> None:
    text = "\n".join(lines_of("D11", context_of_example("clean")))
    for letter, name in {"E": "execution", "H": "hold point", "W": "witness point", "R": "review point"}.items():
        assert len(re.findall(rf"\b{letter}, {name}\b", text)) == 1
    assert text.count("S, surveillance: inspection at any time, without notice") == 1
    assert "notify the party marked W 24 h in advance" in text


def test_the_applicator_checks_his_own_work_before_he_asks_for_its_release(tmp_path: Path) -> None:
    context = context_of_example("clean")
    told = "C, own check: the applicator checks the work before asking for its release."
    assert told in "\n".join(lines_of("D11", context))
    released = [row for row in plan_of(context) if any("H" in cell for cell in row[7:])]
    assert {row[6] for row in released} == {"C", "E"}
    alone = "\n".join(lines_of("D11", context_of(tmp_path, {"contract": {"inspection_level": "none"}})))
    assert "own check" not in alone


def test_the_sealant_applicator_is_named_for_the_joints() -> None:
    text = "\n".join(lines_of("D11", context_of_example("clean")))
    assert "applicator, Lark and Mallow Finishes; for sealant joints, Tallow Joint Works." in text


def test_surveillance_is_defined_only_where_somebody_inspects(tmp_path: Path) -> None:
    assert "surveillance" in "\n".join(lines_of("D11", context_of(tmp_path, INSPECTED)))
    without = lines_of("D11", context_of(tmp_path, {"contract": {"inspection_level": "none"}}))
    assert "surveillance" not in "\n".join(without)


def test_the_notice_is_that_of_the_contract(tmp_path: Path) -> None:
    text = "\n".join(lines_of("D11", context_of(tmp_path, {"contract": {"witness_notice_hours": 48}})))
    assert "notify the party marked W 48 h in advance" in text
    assert "Give notice of each release 48 h in advance; have the forms complete at the release." in text


# The example as its file has it: step, check, method with the marks of instruments, frequency, limit, form, letters.
LINES = (
    "Substrate | Plane of substrate | 10 ft straightedge (LS-1, FE-1) | entire face"
    " | maximum gap 3/16 in | D12e | E | H1 | –",
    "Release of primer | Primer dryness | moisture meter (MM-2) | each panel"
    " | maximum reading 12 (percent, wood moisture equivalent)[?] | D12e | C | E, H10 | –",
    "Spray setup | Cup time | ASTM D4212 (CUP-7, MT-1, SW-1) | each pail"
    " | primer 27 s to 33 s; gloss 27 s to 33 s[?] | D12b | E, R | S | –",
    "Mockup | Mockup | criteria of Form D10 | once | every criterion passed, or accepted as noted and each remark "
    "closed | D10 | C | E | H2",
    "Final viewing | Final viewing | from 10 ft, diffuse daylight[?] | each elevation"
    " | matches the accepted mockup | D11 | C | E | H14",
)


@pytest.mark.parametrize("line", LINES)
def test_a_line_of_the_example_reads_as_its_file_has_it(line: str) -> None:
    shown = [re.sub(r"\[[a-z, ]+\]", "[?]", told) for told in lines_of("D11", context_of_example("clean"))]
    assert line in shown


@pytest.mark.parametrize("example", ["clean", "metric", "stops", "old-wall", "first-look"])
def test_hold_points_are_those_of_the_procedure(example: str) -> None:
    context = context_of_example(example)
    boxes = re.findall(r"HOLD POINT (\d+)\.", "\n".join(lines_of("D08", context)))
    marked = [cell for row in plan_of(context) for cell in row[6:] if "H" in cell]
    numbers = list(dict.fromkeys(re.search(r"H(\d+)", cell).group(1) for cell in marked))  # type: ignore[union-attr]
    assert sorted(numbers, key=int) == sorted(set(boxes), key=int)
    signed = {cell for row in rows_of("D11", context) for cell in row if re.fullmatch(r"H\d+", cell)}
    assert {f"H{number}" for number in boxes} <= signed


@pytest.mark.parametrize("example", ["clean", "metric", "stops", "old-wall"])
def test_each_test_in_place_of_the_procedure_stands_in_the_plan(example: str) -> None:
    context = context_of_example(example)
    rows = rows_of("D08", context)
    first = next(number for number, row in enumerate(rows) if row[:2] == ["Test", "Method"])
    tests = [row[0] for row in rows[first + 1 :] if len(row) == 6 and row[5].startswith("D1")]
    assert len(tests) > 10
    assert set(tests) <= {row[1] for row in plan_of(context)}


def test_the_architect_releases_where_nobody_inspects(tmp_path: Path) -> None:
    change = {"contract": {"inspection_level": "none"}, "mockup": {"approver": "owner"}}
    rows = plan_of(context_of(tmp_path, change))
    assert {len(row) for row in rows} == {8}
    by_check = {row[1]: row[6:] for row in rows}
    assert by_check["Plane of substrate"] == ["E", "H1"]
    # The tests of the inspector are made by the contractor; the owner, who has no column, is named.
    assert by_check["Mockup"] == ["E", "H2 (owner)"]
    assert not any("S" in cell for row in rows for cell in row[6:])


def test_a_person_named_to_release_is_told(tmp_path: Path) -> None:
    change = {"contract": {"hold_points_released_by": "the resident engineer"}}
    text = "\n".join(lines_of("D11", context_of(tmp_path, change)))
    assert "Insp.: the resident engineer." in text


def test_each_elevation_is_signed_for_where_its_wall_takes_the_step(tmp_path: Path) -> None:
    faces = {"E1": {"wall": "W1"}, "E2": {"wall": "W2"}}
    walls = {"W1": {"attachment": {"method": "adhesive_full_bed"}}, "W2": {"attachment": {"method": "direct_applied"}}}
    rows = rows_of("D11", context_of(tmp_path, {"elevations": faces, "walls": walls}))
    assert [row[3:5] for row in rows if row[1].startswith("Rasping")] == [["____", "–"]]


def test_the_mockup_has_a_column_and_what_it_does_not_show_a_line_each() -> None:
    rows = rows_of("D11", context_of_example("clean"))
    signed = {half[1]: half[6] for row in rows if len(row) == 14 for half in (row[:7], row[7:])}
    assert signed["Substrate"] == signed["Rasping and leveling"] == signed["Sealant joints"] == "____"
    assert signed["Metal caps"] == signed["Final viewing"] == "–"
    # What another form releases names it in the column of the mockup too, where the work is released of it.
    assert (signed["Mockup"], signed["Heavy mesh"]) == ("on D10", "on D12d")
    items = [part for row in rows if len(row) == 15 for part in (row[:5], row[5:10], row[10:]) if "pass" in part[2]]
    # Wall W2 is not on the mockup; the joints and details are those of the example that it does not show.
    assert [part[0] for part in items][::3][:3] == ["Wall W2", "Joint J2", "Joint J3"]
    assert ["Detail PN1", "____", "( ) pass  ( ) fail", "____", "____"] in items


def test_a_hold_point_is_signed_on_one_form_alone() -> None:
    context = context_of_example("clean")
    rows = rows_of("D11", context)
    halves = [half for row in rows if len(row) == 14 for half in (row[:7], row[7:]) if re.fullmatch(r"H\d+", half[0])]
    signed = {number[1:]: next(at for at in here if at != "–") for number, _, _, *here in halves}
    # The release of a step is named at each elevation that takes it: E3 has no barrier.
    places = {number: here for number, _, _, *here in halves}
    assert (places["H7"], places["H3"]) == (["on D12d"] * 4, ["on D12d", "on D12d", "–", "on D12d"])
    told = {row[0]: row[3] for row in rows_of("D08", context) if len(row) == 4 and row[0].isdigit()}
    assert told == {number: here.removeprefix("on ") if "on " in here else "D11" for number, here in signed.items()}
    layout = next(row for row in rows_of("D08", context) if row[0] == "–" and row[1].startswith("Joint layout"))
    here = next(row for row in rows if row[0] == "–" and row[1].startswith("Joint layout"))
    assert (layout[3], here[3]) == ("D07", "on D07")
    assert any("Architect: Lintel and Quoin Architects signed" in line for line in lines_of("D07", context))
    dried = {found[1] for row in rows_of("D12", context) if (found := re.search(r"\(Hold Point (\d+)\)", row[0]))}
    assert dried == {number for number, form in told.items() if form == "D12d"} == {"3", "6", "7", "8", "9", "10"}


def test_a_hold_point_fills_the_form_of_its_release_and_no_other() -> None:
    holds = [step for step in load_standards().steps.values() if step.point == "H"]
    assert {step.name: len(step.records) for step in holds} == {step.name: 1 for step in holds}


def test_what_the_mockup_does_not_show_is_witnessed_in_place_and_no_part_of_its_hold() -> None:
    context = context_of_example("clean")
    row = next(row for row in plan_of(context) if row[1] == "First in place")
    assert (row[0], row[6:]) == ("Details, in place", ["E", "W", "W"])
    signed = [row[2:6] for row in rows_of("D11", context) if row[0] == "W" and row[1].startswith("First in place")]
    assert signed == [[by, *["____"] * 3] for by in ("Insp.", "Arch.")]


def test_many_elevations_have_a_sheet_each(tmp_path: Path) -> None:
    faces = {f"E{number}": {"wall": "W1"} for number in range(1, 6)}
    lines = lines_of("D11", context_of(tmp_path, {"elevations": faces}))
    assert any(line.startswith("No. | Hold point | By | Signed, date") for line in lines)
    assert any("one sheet for each elevation" in line for line in lines)


# UFGS 07240, page 26: what items i, k, m, and o are about.
LISTED = {
    "i": "No mechanical fasteners.",
    "k": "Adhesive cured a minimum of 36 h before rasping.[d]",
    "m": "Mesh fully embedded; corners and openings reinforced; laps minimum 2-1/2 in, detail mesh 3 in; "
    "heavy mesh butted.",
    "o": "Base coat cured a minimum of 24 h before the next coat.[d]",
}


def test_the_list_of_the_third_party_runs_from_a_to_o_with_the_figures_of_the_project() -> None:
    cells = [cell for row in rows_of("D11", context_of_example("clean")) for cell in row]
    boxes = [cell.removeprefix("( ) ") for cell in cells if re.fullmatch(r"\( \) [a-z]", cell)]
    assert boxes == list("abcdefghijklmno")
    for letter, words in LISTED.items():
        assert cells[cells.index(f"( ) {letter}") + 1] == words


def test_nobody_lists_where_nobody_inspects(tmp_path: Path) -> None:
    for level in ("none", None):
        change = {"contract": {"inspection_level": level}} if level else None
        assert "THIRD-PARTY INSPECTION" not in lines_of("D11", context_of(tmp_path, change))
