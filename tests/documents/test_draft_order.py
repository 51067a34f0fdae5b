"""In which order a draft asks, what is read before it is asked, and which days it leaves whom."""

from pathlib import Path
from typing import Any

import pytest

from specgen.documents.contract_first import name_contract
from tests.documents.example import changed_small, drafted, rows_below
from tests.documents.open_page import list_heads, list_lines
from tests.documents.test_asked_of_drafts import NEW, OLD, before_of
from tests.support import merged

# The clinic with the section of its specification, its parties, and the days of its contract.
CLINIC: dict[str, Any] = merged(
    NEW,
    {
        "parties": {
            "applicator": {"name": "Northline Plaster"},
            "architect": {"name": "Barlow"},
            "general_contractor": {"name": "Hartwell"},
        },
        "contract": {
            "spec_sections": [{"number": "07 24 00", "title": "EIFS"}],
            "review_days": 10,
            "review_day_kind": "working",
        },
        "building": {"eifs_top": "42 ft"},
        "elevations": {"E1": {"wall": "W1", "prominent": "yes"}, "E2": {"wall": "W1"}},
    },
)

READ = "Section 07 24 00, the sections it refers to, and the drawings"


# Common practice, no source: a contractor reads section and drawings, and asks by request for information what they
# leave open; the architect alone says which face is prominent.
def test_the_contract_is_read_before_the_architect_is_asked(tmp_path: Path) -> None:
    pages = drafted(tmp_path, CLINIC)
    heads = [head for head in list_heads(pages["D19"]) if head.startswith("Contract documents")]
    assert heads[0].startswith(
        f"Contract documents: {READ}; only where silent or contradictory, the architect, "
        "Barlow, by RFI. Needed before: "
    )
    below = pages["D19"].partition(heads[0])[2]
    assert "Sheathing (W1): standard; thickness, in" in below
    # What the architect sees and decides, no contract tells him.
    rest = pages["D19"].partition("\nVALUES\n")[2].partition("\nArchitect")[2].splitlines()[1:4]
    looser = (
        "( ) Substrate limit under a 10 ft straightedge, where none or a looser one is specified (E1): confirm 1/8 in"
    )
    assert [row.split(" | ")[1].partition("[")[0] for row in rest] == [
        "( ) Is the elevation prominent? yes/no (E2)",
        "( ) Does low light rake the elevation? yes/no (E1, E2)",
        looser,
    ]
    steps = pages["D00"].partition("NEXT STEPS\n")[2]
    assert steps.startswith(
        "1. Northline Plaster reads Section 07 24 00, the sections it refers to, and the drawings first"
    )
    assert f"Contract documents: read {READ} first, and cite paragraph or sheet" in pages["D19"]
    (review,) = (row for row in list_lines(tmp_path) if row[2].startswith(f"Review of {READ}"))
    assert review[:2] == ["Applicator", "first requests"]
    # Nobody knows what limit the section sets, and the guide's stands in its place only where it sets none.
    assert "The plane limit of the substrate is not known; the guide's 1/4 in" in pages["D05"]
    assert "No plane limit of the substrate is given" not in pages["D05"]
    # Who settles it, and when, reads the same where it is asked for.
    (limit,) = (row for row in list_lines(tmp_path) if row[2].startswith("Substrate limit under a 10 ft straightedge"))
    assert limit[1] == "this submittal"
    assert " | Architect, before this submittal | " in pages["D05"]


@pytest.mark.parametrize(
    ("numbers", "told"),
    [
        ((), "the specification and the drawings"),
        (("07 24 00", "07 24 00"), READ),
        (
            ("07 24 00", "09 96 00", "07 92 00"),
            "Sections 07 24 00, 09 96 00, and 07 92 00, those they refer to, and the drawings",
        ),
    ],
)
def test_each_section_of_the_contract_is_named_once(numbers: tuple[str, ...], told: str, tmp_path: Path) -> None:
    sections = [{"number": number} for number in numbers]
    assert name_contract(changed_small(tmp_path, {"contract": {"spec_sections": sections}})) == told


# Common practice, no source: a wall is decided on by what is known then; measured gaps, movement joints, and openings
# come later, and hold up no decision.
def test_rules_before_the_decision_stand_apart_from_those_that_follow(tmp_path: Path) -> None:
    page = drafted(tmp_path, CLINIC)["D02"]
    rules = page.partition("\nRULES NOT EVALUATED\n")[2]
    first, _, then = rules.partition("\nEvaluated after the decision; each value")
    before, after = ([line[:6] for line in part.splitlines() if line[3:4] == "-"] for part in (first, then))
    assert {"ATT-07", "ATT-09", "COD-03", "HEA-02"} <= set(before)
    assert {"PLN-01", "WAT-02", "WAT-08", "COD-04"} <= set(after)
    late = {code[:6] for row in list_lines(tmp_path) if row[1] not in _EARLY for code in row[3].split(", ")}
    # A rule stands before the decision for the document that the wall is decided by, whatever else it waits for.
    decides = {row[3] for row in rows_below(page, "DOCUMENTS PENDING, NEEDED BEFORE THE DECISION ON THE WALLS")}
    assert late.intersection(before) <= decides
    assert "; rules on the work, not on a wall: see D19." in page


_EARLY = ("first requests", "decision on the walls")


# Common practice, no source: a set is issued whole, so that what one of its documents prints is there by then; impact
# zones are known before mesh is chosen by them, and lines before boards keep clear of them.
def test_what_a_document_prints_is_asked_for_before_it_is_issued(tmp_path: Path) -> None:
    pages = drafted(tmp_path, CLINIC)
    asked = before_of(tmp_path)
    made = [told[1] for item, told in asked.items() if item.startswith(("Limit of pH", "Volume solids"))]
    assert made and set(made) == {"this submittal"}
    (lines,) = (told for item, told in asked.items() if item.startswith("Aesthetic joint lines"))
    (openings,) = (told for item, told in asked.items() if item.startswith("Openings with place"))
    assert lines[1] == openings[1] == "this submittal"
    assert asked["Impact zones (E1, E2)"][1] == "decision on the walls"
    (layout,) = (row for row in rows_below(pages["D00"], "DOCUMENTS IN THIS PACKAGE") if row[0].startswith("D07"))
    assert "contract documents" in layout[2]
    (held,) = (row[3] for row in list_lines(tmp_path) if row[2].startswith("Openings with place"))
    assert "D07" in held


# Counted on a calendar from Monday, April 12, 2027: a working day to act on the return, April 9; ten working days from
# Thursday, March 25, to April 8; three for the contractor, Monday, March 22. The lengths of three days: common
# practice, no source. Returned on April 8: corrected by the 13th, sent on the 16th, returned on the 30th, acted on on
# May 3, so that the mockup begins on May 4.
def test_dates_leave_the_contractor_its_review_and_tell_of_a_resubmittal(tmp_path: Path) -> None:
    page = drafted(tmp_path, CLINIC)["D00"]
    assert "Latest: March 22, 2027; reviewed and sent to the architect by March 25, 2027" in page
    assert "If revised and resubmitted: mockup no earlier than May 4, 2027" in page
    assert "Hartwell receives them by March 2, 2027, reviews and stamps them (3 working days), and" in page
    assert "of D06 the calculations of face temperature, moisture in the wall, and wind load, the last by the" in page
    assert (
        "sends them to the architect by March 5, 2027; the architect decides on each wall in writing by March 19"
        in page
    )
    # Reports and letters are submitted; only questions are requests for information.
    assert "as a request for information" not in page and "as requests for information" not in page
    assert "questions to owner, architect, and engineer by RFI, documents by submittal, through Hartwell" in page


# International Building Code 2018, 2603.5.4: foam plastic, exterior coatings and facings are tested separately, each to
# 25 and 450. 1402.5: NFPA 285 for a combustible barrier above 40 ft (City of San Diego, Technical Bulletin 14-1).
def test_the_code_asks_for_the_coatings_and_for_a_barrier_that_burns(tmp_path: Path) -> None:
    pages = drafted(tmp_path, CLINIC)
    asked = before_of(tmp_path)
    assert asked["ASTM E84 report of the smoothing, primer, and gloss (W1)"][0] == "Finish manufacturer"
    assert asked["ASTM E84 report of the base coat with mesh (W1)"][0] == "EIFS manufacturer"
    (row,) = (line for line in pages["D02"].splitlines() if line.startswith("Combustible water-resistive barrier, W1"))
    assert " | 1402.5[p] | pending | EIFS top 42 ft; height above grade plane to be confirmed, D19; building" in row
    # International Building Code 2021, 1402: exterior walls resist the loads that Chapter 16 requires.
    assert "\nWind, W1 | Chapter 16 | yes | suction held to the tested load over the safety factor;" in pages["D02"]
    told = {"walls": {"W1": {"attachment": {"ultimate_strength": "90 psf"}}}}
    assert "\nWind, W1 | " not in drafted(tmp_path, merged(CLINIC, told), ("D02",))["D02"]
    # Common practice, no source: vapor passes all layers over the wall, of which its contract tells no figure.
    assert asked["Permeance of WRB, board, and base coat, perm (W1)"] == ("EIFS manufacturer", "decision on the walls")
    lower = drafted(tmp_path, merged(CLINIC, {"building": {"eifs_top": "40 ft"}}), ("D02",))["D02"]
    assert "Combustible water-resistive barrier" not in lower
    question = (
        "Code: confirm edition 2021, construction type IIB, occupancy B; height of the building above grade plane, ft; "
        "local amendments"
    )
    assert asked[question] == ("Architect", "decision on the walls")


# Common practice, no source: old brick is pulled as an old coating is, and new pointing is a surface of its own; all
# dates hang on the first, which the owner tells while no contractor is named.
def test_old_brick_has_its_measure_and_the_owner_is_asked_for_the_first_dates(tmp_path: Path) -> None:
    wet = {"W1": {"substrate": {"condition": ["efflorescence", "open_joints"]}}}
    sized = {"elevations": {"E1": {"width": "62 ft", "height": "22 ft"}}, "walls": wet}
    pages = drafted(tmp_path, merged(OLD, sized))
    (row,) = (line for line in pages["D05"].splitlines() if line.startswith("ATT-05j | W1 existing brick"))
    assert "If a pull fails, remove the weak face or pointing, repair, and repeat the pull tests" in row
    # 62 ft by 22 ft: two sets of three in each 1000 sq ft, and a set on the pointing.
    assert "minimum 9 on W1, 1364 sq ft, 3 of them on new pointing" in pages["D05"]
    asked = before_of(tmp_path)
    assert asked["Planned submission date"] == ("Applicator", "first requests")
    (solid,) = (item for item in asked if item.startswith("Existing wall: solid, cavity, or veneer;"))
    assert solid.endswith("or accepted by the authority: yes/no (W1)")
    assert "Concrete or masonry to IBC Chapter 19 or 21, or accepted by the authority? yes/no (W2)" in asked
    assert "D12" not in pages


# Common practice, no source: one list asks for a figure and the other refers to it, as two answers may differ.
def test_a_figure_has_one_box_for_its_answer(tmp_path: Path) -> None:
    pages = drafted(tmp_path, CLINIC)
    rows = rows_below(pages["D05"], "VERIFY BEFORE THE DECISION ON THE WALLS")
    wind = [row for row in rows if row[1] == "Wind in which a metallic finish is sprayed"]
    assert [row[2:] for row in wind] == [["maximum 8 mph", "D05, D19", "D19"]]
    damp = {row[0]: row[2:] for row in rows if row[1].startswith("Relative humidity")}
    # The limits of the finish bind its own coats.
    assert "EIFS manufacturer" not in damp
    assert damp["Finish manufacturer"] == ["maximum 85%", "D05, D19", "D19"]


# Common practice, no source: an engineer cannot compute from what arrives on the day on which his sum is due.
def test_what_the_engineer_computes_from_is_asked_for_before_his_own_answers(tmp_path: Path) -> None:
    drafted(tmp_path, CLINIC)
    asked = before_of(tmp_path)
    given = [before for item, (_, before) in asked.items() if item.startswith(("Basic wind speed", "Sheathing "))]
    assert given and set(given) == {"first requests"}
    # A manufacturer that nobody has named yet answers nothing at once.
    load = "Tested wind load of the adhered wall, at failure, psf (W1)"
    assert asked[load] == ("EIFS manufacturer", "decision on the walls")
    assert asked["Safety factor on the tested wind load (W1)"] == ("Engineer", "decision on the walls")
    drafted(tmp_path, merged(CLINIC, {"parties": {"eifs_source": {"name": "Stonefield"}}}))
    assert before_of(tmp_path)[load] == ("EIFS manufacturer", "first requests")
    # Nobody answers at once while the owner has still to name the architect.
    drafted(tmp_path, merged(CLINIC, {"parties": {"architect": {"name": None}}}))
    assert before_of(tmp_path)["Basic wind speed for the risk category, mph"][1] != "first requests"


# Common practice, no source: a document is asked for once, by its name.
def test_instructions_are_asked_for_as_documents_alone(tmp_path: Path) -> None:
    drafted(tmp_path, CLINIC)
    (finish,) = (item for item in before_of(tmp_path) if item.startswith("Written instructions: smoothing"))
    assert finish == "Written instructions: smoothing, primer, gloss"
    assert not [item for item in before_of(tmp_path) if item.startswith("Instructions")]
    # What a sealant bonds to, and how it is tooled, its manufacturer writes too; a detail is drawn by that of the EIFS.
    asked = before_of(tmp_path)
    assert asked["Written instructions: sealant"] == ("Sealant manufacturer", "this submittal")
    details = "Standard details of the EIFS: edges, openings, joints, penetrations"
    assert asked[details] == ("EIFS manufacturer", "this submittal")
    both = "Data sheets and safety data sheets: smoothing, primer, gloss"
    assert asked[both] == ("Finish manufacturer", "this submittal")
    paper = {"kind": "instructions", "title": "Base coat", "covers": ["base_coat", "sealant"]}
    drafted(tmp_path, merged(CLINIC, {"attachments": {"A1": paper}}))
    assert details not in before_of(tmp_path) and "Written instructions: sealant" not in before_of(tmp_path)


# Common practice, no source: what class a local code asks of a wall is one thing, that the wall reaches it another.
def test_a_local_code_asks_for_the_class_and_for_the_report_that_shows_it(tmp_path: Path) -> None:
    drafted(tmp_path, merged(CLINIC, {"code": {"model": "other"}}))
    asked = before_of(tmp_path)
    report = "Fire test report of this wall with this finish, for the class that the authority requires (W1)"
    assert asked[report] == ("EIFS manufacturer", "decision on the walls")
    letter = "Fire class and tests, by letter of the authority"
    assert asked[letter][0] == "Architect"
