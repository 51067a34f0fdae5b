"""The list of open items: by the party that owes each, with what it holds up, and the stops."""

import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from tests.documents.example import changed_clean, changed_small, drafted, page_of, rows_below
from tests.documents.open_page import list_heads, list_lines, list_rows
from tests.documents.support import context_of_example
from tests.support import merged


def test_an_issued_set_lists_what_is_still_to_be_done_by_whom_and_by_when() -> None:
    page = page_of(context_of_example("clean"), "D19")
    assert "\nSTOPS\nNone.\n\nOPEN ITEMS\nItem | By | Before\n" in page
    rows = rows_below(page, "OPEN ITEMS")[1:]
    architect, applicator = "Architect (Lintel and Quoin Architects)", "Applicator (Lark and Mallow Finishes)"
    # Dates of the example: issued March 1; the color is ordered on March 22; the mockup begins on April 12, and its
    # boards, set on Tuesday behind a barrier that dries for 24 h and cured for 36 h, are cut on Thursday, April 15;
    # spraying begins on July 12, and the contract ends on October 15.
    assert [row for row in rows if not row[0].startswith("Measures of D05")] == [
        ["Action on items I1 to I4, I9 to I11", architect, "order of the sample color, March 22, 2027"],
        ["Release of the joint layout, D07", architect, "first board layout, on the mockup, April 13, 2027"],
        # The frame stands on the working day before the mockup begins.
        [
            "Signed design of the frame of the mockup, with what shades or encloses it, D09",
            "Design engineer (Kingpost Engineering)",
            "work on the frame, complete April 9, 2027",
        ],
        [
            "Written washing instructions of the finish, D16",
            "Finish manufacturer (Quillgloss Coating Works)",
            "completion, October 15, 2027",
        ],
        [
            "Executed warranty",
            "EIFS manufacturer (Graywether Wall Systems); Finish manufacturer (Quillgloss Coating Works); "
            f"{applicator}",
            "completion, October 15, 2027",
        ],
    ]
    # Vehicles within reach of the spray are cleared for the mockup, which is sprayed first.
    assert ["Measures of D05: ACC-09a, WEA-09d", applicator, "mockup, April 12, 2027"] in rows
    assert ["Measures of D05: WEA-07a", applicator, "spraying, July 12, 2027"] in rows


def test_calculations_not_yet_signed_are_open_and_those_signed_are_not(tmp_path: Path) -> None:
    author = ["D06, calculated by: signature and date", "L. Mallow, Lark and Mallow Finishes"]
    checker = ["D06, checked by: signature, date, and seal", "S. Ashlar, PE, license 48213, Kingpost Engineering"]
    before = "submittal, March 1, 2027"
    unsigned = {"package": {"calculated_on": "tbd", "checked_on": "tbd"}}
    page = page_of(changed_clean(tmp_path, unsigned), "D19")
    assert [row for row in rows_below(page, "OPEN ITEMS") if "D06" in row[0]] == [[*author, before], [*checker, before]]
    page = page_of(changed_clean(tmp_path, {"package": {"checked_on": "tbd"}}), "D19")
    assert [row for row in rows_below(page, "OPEN ITEMS") if "D06" in row[0]] == [[*checker, before]]


def test_what_is_due_later_is_open_when_a_set_is_issued(tmp_path: Path) -> None:
    executed = {"section": "09 96 00", "paragraph": "1.6.A", "title": "Executed warranty", "group": "closeout"}
    change = {"contract": {"items": {"I13": executed | {"due_on": "2027-10-15", "attachments": []}}}}
    rows = rows_below(page_of(changed_clean(tmp_path, change), "D19"), "OPEN ITEMS")[1:]
    told = [row for row in rows if "warranty" in row[0]]
    assert told == [["I13: Executed warranty", "General contractor (Almsgrove Building)", "October 15, 2027"]]


def test_a_deviation_not_yet_approved_is_open_when_the_mockup_is_submitted(tmp_path: Path) -> None:
    effects = dict.fromkeys(("cost", "time", "fire", "warranty"), "none")
    asked = {"kind": "deviation", "answers": ["2.4.B"], "demanded": "a", "proposed": "b", "reason": "c"}
    change = {"package": {"purpose": "mockup_submittal"}, "deviations": {"DV2": asked | {"effects": effects}}}
    rows = rows_below(page_of(changed_clean(tmp_path, change), "D19"), "OPEN ITEMS")[1:]
    before = "order of the sample color, March 22, 2027"
    assert ["Approval of deviation DV2, D03", "Architect (Lintel and Quoin Architects)", before] in rows


def test_a_draft_asks_for_what_is_open_and_lists_nothing_to_be_done(tmp_path: Path) -> None:
    page = page_of(changed_small(tmp_path, {}), "D19")
    assert "D06, calculated by" not in page and "Executed warranty" not in page


def test_one_value_left_out_is_one_line_at_its_party(tmp_path: Path) -> None:
    change = {"code": {"local_fasteners_required": "tbd"}}
    page = page_of(changed_clean(tmp_path, change), "D19")
    (row,) = list_rows(page)
    assert row[0] == "Architect: Lintel and Quoin Architects"
    assert row[1] == "decision on the walls"
    assert row[2] == "( ) Fasteners required by local code: yes/no"
    assert row[3] == "ATT-03"
    assert "STOPS\nNone found so far; rules not evaluated: see D02." in page


def test_members_that_lack_the_same_share_a_line(tmp_path: Path) -> None:
    change: dict[str, Any] = {"elevations": {mark: {"critical_light": "tbd"} for mark in ("E1", "E2", "E3")}}
    rows = list_rows(page_of(changed_clean(tmp_path, change), "D19"))
    (row,) = (row for row in rows if "light" in row[2])
    assert row[2] == "( ) Does low light rake the elevation? yes/no (E1, E2, E3)"


def test_a_document_is_asked_of_who_owes_it_with_its_date(tmp_path: Path) -> None:
    page = page_of(changed_clean(tmp_path, {"attachments": {"SD1": {"covers": ["accessories"]}}}), "D19")
    owed = {row[0].partition(":")[0]: row for row in list_rows(page)}
    assert set(owed) == {"EIFS manufacturer", "Sealant manufacturer", "WRB manufacturer"}
    assert owed["EIFS manufacturer"][1:4] == [
        "this submittal",
        "( ) Safety data sheets: adhesive, base coat",
        "SUB-02",
    ]
    # Product data are part of what is submitted; the example is submitted on March 1, 2027.
    assert ["Needed before", "This submittal"] in rows_below(page, "OPEN ITEMS")
    assert ["Reply by", "March 1, 2027"] in rows_below(page, "OPEN ITEMS")
    assert all(head.endswith(". Needed before: this submittal; reply by March 1, 2027") for head in list_heads(page))


def test_stops_stand_by_the_party_that_resolves_them(tmp_path: Path) -> None:
    change = {"walls": {mark: {"attachment": {"method": "mechanical"}} for mark in ("W1", "W2")}}
    page = page_of(changed_clean(tmp_path, change), "D19")
    stops = page.partition("\nSTOPS\n")[2].partition("\n\nOPEN ITEMS")[0]
    assert "Findings and measures: D05." in stops
    told = [line.split(" | ") for line in stops.splitlines() if " | " in line][1:]
    (row,) = (row for row in told if "ATT-01a" in row[1])
    assert row[0] == "Architect: Lintel and Quoin Architects"
    assert row[1].startswith("ATT-01a (W1, W2)") and row[2] == "boards"


def test_a_project_of_two_lines_lists_its_items_by_party(tmp_path: Path) -> None:
    page = page_of(changed_small(tmp_path, {}), "D19")
    rows = list_rows(page[page.index("\nVALUES\n") :])
    parties = [row[0].partition(":")[0] for row in rows]
    # Those of a party stand together.
    assert [party for number, party in enumerate(parties) if number == 0 or parties[number - 1] != party] == list(
        dict.fromkeys(parties)
    )
    architect = [row for row in rows if row[0].startswith("Architect")]
    assert ["( ) Model code", "ATT-08, COD-01 to 04"] in [row[2:4] for row in architect]


# A draft of 15 minutes: a few words about one wall of new sheathing, and one joint.
LITTLE: dict[str, Any] = {
    "package": {"purpose": "mockup_submittal", "date": "2027-02-15"},
    "code": {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]},
    "walls": {"W1": {"substrate": {"kind": "glass_mat_gypsum"}, "insulation": {"kind": "eps"}}},
    "elevations": {"E1": {"wall": "W1", "width": "60 ft", "height": "20 ft"}},
    "joints": {"J1": {"kind": "floor_line", "width": "3/4 in"}},
    "schedule": {"submit_on": "2027-02-15", "work_start": "2027-05-10"},
}


def drafted_page(tmp_path: Path, change: dict[str, Any]) -> str:
    """D19 as a draft prints it, beside the other documents."""
    return drafted(tmp_path, change, only=("D05", "D19"))["D19"]


def test_each_item_of_a_draft_has_a_line_in_the_list_and_a_row_to_tick_and_holds_something_up(tmp_path: Path) -> None:
    rows = list_rows(drafted_page(tmp_path, LITTLE))
    assert all(row[2].count("( )") == 1 and row[3] for row in rows)
    lines = list_lines(tmp_path)
    assert len(lines) > len(rows) > 50
    assert all(line[3] for line in lines)


def test_what_a_person_answers_together_stands_in_one_row_of_the_page(tmp_path: Path) -> None:
    rows = [row[2] for row in list_rows(drafted_page(tmp_path, LITTLE))]
    assert (
        "( ) Mesh (W1): passes of base coat; detail at aesthetic joints, diagonal at openings, "
        "back-wrapped edges: yes/no"
    ) in rows
    # A unit that all have is said once.
    assert "( ) Minimum dry film per coat, mils: primer; gloss" in rows
    lines = {line[2] for line in list_lines(tmp_path)}
    assert {"Mesh layers (W1)", "Dry film per coat of primer, mils", "Dry film per coat of gloss, mils"} <= lines


def test_documents_are_numbered_up_to_their_sum_and_values_are_counted(tmp_path: Path) -> None:
    page = drafted_page(tmp_path, LITTLE)
    (required,) = re.findall(r"(?m)^! .* (\d+) documents still required, listed below", page)
    (values,) = re.findall(r"(?m)^Values asked for: (\d+)\. ", page)
    numbered = re.findall(r"(?m)^(\d+)(?:, (\d+)| to (\d+))? \| \( \) ", page)
    ends = [(int(first), int(second or last or first)) for first, second, last in numbered]
    assert ends[0][0] == 1 and ends[-1][1] == int(required)
    assert all(last + 1 == first for (_, last), (first, _) in pairwise(ends))
    assert int(values) == len(list_lines(tmp_path)) - len(ends)


# Units of the trade: air in cfm or L/s, pressure in psi or kPa, film in mils or micrometers.
@pytest.mark.parametrize(
    ("units", "asked"),
    [
        ("ip", ("air flow, cfm", "rated pressure, psi", "coat of primer, mils", "close the joint, in inches? (J1)")),
        ("si", ("air flow, L/s", "rated pressure, kPa", "coat of primer, µm", "close the joint, in millimeters? (J1)")),
    ],
)
def test_a_question_has_the_unit_of_the_project_and_the_mark_of_its_member(
    tmp_path: Path, units: str, asked: tuple[str, ...]
) -> None:
    page = drafted_page(tmp_path, merged(LITTLE, {"package": {"units": units}}))
    for end in asked:
        assert any(line[2].endswith(end) for line in list_lines(tmp_path)), end
    legend, table = page.index("\nMarks: W1 glass-mat gypsum, E1"), page.index("\nDOCUMENTS\n")
    assert legend < table and "J1 floor line" in page[legend:table]


def test_only_what_can_rule_a_wall_out_is_asked_for_the_decision_on_it(tmp_path: Path) -> None:
    drafted_page(tmp_path, LITTLE)
    before = {line[2]: line[1] for line in list_lines(tmp_path)}
    # The reports on fire and impact name the mesh.
    for early in ("Tested wind load of the adhered wall, at failure, psf (W1)", "Mesh layers (W1)"):
        assert before[early] == "decision on the walls"
    for later in ("Passes of base coat (W1)", "Distance of board joints from opening corners, in (W1)"):
        assert before[later] == "this submittal"


def test_no_answer_is_due_on_the_day_of_the_draft_that_asks_for_it(tmp_path: Path) -> None:
    page = drafted_page(tmp_path, LITTLE)
    (row,) = (line for line in page.splitlines() if line.startswith("Reply by | "))
    # Planned for February 15, 2027, the date of the draft: the day of the decision before it is past.
    assert row.split(" | ")[1:4] == ["at once", "____", "____"]


def test_a_figure_that_is_proposed_bears_its_source_and_is_listed_to_verify(tmp_path: Path) -> None:
    pages = drafted(tmp_path, LITTLE, only=("D05", "D19"))
    assert any(row[2].endswith("; tolerance, confirm 1/16 in[p]") for row in list_rows(pages["D19"]))
    (line,) = (line for line in pages["D05"].splitlines() if "Aesthetic joint width and depth variation" in line)
    assert "D19" in line


def test_reports_and_letters_hold_up_the_rules_on_all_reports_and_letters(tmp_path: Path) -> None:
    page = drafted_page(tmp_path, merged(LITTLE, {"code": {"local_fasteners_required": "no"}}))
    rows = {row[2].removeprefix("( ) "): row[3] for row in list_rows(page)}
    assert rows["ASTM E84 report of the board (W1)"].endswith("SUB-03, 04")
    assert rows["Local rule on fasteners, by letter of the authority"] == "ATT-03, SUB-04"


def test_no_inspection_is_no_answer_where_the_code_requires_one(tmp_path: Path) -> None:
    # International Building Code 2021, 1705.17.1, from memory: barrier coatings over sheathing are inspected.
    change = LITTLE | {"walls": {"W1": {"substrate": {"kind": "glass_mat_gypsum"}, "wrb": {"kind": "fluid_applied"}}}}
    rows = list_rows(drafted_page(tmp_path, change))
    (asked,) = (row[2] for row in rows if "Third-party inspection" in row[2])
    assert asked == "( ) Third-party inspection: periodic or full time"


# Two faces that turn a corner, one joint across the first, and a mockup beside the building.
GIVEN: dict[str, Any] = merged(
    LITTLE,
    {
        "building": {"eifs_top": "42 ft"},
        "elevations": {"E1": {"facing": "S", "width": "96 ft"}, "E2": {"wall": "W1", "facing": "E", "width": "60 ft"}},
        "joints": {"J1": {"elevation": "E1", "at": "14 ft", "runs": "horizontal"}, "J2": {"kind": "opening_perimeter"}},
        "mockup": {"location": "south side, next to the job trailer"},
    },
)


def test_what_the_project_suggests_is_put_for_confirmation(tmp_path: Path) -> None:
    # Common practice, no source: who knows the answer from what is given asks whether it holds.
    page = drafted_page(tmp_path, GIVEN)
    assert any(
        row[2] == "( ) Building: mean roof height, confirm 42 ft; minimum width, confirm 60 ft"
        for row in list_rows(page)
    )
    lines = {line[2] for line in list_lines(tmp_path)}
    for told in (
        "Joint length (J1): confirm 96 ft",
        "Joint direction (J2): confirm around opening",
        "Mockup type: confirm free-standing",
        "Finish repair method: confirm recoat to break",
    ):
        assert told in lines, told


def test_a_width_is_not_taken_from_faces_on_one_side_of_the_plan(tmp_path: Path) -> None:
    drafted_page(tmp_path, merged(GIVEN, {"elevations": {"E2": {"facing": "N"}}}))
    assert "Minimum building plan width, ft" in {line[2] for line in list_lines(tmp_path)}


def test_faces_turned_by_more_than_half_a_circle_stand_on_two_sides_of_the_plan(tmp_path: Path) -> None:
    # Half a circle apart is the same side of the plan: 240 degrees turn as 60 do.
    drafted_page(tmp_path, merged(GIVEN, {"elevations": {"E1": {"facing": "10 deg"}, "E2": {"facing": "250 deg"}}}))
    assert "Minimum building plan width: confirm 60 ft" in {line[2] for line in list_lines(tmp_path)}


def test_the_openings_that_a_joint_serves_are_asked_of_joints_around_openings(tmp_path: Path) -> None:
    drafted_page(tmp_path, GIVEN)
    (asked,) = (line[2] for line in list_lines(tmp_path) if "does the joint serve" in line[2])
    assert asked == "Which openings does the joint serve? marks (J2)"


def test_one_party_is_asked_for_each_matter_that_its_papers_settle(tmp_path: Path) -> None:
    # Common practice, no source: whose data sheet, climate table or contract has the figure.
    drafted_page(tmp_path, GIVEN)
    parties = {line[2].partition(":")[0].partition(" (")[0]: line[0] for line in list_lines(tmp_path)}
    assert parties["Minimum sealing temperature, °F"] == parties["Maximum sealing temperature, °F"]
    assert parties["Minimum sealing temperature, °F"] == "Sealant manufacturer"
    assert parties["Fan shape"] == "Finish manufacturer"
    for air in ("hot", "cold"):
        assert parties[f"Design {air} air temperature, published climate data, °F"] == "Applicator"


def test_all_that_the_vapor_in_a_wall_is_known_by_is_asked_for_the_decision_on_it(tmp_path: Path) -> None:
    drafted_page(tmp_path, GIVEN)
    lines = [line for line in list_lines(tmp_path) if "INS-05" in line[3]]
    assert len(lines) >= 4
    assert {line[1] for line in lines} == {"decision on the walls"}


def test_the_year_of_a_building_holds_nothing_up_whose_coating_is_still_to_be_tested(tmp_path: Path) -> None:
    # As the documents have it: an old coating is taken for lead, whatever the year, until a laboratory has tested it.
    page = drafted_page(tmp_path, {"walls": {"W1": {"substrate": {"kind": "existing_coated"}}}})
    assert "Laboratory report, lead in the existing coating (W1)" in page
    assert not any("Year the building" in line[2] for line in list_lines(tmp_path))
