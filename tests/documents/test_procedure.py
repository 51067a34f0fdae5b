"""The installation procedure: its outline, whose words its sentences are, what waits, who releases, what stays out.

The outline is that of the three-part section format of the trade, retyped.
"""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen.documents import document
from specgen.documents.catalogue import templates
from specgen.formats import text
from specgen.model.block import Article, Block, Break, Document, Item, Note, Paragraph, Part, Table
from tests.documents.support import context_of, document_of, written

GENERAL = [
    "Summary",
    "References",
    "Administrative requirements",
    "Submittals",
    "Quality assurance",
    "Delivery, storage, and handling",
    "Field conditions",
    "Warranty",
]
EXECUTION = ["Examination", "Preparation", "Installation", "Field quality control", "Cleaning", "Protection"]


def plain(block: Block) -> str:
    """The words of a block."""
    content = getattr(block, "title", None) or getattr(block, "content", ())
    return "".join(getattr(part, "text", "") or "".join(c.text for c in part.children) for part in content)


def articles(made: Document, part: str) -> list[str]:
    """The titles of the articles of a part."""
    found, now = [], ""
    for block in made.blocks:
        if isinstance(block, Part):
            now = plain(block)
        elif isinstance(block, Article) and now == part:
            found.append(plain(block))
    return found


def procedure(folder: Path, change: Any = None) -> str:
    """The procedure of the small project with a change laid over it, as text."""
    folder.mkdir(exist_ok=True)
    template = next(t for t in templates() if t.id == "D08")
    return text.write_text(document.compose_document(template, context_of(folder, change), True))


def step_of(said: str, title: str) -> str:
    """What a procedure says at a step."""
    found = re.search(rf"^[A-Z]+\. {title}.*?(?=^[A-Z]+\. |^\d\.\d\d )", said, re.DOTALL | re.MULTILINE)
    assert found, title
    return found[0]


def test_the_parts_have_the_articles_of_the_section_format_in_order() -> None:
    made = document_of("clean", "D08")
    # What is confirmed before submittal is an article of ours, behind those of the format.
    assert [title for title in articles(made, "General") if title != "Figures to confirm"] == GENERAL
    assert articles(made, "Execution") == EXECUTION
    # The sheet for the crew has a page of its own, and the end of the section stands behind it.
    assert [type(block) for block in made.blocks[-4:]] == [Break, Paragraph, Table, Paragraph]
    assert plain(made.blocks[-1]) == "END OF SECTION"


def test_the_standards_stand_in_alphabetical_order_numbers_by_their_size() -> None:
    said = text.write_text(document_of("clean", "D08"))
    lines = said.partition("Standard | Subject | Standard | Subject\n")[2].partition("\n\n")[0].splitlines()
    # The list stands in two halves beside each other.
    cells = [line.split(" | ") for line in lines]
    marks = [mark for half in (0, 2) for mark in (row[half] for row in cells if len(row) > half)]
    assert marks[:5] == ["ASTM C578", "ASTM C794", "ASTM C920", "ASTM C1177", "ASTM C1371"]
    assert marks.index("ASTM D523") < marks.index("ASTM D1640") < marks.index("ASTM E2098")


def test_what_holds_a_step_back_is_its_first_line() -> None:
    blocks = document_of("clean", "D08").blocks
    for before, block in zip(blocks, blocks[1:], strict=False):
        if isinstance(block, Item) and "not begin until" in plain(block):
            assert isinstance(before, Item)
            assert before.level == 0 or "not begin until" in plain(before), plain(block)


# The lines of the clean example, each from its own fields: face_gap 14 in, tie_location none, grade_clearance 9 in
# and 8 in, rods, exclusion, overspray plan, weather days, gloss and dry hours, cure hours.
BOUND = [
    "Provide frame scaffold, 14 in from the finished face",
    "E1 South face, E2 West face: Hang the shade cloth per design CL1.",
    "no ties",
    "shade cloth per design CL1",
    "E1 South face, E2 West face: End the board 9 in",
    "E3 Stack house: End the board 8 in",
    "Joints J1, J4: Set 1 in",
    "Joints J2, J3: Set 1-1/4 in",
    "Joint J5: Set 7/8 in",
    "Keep people and vehicles a minimum of 60 ft",
    "Overspray protection: complete that of Document D15 before the first pass.",
    "16 days for weather, after the last activity of D14",
    "Do not begin until the adhesive has cured a minimum of 36 h",
    "Do not begin until the last gloss coat has dried a minimum of 36 h",
    "target 4.9 mil",
    "target 4.2 mil",
    "E1 South face: Set sloped sill pans and head flashings with end dams at WD1, WD2, WD3, WD4.",
    "PA1, E1 South face, full length; PA2, E2 West face, full length; PA3, E3 Stack house, full length: Cover",
    "Competent person T. Underbough inspects",
    "62 ± 5 gloss units at 60 degrees",
]


@pytest.mark.parametrize("words", BOUND)
def test_a_sentence_is_built_from_the_project(words: str) -> None:
    assert words in text.write_text(document_of("clean", "D08"))


def test_the_general_sentence_stands_where_the_field_is_absent(tmp_path: Path) -> None:
    said = procedure(tmp_path)
    assert "Provide access to each elevation" in said
    assert "Identify overspray exposures; assign protection and one person to measure the wind." in said
    assert "Check wet film with a gauge; record" in said
    # Common practice, no source: 25 % is the row on backer rods, retyped.
    assert re.search(r"Set backer rod a minimum of 25%\S* wider", procedure(tmp_path / "two", JOINT))


JOINT = {
    "elevations": {"E1": {"width": "20 ft"}},
    "sealants": {"S1": {"sequence": "before_gloss"}},
    "joints": {"J1": {"elevation": "E1", "kind": "opening_perimeter", "sealant": "S1", "bond_face": "base_coat"}},
}


def test_sealant_before_the_gloss_does_not_wait_for_it(tmp_path: Path) -> None:
    before = step_of(procedure(tmp_path / "before", JOINT), "Sealant joints")
    assert "Do not begin until the base coat has dried a minimum of 24 h" in before
    after = {**JOINT, "sealants": {"S1": {"sequence": "after_gloss"}}, "gloss": {"dry_hours": 30}}
    said = step_of(procedure(tmp_path / "after", after), "Sealant joints")
    assert "Do not begin until the last gloss coat has dried a minimum of 30 h" in said
    assert "base coat has dried" not in said


INSPECTOR = {"P1": {"name": "B. Oxbow", "role": "inspector", "employer": "Level Eye"}}
RELEASED = {
    "the inspector of the people": ({"people": INSPECTOR}, "Level Eye (B. Oxbow)"),
    "the inspecting firm": ({"parties": {"inspector": {"name": "Level Eye"}}}, "Level Eye"),
    "nobody named": ({}, "the architect"),
    "a mark": (
        {"people": INSPECTOR | {"P2": {"name": "C. Rill", "role": "quality_manager"}}}
        | {"contract": {"hold_points_released_by": "P2"}},
        "C. Rill",
    ),
    "words": ({"contract": {"hold_points_released_by": "the building *official*"}}, "the building *official*"),
}


@pytest.mark.parametrize("case", RELEASED)
def test_a_hold_point_names_who_releases_it_and_on_which_form(case: str, tmp_path: Path) -> None:
    change, named = RELEASED[case]
    said = procedure(tmp_path, change)
    number = re.search(r"HOLD POINT (\d+)\. Written release, Form D12d\.", step_of(said, "Release of primer"))
    assert number is not None
    assert f"\n{number[1]} | Release of primer | {named} | D12d\n" in said


def test_the_mockup_is_released_by_its_approver(tmp_path: Path) -> None:
    change = {"people": INSPECTOR, "mockup": {"approver": "owner"}, "parties": {"owner": {"name": "Quay Trust"}}}
    assert " | Mockup | the owner (Quay Trust) | D10\n" in procedure(tmp_path, change)


def test_a_hold_point_is_a_note_of_its_own() -> None:
    notes = [plain(block) for block in document_of("clean", "D08").blocks if isinstance(block, Note)]
    # The thirteen hold points of the clean example and its acceptance, counted on the list of the steps.
    numbers = [found[1] for note in notes if (found := re.match(r"HOLD POINT (\d+)\. ", note))]
    assert numbers == [str(number) for number in range(1, 15)]


def test_documents_that_are_missing_stop_no_crew(tmp_path: Path) -> None:
    change = {"package": {"purpose": "work_submittal"}, "code": {"construction_type": "IIB"}}
    context = context_of(tmp_path, change)
    assert {"SUB-01", "SUB-02"} <= {finding.rule for finding in context.judgment.findings}
    said = procedure(tmp_path / "two", change)
    assert not re.search(r"(Stop|Caution|Note) (SUB|COD|SCH|HEA)-", said)


def test_a_finding_about_the_work_stands_at_its_step(tmp_path: Path) -> None:
    said = procedure(tmp_path, {"primer": {"dry_hours": 4}})
    assert "Stop FIN-03d" in step_of(said, "Tinted primer")


def test_members_that_say_the_same_share_a_sentence(tmp_path: Path) -> None:
    faces = {mark: {"grade_clearance": "9 in", "grade_is_soil": "yes"} for mark in ("E1", "E3")}
    faces["E2"] = {"grade_clearance": "8 in", "grade_is_soil": "no", "name": "Yard <b>side</b>"}
    words = "{% for s in steps() %}{% for t in s.items %}\n1. {{ t }}\n{% endfor %}{% endfor %}\n"
    said = text.write_text(written(tmp_path, words, {"elevations": faces}))
    assert "E1, E3: End the board 9 in" in said
    assert "E2 Yard <b>side</b>: End the board 8 in" in said


def test_an_elevation_whose_wall_is_not_named_yet_is_spoken_of_all_the_same(tmp_path: Path) -> None:
    opening = {"kind": "window", "head_flashing": "yes"}
    faces = {"E1": {"name": "Gable", "openings": {"A": opening}}}
    said = procedure(tmp_path, {"walls": {"W2": {"substrate": {"kind": "concrete"}}}, "elevations": faces})
    assert "Set head flashings with end dams at A." in said


# By the length of joint, common practice, no source: 10 pulls in the first 1000 ft, one more in each 1000 ft begun.
PULLS = {"40 ft": "10 tests", "1000 ft": "10 tests", "1001 ft": "11 tests", "2300 ft": "12 tests"}


@pytest.mark.parametrize("length", PULLS)
def test_the_pulls_of_the_sealant_are_counted_by_the_length_of_the_joints(length: str, tmp_path: Path) -> None:
    joint = JOINT["joints"]["J1"] | {"length": length}
    said = procedure(tmp_path, {**JOINT, "joints": {"J1": joint}})
    assert re.search(rf"Sealant hand pull \| ASTM C1521 \| {PULLS[length]}\S* \| no loss of bond", said)


def test_without_a_length_the_rate_of_the_pulls_stands(tmp_path: Path) -> None:
    said = re.sub(r"\[[a-z]\]", "", procedure(tmp_path, JOINT))
    assert "minimum 10 per first 1000 ft, then 1 per 1000 ft" in said


def matrix(said: str) -> dict[str, list[str]]:
    """The cells behind the name of each test in place."""
    lines = said.partition("Test | Method | Frequency | Limit | By | Form\n")[2].partition("\nB. ")[0].splitlines()
    return {name: cells for name, *cells in (line.split(" | ") for line in lines)}


def test_the_work_is_tested_for_what_the_mockup_is_tested_for(tmp_path: Path) -> None:
    found = matrix(re.sub(r"\[[a-z]\]", "", text.write_text(document_of("clean", "D08"))))
    # International Building Code, 2021: special inspection of a fluid-applied barrier over sheathing.
    assert found["WRB"][0].startswith("special inspection, 1705.17.1; ")
    # The criteria of the mockup name no mean of the film, and bind each reading on the work too.
    assert found["Dry film"][2] == (
        "each reading, as on the mockup: 1.5 mil to 2.2 mil primer, 1.2 mil to 1.8 mil gloss"
    )
    assert found["Gloss"][1:3] == ["6 readings, each elevation", "each reading 62 ± 5 gloss units at 60 degrees"]
    for name in ("Board joints", "Heavy mesh", "Metal caps", "First bead", "Sealant bead", "Sealant hand pull"):
        assert name in found
    assert found["Age of concrete or masonry"][2] == "minimum 28 days"
    assert found["Fastening of sheathing"][2] == "per fastener schedule DW1; no head above the face"
    assert found["Adhesion by tape"][0].startswith("ASTM D3359")
    assert {form for *_, form in found.values()} <= {"D11", "D12a", "D12b", "D12c", "D12d", "D12e", "D12f"}
    unread = matrix(procedure(tmp_path / "two", {"walls": {"W1": {"wrb": {"kind": "fluid_applied"}}}}))
    assert unread["WRB"][0] == "visual; cut sample, micrometer"
    plain_wall = matrix(procedure(tmp_path, {"walls": {"W1": {"wrb": {"kind": "none"}}}}))
    assert "WRB" not in plain_wall


def test_nobody_inspects_where_the_contract_says_so(tmp_path: Path) -> None:
    level = {"contract": {"inspection_level": "none"}}
    alone = procedure(tmp_path, level)
    assert "Tests in place:" in alone
    assert {by for *_, by, _ in matrix(alone).values()} == {"applicator"}
    named = procedure(tmp_path / "two", level | {"parties": {"inspector": {"name": "Level Eye"}}})
    assert "Tests in place (inspector: Level Eye):" in named
    assert matrix(named)["Gloss"][3] == "inspector"


def test_a_floor_line_of_a_drained_wall_is_drained(tmp_path: Path) -> None:
    joint = {"elevation": "E1", "kind": "floor_line", "runs": "horizontal", "at": "12 ft"}
    change: dict[str, Any] = {"elevations": {"E1": {"wall": "W1", "width": "20 ft"}}, "joints": {"J1": joint}}
    words = "Set a flashing at the top of the joint: upper leg "
    assert words not in procedure(tmp_path, change)
    # A fluid barrier is dry before a flashing is set, and cannot lap it; a sheet can. Common practice, no source.
    for kind, lap in (("fluid_applied", "stripped to the WRB with"), ("building_wrap", "lapped by the WRB above")):
        drained = {"walls": {"W1": {"wrb": {"kind": kind}, "drainage": {"kind": "adhesive_ribbons"}}}}
        said = step_of(procedure(tmp_path / kind, change | drained), "Flashings and terminations")
        assert words + lap in said


def test_an_article_is_named_by_its_number_and_elsewhere_by_its_title(tmp_path: Path) -> None:
    assert "Do not spray outside the limits of 1.07." in text.write_text(document_of("clean", "D08"))
    words = "{% for s in steps() %}{% for t in s.items %}\n1. {{ t }}\n{% endfor %}{% endfor %}\n"
    assert "outside the limits of Field conditions." in text.write_text(written(tmp_path, words, {}))


def test_the_letter_of_a_source_stands_at_its_tool() -> None:
    checks = text.write_text(document_of("clean", "D08")).partition("Attachment: crew checklist.")[2]
    # 29 CFR 1926.302(b)(4) is about the nozzle.
    assert re.search(r"Blow-off nozzle under 30 psi with chip guard\[\w+\]", checks)
    assert re.search(r"\( \) Calibration records\n", checks)


# 29 CFR 1926.302(b)(7) is about hoses over 1/2 in inside diameter.
@pytest.mark.parametrize(("bore", "due"), [("1/2 in", False), ("3/4 in", True), (None, True)])
def test_the_safety_device_of_a_hose_is_due_by_its_bore(bore: str | None, due: bool, tmp_path: Path) -> None:
    hose = {"use": "air_supply", "length": "50 ft"} | ({"bore": bore} if bore else {})
    said = procedure(tmp_path, {"hoses": {"H1": hose}})
    assert bool(re.search(r"Air supply hose; safety device where the bore is over 1/2 in\[\w+\]", said)) is due
    assert ("safety device at the source of each air hose over 1/2 in" in said) is due


# International Building Code, 202: fire separation distance runs to the lot line or to the middle of a street.
@pytest.mark.parametrize(("kept", "asked"), [("60 ft", True), ("48 ft", False), (None, False)])
def test_a_distance_past_the_lot_line_needs_permission(kept: str | None, asked: bool, tmp_path: Path) -> None:
    change: dict[str, Any] = {"elevations": {"E1": {"wall": "W1", "fire_separation": "48 ft"}}}
    said = procedure(tmp_path, change | ({"protection": {"exclusion": kept}} if kept else {}))
    assert ("obtain written permission" in step_of(said, "Preparation for spraying")) is asked


# Common practice, no source.
def test_a_fresh_panel_is_shielded_and_no_tape_goes_on_it_before_its_age(tmp_path: Path) -> None:
    said = step_of(procedure(tmp_path), "Preparation for spraying")
    assert "Shield finished panels" in said
    assert "Tape a film only at the age that the data sheet of the tape gives." in said


def test_a_parapet_is_capped_after_the_finish_that_its_cap_laps(tmp_path: Path) -> None:
    assert ". Metal caps" not in procedure(tmp_path)
    details = {"PA1": {"kind": "parapet", "elevation": "E1", "at": "full length", "cap": "yes"}}
    said = procedure(tmp_path / "two", {"elevations": {"E1": {"wall": "W1"}}, "details": details})
    assert "Cover the top of the parapet with membrane" in step_of(said, "Flashings and terminations")
    assert "metal cap over" not in step_of(said, "Flashings and terminations")
    # Common practice, no source: 3/4 in is the row on flashings, retyped.
    assert re.search(r"drip a minimum of 3/4 in\S* past the face", step_of(said, "Metal caps"))
    caps = re.search(r"HOLD POINT (\d+)", step_of(said, "Metal caps"))
    accepted = re.search(r"HOLD POINT (\d+)", step_of(said, "Acceptance of the finish"))
    assert caps is not None and accepted is not None
    assert int(caps[1]) == int(accepted[1]) + 1


def test_what_the_mockup_does_not_show_is_witnessed_first_in_place(tmp_path: Path) -> None:
    found = matrix(text.write_text(document_of("clean", "D08")))["First in place"]
    assert (
        found[2] == "Wall W2; joints J2, J3, J5, J6, J7, J8, J9; openings DR1, LV1; "
        "details RE1, RB1, PA1, PA2, PA3, LG1, PN1, not on the mockup"
    )
    assert "First in place" not in matrix(procedure(tmp_path))


def test_a_barrier_has_the_least_temperature_of_its_manufacturer(tmp_path: Path) -> None:
    words = "Air and wall temperature | WRB | "
    assert words + "minimum 40 °F until dry" in text.write_text(document_of("clean", "D08"))
    barrier = {"wrb": {"kind": "fluid_applied"}}
    assert words + "per its data sheet" in procedure(tmp_path, {"walls": {"W1": barrier}})
    walls = {"W1": {"wrb": barrier["wrb"] | {"least_temperature": "45 F"}}, "W2": barrier}
    said = procedure(tmp_path / "two", {"walls": walls})
    assert "WRB, W1 | minimum 45" in said
    assert "WRB, W2 | per its data sheet" in said


def test_a_color_has_the_method_and_the_limit_of_the_mockup(tmp_path: Path) -> None:
    color = {"reference": "board 1", "metallic": "no", "tolerance": 1.5, "angles": [45]}
    method, _, limit, *_ = matrix(procedure(tmp_path, {"colors": {"C1": color}}))["Color"]
    # ASTM D2244 is on color differences from coordinates, E2194 on metal flake at several angles.
    assert method == "ASTM D2244"
    assert limit == "C1: CIEDE2000 from the approved sample, each reading maximum 1.5 at 45 degrees"
    open_color = {"reference": "board 1", "metallic": "yes", "angles": [15, 45, 110]}
    method, _, limit, *_ = matrix(procedure(tmp_path / "two", {"colors": {"C1": open_color}}))["Color"]
    assert (method, limit) == (
        "ASTM E2194",
        "C1: CIEDE2000 from the approved sample, each reading maximum [Color tolerance] at 15, 45, and 110 degrees",
    )


# 29 CFR 1926.1153(c) and (f): respirable silica is kept down wet or by vacuum with HEPA filter, and not brushed dry.
@pytest.mark.parametrize(("kind", "silica"), [("cement_added", True), ("cement_blended", True), ("no_cement", False)])
def test_dust_of_a_base_coat_with_cement_is_vacuumed(kind: str, silica: bool, tmp_path: Path) -> None:
    change = {"safety": {"rules": "us_osha"}, "walls": {"W1": {"base_coat": {"kind": kind, "passes": 2}}}}
    said = procedure(tmp_path, change)
    rubbed, skimmed = step_of(said, "Base coat, leveling pass"), step_of(said, "First smoothing coat")
    assert ("rub wet, or with HEPA vacuum at the tool" in rubbed) is silica
    assert ("(29 CFR 1926.1153)" in rubbed) is silica
    assert ("Vacuum dust off the base coat, HEPA filter" in skimmed) is silica
    assert ("Brush dust off the base coat" in skimmed) is not silica
    assert ("Vacuum with HEPA filter, for the tool and for cleaning" in said) is silica


# Common practice, no source: the membrane that the data sheet names seals the legs on a wall without a barrier too.
def test_legs_and_pans_are_sealed_with_the_membrane_on_a_wall_without_a_barrier() -> None:
    said = re.sub(r"\[[a-z]\]", "", text.write_text(document_of("clean", "D08")))
    assert "Wall W2: Seal each pan to the wall below it with Membrane 25; keep its front edge open." in said
    assert "strip the leg and its fasteners to the wall with Membrane 25." in step_of(said, "Insulation boards")


# Common practice, no source: what stands open to weather has a longest time, which its manufacturer gives.
def test_what_stands_open_says_how_long_it_may(tmp_path: Path) -> None:
    said = re.sub(r"\[[a-z]\]", "", text.write_text(document_of("clean", "D08")))
    assert "prime within 45 days of the second coat" in step_of(said, "Second smoothing coat")
    assert "Repair each break in the WRB, and cover it with board within 120 days." in step_of(
        said, "Water-resistive barrier"
    )
    told = "Set Membrane 25 at a minimum of 40 °F, air and surface; cover it within 120 days, that of parapets by its"
    assert told in step_of(said, "Flashings and terminations")
    assert "prime within" not in procedure(tmp_path)


# AAMA 2605 views at 10 ft, square to the face: above that nobody on the ground does.
@pytest.mark.parametrize(("height", "lifted"), [("10 ft", False), ("12 ft", True)])
def test_panels_above_the_viewer_are_viewed_from_a_lift(height: str, lifted: bool, tmp_path: Path) -> None:
    scaffold = {"X1": {"elevation": "E1", "kind": "frame_scaffold"}}
    change = {"elevations": {"E1": {"wall": "W1", "width": "20 ft", "height": height}}, "access": scaffold}
    said = step_of(procedure(tmp_path, change), "Final viewing")
    assert ("from a lift of the general contractor at the same distance" in said) is lifted


# The eye has one standard, the accepted mockup; instruments have the approved sample: common practice, no source.
def test_the_eye_compares_with_the_mockup_and_the_instrument_with_the_sample() -> None:
    said = re.sub(r"\[[a-z]\]", "", text.write_text(document_of("clean", "D08")))
    assert "by eye, compare the work with it; by instrument, with the approved sample (color) and the target" in said
    assert matrix(said)["Appearance"][2] == "matches the accepted mockup"
    assert "approved sample" in matrix(said)["Color"][2]
