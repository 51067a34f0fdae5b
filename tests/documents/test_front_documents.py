"""Transmittal, register, deviation sheets, qualifications: their parts, and what they say of awkward projects."""

import datetime
import re
from pathlib import Path
from typing import Any

import pytest

from specgen.documents.context import DocumentContext
from specgen.documents.register import make_register
from specgen.documents.transmittal import DESCRIPTIONS
from tests.documents.example import changed_clean, changed_small, page_of, rows_below
from tests.documents.support import context_of_example

# The items of the example by their place, retyped from its file.
ITEMS = {
    "I1": ("07 24 00", "1.3.A", "Action", None, "IN1, IN2, IN4, IN5, PD1 to PD4, PD8, SD1"),
    "I2": ("07 24 00", "1.3.B", "Action", "D07 to D10", "DW1 to DW3, LT7"),
    "I3": ("07 24 00", "1.3.C", "Action", "D02", "LT1, LT2"),
    "I4": ("07 24 00", "1.3.D", "Action", "D06", "CL1, LT6"),
    "I5": ("07 24 00", "1.5.A", "Informational", None, "TR1 to TR7, TR10"),
    "I6": ("07 24 00", "1.5.B", "Informational", None, "LT3"),
    "I7": ("07 24 00", "1.5.C", "Informational", "D04", "CT1 to CT5"),
    "I8": ("07 24 00", "1.5.D", "Informational", "D08, D15", "LT5, SP1 to SP3"),
    "I9": ("09 96 00", "1.3.A", "Action", None, "IN3, PD5 to PD7, SD2"),
    "I10": ("09 96 00", "1.3.B", "Action", None, "TR8, TR9"),
    "I11": ("09 96 00", "1.3.C", "Action", "D03", "LT4"),
    "I12": ("09 96 00", "1.5.A", "Informational", None, "WA1"),
}
GOVERNMENT = {
    "contract": {
        "procedure": "ufgs_013300",
        "items": {
            "I1": {"sd_type": "SD-03", "classification": "G"},
            "I2": {"sd_type": "SD-02", "classification": "G"},
            "I4": {"sd_type": "SD-05", "classification": "G", "title": "Loads"},
        },
    }
}
LONG = "Consolidated Quarry, Masonry, and Weatherproofing Works Limited"
HEBREW = "שלום בנייה"


def test_the_register_holds_dates_as_dates_and_items_in_the_order_of_the_specification() -> None:
    register = make_register(context_of_example("clean"))
    holds = [column.holds for column in register.columns]
    told = {
        row.mark: tuple(
            row.cells[holds.index(name)] for name in ("section", "paragraph", "group", "documents", "attachments")
        )
        for row in register.rows
    }
    assert told == ITEMS and list(told) == list(ITEMS)
    submit = holds.index("due_on")
    assert register.columns[submit].kind == "date"
    assert {row.cells[submit] for row in register.rows} == {datetime.date(2027, 3, 1)}
    # What the review fills in is empty.
    by_hand = [number for number, name in enumerate(holds) if not name]
    assert len(by_hand) == 2 and {row.cells[number] for row in register.rows for number in by_hand} == {None}
    # The set itself submits them, on its date.
    assert {row.cells[holds.index("submitted")] for row in register.rows} == {datetime.date(2027, 3, 1)}
    assert sum(column.width for column in register.columns) == 100


def test_what_is_due_later_is_not_told_to_be_submitted(tmp_path: Path) -> None:
    executed = {"section": "09 96 00", "paragraph": "1.6.A", "title": "Executed warranty", "group": "closeout"}
    change = {"contract": {"items": {"I13": executed | {"due_on": "2027-10-15"}}}}
    context = changed_clean(tmp_path, change)
    row = rows_below(page_of(context, "D03"), "SUBMITTAL REGISTER")[-1]
    assert [row[0], *row[4:6], row[8]] == ["I13", "Closeout", "October 15, 2027", "____"]
    told = dict(rows_below(page_of(context, "D01"), "TRANSMITTAL")[1:])
    assert told["Items"] == "13 items of the register, D03: 7 action, 5 informational, 1 closeout"


def test_paragraphs_are_sorted_by_their_numbers(tmp_path: Path) -> None:
    at = {"section": "07 24 00", "title": "x"}
    items = {"A": at | {"paragraph": "1.10.A"}, "B": at | {"paragraph": "1.9.A"}, "C": {"title": "y"}}
    register = make_register(changed_small(tmp_path, {"contract": {"items": items}}))
    assert [row.mark for row in register.rows] == ["B", "A", "C"]


def test_a_contract_of_the_government_has_its_columns_and_numbers(tmp_path: Path) -> None:
    context = changed_clean(tmp_path, GOVERNMENT)
    register = make_register(context)
    # UFGS 01330, 1.3: section in column (c), description with SD number in (d), paragraph in (e), approval in (f).
    assert [column.title for column in register.columns][:8] == [
        "Item",
        "Transmittal number",
        "Section",
        "Paragraph",
        "SD number",
        "Description of item",
        "Classification",
        "Submit",
    ]
    assert sum(column.width for column in register.columns) == 100
    assert register.rows[0].cells[:5] == ("I1", "07 24 00-002", "07 24 00", "1.3.A", "SD-03")
    page = page_of(context, "D03")
    assert "Transmittal 07 24 00-002." in page and "\nVARIATIONS\n" in page
    assert "Unified Facilities Guide Specification 01 33 00, submittal register" in page
    transmittal = page_of(context, "D01")
    assert rows_below(transmittal, "TRANSMITTAL")[1] == ["To", "Contracting Officer, City of Wickerwell"]
    assert "Approving authority's review: City of Wickerwell" in transmittal
    assert "( ) Receipt acknowledged" in transmittal
    assert "\nI2 | SD-02 Shop Drawings | Shop drawings: elevations, joint layout" in transmittal
    # An item that no word of its title tells is answered by its description: design data by the calculations.
    (loads,) = (line for line in transmittal.splitlines() if line.startswith("I4 | SD-05 Design Data"))
    assert loads.split(" | ")[5] == "D06, CL1, LT6"


def test_an_item_is_told_as_a_variation_where_one_answers_its_paragraph(tmp_path: Path) -> None:
    # UFGS 01 33 00, August 2018, 1.2.1: a variation is noted on the submittal that contains it.
    told = [row[6] for row in items_of(changed_clean(tmp_path, GOVERNMENT))]
    assert told.count("Yes") == 1 and set(told) == {"Yes", "No"}
    unread = {**GOVERNMENT, "deviations": "drop", "contract": {**GOVERNMENT["contract"], "demands": "drop"}}
    assert {row[6] for row in items_of(changed_clean(tmp_path, unread))} == {"Not known"}


def items_of(context: DocumentContext) -> list[list[str]]:
    """The rows of the items by submittal description."""
    return rows_below(page_of(context, "D01"), "ITEMS BY SUBMITTAL DESCRIPTION")[1:]


def test_the_descriptions_are_those_of_the_guide() -> None:
    # UFGS 01 33 00, August 2018, 1.2.1 and the headings of 1.6.3.
    assert DESCRIPTIONS == {
        "SD-01": "Preconstruction Submittals",
        "SD-02": "Shop Drawings",
        "SD-03": "Product Data",
        "SD-04": "Samples",
        "SD-05": "Design Data",
        "SD-06": "Test Reports",
        "SD-07": "Certificates",
        "SD-08": "Manufacturer's Instructions",
        "SD-09": "Manufacturer's Field Reports",
        "SD-10": "Operation and Maintenance Data",
        "SD-11": "Closeout Submittals",
    }


def test_an_item_whose_deviation_is_approved_already_has_its_action_in_the_register(tmp_path: Path) -> None:
    # RFI 027 was answered on February 24, 2027, and is attached as LT4.
    page = page_of(changed_clean(tmp_path, {}), "D03")
    (row,) = [line for line in page.splitlines() if line.startswith("I11 | ")]
    assert row.endswith("| DV1 approved | February 24, 2027")
    assert sum(line.endswith("____ | ____") for line in page.splitlines() if re.match(r"I\d+ \|", line)) == 11


def test_the_transmittal_tells_parties_paragraphs_deviation_and_action() -> None:
    page = page_of(context_of_example("clean"), "D01")
    told = dict(rows_below(page, "TRANSMITTAL")[1:])
    assert told == {
        "To": "Lintel and Quoin Architects",
        "Through": "Almsgrove Building",
        "From": "Lark and Mallow Finishes",
        "Engineer": "Kingpost Engineering, S. Ashlar, PE, license 48213; signed and sealed D06, February 26, 2027; "
        "sealed copy enclosed",
        "Contract": "WW-2731-4",
        "Section and paragraph": "07 24 00 Exterior Insulation and Finish Systems: 1.3.A, 1.3.B, 1.3.C, 1.3.D, 1.5.A, "
        "1.5.B, 1.5.C, 1.5.D; 09 96 00 High-Performance Coatings: 1.3.A, 1.3.B, 1.3.C, 1.5.A",
        "Items": "12 items of the register, D03: 7 action, 5 informational",
        "Deviations": "Yes: DV1 from 09 96 00 2.4.A, approved February 24, 2027; see D03",
        # The sample color is ordered on March 22, when the review of 21 days is over; nothing waits for it sooner.
        "Action requested": "Review and action on this package by March 22, 2027, in time for the order of the "
        "sample color. Review time of the contract: 14 calendar days; 21 days with deviation DV1; approval of the "
        "deviation does not shorten the review; resubmittal, 14 days",
    }
    index = {row[0]: row[2] for row in rows_below(page, "DOCUMENTS IN THIS PACKAGE")[1:]}
    assert "D01" not in index and "D00" not in index and "D02" in index and "D19" in index
    assert {name: items for name, items in index.items() if items not in ("–", "for record")} == {
        "D02": "I3",
        "D03": "I11",
        "D04": "I7",
        "D06": "I4",
        "D07": "I2",
        "D08": "I2, I8",
        "D15": "I8",
        "D09": "I2",
        "D10": "I2",
    }
    # A number left out between others is told, so that nobody looks for its pages.
    assert index["D17"] == "–" and "\nD17 | Not used in this submittal | –\n" in page
    kinds = {row[0]: row[1:] for row in rows_below(page, "ATTACHMENTS")[1:]}
    assert kinds["Test report"] == ["10", "TR1 to TR10", "I5, I10"]
    assert "CHANGES" not in page and "ANSWERS" not in page


def test_action_is_asked_by_the_day_that_first_waits_for_it(tmp_path: Path) -> None:
    # Ordered at the applicator's risk before the review is over, the color does not wait for it: the mockup does.
    change = {"schedule": {"color_sample_order_on": "2027-03-10"}}
    told = dict(rows_below(page_of(changed_clean(tmp_path, change), "D01"), "TRANSMITTAL")[1:])
    assert told["Action requested"].startswith(
        "Review and action on this package by April 12, 2027, in time for the start of the mockup. "
    )


def test_action_is_asked_before_the_work_where_no_day_is_known(tmp_path: Path) -> None:
    change = {"package": {"purpose": "work_submittal"}, "contract": {"review_days": 14}}
    told = dict(rows_below(page_of(changed_small(tmp_path, change), "D01"), "TRANSMITTAL")[1:])
    assert told["Action requested"].startswith("Review and action on this package before the work. ")


@pytest.mark.parametrize(
    ("contract", "told"),
    [
        ({}, "Not known: no specification received"),
        ({"spec_sections": [{"number": "07 24 00"}]}, "Not known: [Review of the specification]"),
        ({"demands": [{"paragraph": "1.4.B", "field": "gloss.voc", "relation": "<=", "value": "100 g/L"}]}, "None"),
    ],
)
def test_whether_anything_deviates_is_known_of_a_specification_that_was_reviewed(
    contract: Any, told: str, tmp_path: Path
) -> None:
    page = page_of(changed_small(tmp_path, {"contract": contract}), "D01")
    assert dict(rows_below(page, "TRANSMITTAL")[1:])["Deviations"] == told


def test_a_resubmittal_lists_its_changes_and_answers_each_comment(tmp_path: Path) -> None:
    change = {
        "package": {
            "purpose": "resubmittal",
            "revision": 2,
            "changes": ["E2 joint lines moved to jambs", "Sealant S1 in light gray"],
            "review": {"action": "revise_and_resubmit", "by": "R. Lindqvist", "on": "2027-02-19"},
        },
        "comments": {
            "C1": {"text": "Show joint J3", "answer": "Shown", "where": "D07, Figure 2", "closed": "no"},
            "C2": {"text": "Name the inspector", "answer": "A. Fennimark"},
        },
    }
    page = page_of(changed_clean(tmp_path, change), "D01")
    told = dict(rows_below(page, "TRANSMITTAL")[1:])
    assert told["Last review"] == "revise and resubmit, by R. Lindqvist, February 19, 2027"
    assert told["Action requested"].endswith("Review time of the contract: 14 calendar days")
    assert "CHANGES SINCE THE LAST ISSUE\n1. E2 joint lines moved to jambs\n2. Sealant S1 in light gray\n" in page
    assert rows_below(page, "ANSWERS TO REVIEW COMMENTS")[1:] == [
        ["C1", "Show joint J3", "Shown", "D07, Figure 2", "no"],
        ["C2", "Name the inspector", "A. Fennimark", "–", "–"],
    ]


def test_a_deviation_sheet_tells_all_that_is_weighed() -> None:
    page = page_of(context_of_example("clean"), "D03")
    assert [row[1:] for row in rows_below(page, "DEVIATIONS")[1:]] == [
        ["Specification paragraph", "09 96 00 2.4.A"],
        ["Required", "minimum 75 gloss units at 60 degrees"],
        ["Proposed", "62 ± 5 gloss units at 60 degrees"],
        ["Reason", "on the sample, raking light showed every board joint in the higher gloss"],
        ["Effect on cost, time, fire safety, warranty", "none"],
        ["Approval", "approved February 24, 2027, by Lintel and Quoin Architects, RFI 027 (LT4)"],
    ]


def test_a_deviation_that_lifts_a_stop_names_it_and_one_not_approved_leaves_room(tmp_path: Path) -> None:
    effects = dict.fromkeys(("cost", "time", "fire", "warranty"), "none")
    asked = {"demanded": "a", "proposed": "b", "reason": "c", "effects": effects, "kind": "deviation"}
    change = {
        # Three smoothing coats are more than common practice takes: FIN-01a.
        "smoothing": {"coats": 3},
        "deviations": {
            "DV1": asked | {"answers": ["FIN-01"], "approved_on": "2027-02-24"},
            "DV2": asked | {"answers": ["AJT-01"]},
        },
    }
    rows = rows_below(page_of(changed_small(tmp_path, change), "D03"), "DEVIATIONS")[1:]
    assert [row[2] for row in rows if row[1] == "Conditions answered"] == ["FIN-01a, see D05"]
    approvals = [row[2] for row in rows if row[1] == "Approval"]
    assert approvals == ["approved February 24, 2027", "not approved; by ____, date ____"]


def test_a_register_without_items_and_a_set_without_deviations_say_so(tmp_path: Path) -> None:
    submittal = {"package": {"purpose": "mockup_submittal"}}
    page = page_of(changed_small(tmp_path, submittal), "D03")
    assert "SUBMITTAL REGISTER\nNo submittal item is listed.\n" in page
    assert page.endswith("DEVIATIONS\nNot known, no specification received.\n")
    transmittal = page_of(changed_small(tmp_path, submittal), "D01")
    assert "Items" not in dict(rows_below(transmittal, "TRANSMITTAL"))
    # Without items and attachments there is neither a column for them nor a heading.
    assert "Register items" not in transmittal and "ATTACHMENTS" not in transmittal


def test_each_person_has_one_sheet_with_all_roles() -> None:
    page = page_of(context_of_example("clean"), "D04")
    assert rows_below(page, "KEY PERSONNEL")[1:] == [
        [
            "T. Underbough: foreman; competent person; Lark and Mallow Finishes",
            "CT1 Training of foreman, plasterer, and sprayer on the finish; CT4 Training of foreman and plasterer on "
            "the EIFS and its flashings; CT5 Training of the competent person for scaffolds",
            "14 years; 6 years",
            "11",
            "Signed February 15, 2027",
        ],
        [
            "O. Pikestaff: sprayer; Lark and Mallow Finishes",
            "CT1 Training of foreman, plasterer, and sprayer on the finish",
            "9 years; 5 years",
            "9",
            "Signed February 15, 2027",
        ],
        [
            "M. Brightlath: plasterer; Lark and Mallow Finishes",
            "CT1 Training of foreman, plasterer, and sprayer on the finish; CT4 Training of foreman and plasterer on "
            "the EIFS and its flashings",
            "12 years; 6 years",
            "11",
            "Signed February 15, 2027",
        ],
        [
            "Q. Tallowmere: sealant applicator; Tallow Joint Works",
            "CT2 Training of the sealant applicator",
            "8 years; 4 years",
            "7",
            "Signed February 16, 2027",
        ],
        [
            "A. Fennimark: inspector; Straightedge Inspection, engaged by the owner",
            "CT3 Inspector's certificate for EIFS, valid through October 3, 2028",
            "7 years; 3 years",
            "5",
            "Signed February 17, 2027",
        ],
    ]
    crews = rows_below(page, "CREWS")[1:]
    assert [(row[0], row[1], row[2], row[4]) for row in crews] == [
        ("gray", "4", "T. Underbough; M. Brightlath", "yes"),
        ("silver", "3", "O. Pikestaff", "yes"),
        ("bead", "2", "Q. Tallowmere", "yes"),
    ]
    assert "The same crews build the mockup." in page
    # UFGS 07240, page 25: an inspector of three years, two of them on the system.
    assert "Inspector: minimum 3 years of experience, 2 years on the system." in page


def test_a_crew_that_the_mockup_leaves_out_is_named(tmp_path: Path) -> None:
    page = page_of(changed_clean(tmp_path, {"mockup": {"crew": ["gray", "bead"]}}), "D04")
    assert "Crew silver works on the wall and not on the mockup: MOC-02a, see D05." in page
    assert [row[4] for row in rows_below(page, "CREWS")[1:]] == ["yes", "no", "yes"]


def test_without_people_the_qualifications_ask_for_them(tmp_path: Path) -> None:
    page = page_of(changed_small(tmp_path, {}), "D04")
    assert "KEY PERSONNEL\nNot named: [People].\n" in page and "CREWS\nNot named: [Crews].\n" in page


@pytest.mark.parametrize("name", [LONG, HEBREW])
def test_names_of_any_kind_print_as_they_stand(name: str, tmp_path: Path) -> None:
    assert len(LONG) > 60
    change = {
        "parties": {"architect": {"name": name}},
        "people": {"P1": {"name": name, "role": "sprayer"}},
        "contract": {"items": {"I1": {"title": name}}},
        "attachments": {"A1": {"title": name, "kind": "letter"}},
    }
    context = changed_small(tmp_path, change)
    pages = {one: page_of(context, one) for one in ("D01", "D03", "D04", "D18")}
    assert ["To", name] in rows_below(pages["D01"], "TRANSMITTAL")
    assert rows_below(pages["D03"], "SUBMITTAL REGISTER")[1][3] == name
    assert rows_below(pages["D04"], "KEY PERSONNEL")[1][0].startswith(f"{name}: sprayer; ")
    assert rows_below(pages["D18"], "ATTACHMENTS")[1][1] == name
