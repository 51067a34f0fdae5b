"""Tables of the compliance document: what the contract demands against what there is, and fire tests owed."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen import building
from specgen.formats import text
from tests.documents.support import document_of
from tests.support import SMALL, merged, written


def rows_of(folder: Path, change: Any) -> dict[str, list[str]]:
    """The rows of the tables of D02 for the small project with a change, by their first cell."""
    building.build(written(folder, merged(SMALL, change)), folder / "out", ("txt",), ("D02",), draft=True)
    (made,) = (folder / "out").glob("D02*.txt")
    rows = [line.split(" | ") for line in made.read_text("utf-8").splitlines() if " | " in line]
    return {row[0]: row[1:] for row in rows}


OWED_REPORT = "report, or engineer's extension accepted by the authority, required from the EIFS manufacturer"


@pytest.mark.parametrize(
    ("demand", "given", "row"),
    [
        (
            {"field": "walls.*.base_coat.dry_thickness", "relation": ">=", "value": "3/32 in"},
            {},
            ["Base coat dry thickness", "minimum 3/32 in", "[open]", "open item", "D08"],
        ),
        (
            {"field": "sealants.*.c920_class", "relation": "in", "value": "50, 100/50"},
            {},
            ["Sealant movement class", "50 or 100/50", "[open]", "open item", "D08"],
        ),
        (
            {"field": "mockup.includes", "relation": ">=", "value": "full_panel, sealant_joint"},
            {"mockup": {"includes": ["full_panel", "opening"]}},
            [
                "Details shown by the mockup",
                "including full panel, sealant joint",
                "full panel, opening",
                "not met",
                "D09, D10",
            ],
        ),
        (
            {"field": "walls.*.base_coat.dry_thickness"},
            {},
            ["Base coat dry thickness", "[Required value]", "–", "open item", "–"],
        ),
        (
            {"field": "walls.*.attachment.cure_hours", "relation": ">=", "value": "36"},
            {
                "walls": {
                    "W1": {"attachment": {"cure_hours": 48}},
                    "W2": {
                        "substrate": {"kind": "concrete"},
                        "attachment": {"method": "adhesive_full_bed", "cure_hours": 40},
                    },
                }
            },
            ["Adhesive curing time", "minimum 36 h", "W1: 48 h; W2: 40 h", "met", "D08"],
        ),
    ],
    ids=["absent value", "absent members", "list", "no figure demanded", "walls that differ"],
)
def test_a_demand_of_the_contract_stands_beside_what_there_is(
    demand: dict[str, str], given: Any, row: list[str], tmp_path: Path
) -> None:
    demands = [{"section": "07 24 00", "paragraph": "2.3.B"} | demand]
    assert rows_of(tmp_path, given | {"contract": {"demands": demands}})["07 24 00 2.3.B"] == row


def test_a_demand_is_shown_in_the_paper_that_proves_it_and_not_in_the_procedure() -> None:
    # A tested value by its report, any other by the data sheet of its material: common practice, no source.
    said = text.write_text(document_of("clean", "D02"))
    shown = dict(re.findall(r"^(0\d \d\d \d\d \d\.\d\.[A-Z]) \|.* \| ([^|\n]+)$", said, re.M))
    assert shown["07 24 00 1.4.B"] == "TR4, TR5"  # the wind load tests of the two walls
    assert shown["07 24 00 1.4.C"] == "TR3"
    assert shown["07 24 00 2.2.A"] == "PD3"
    assert shown["07 24 00 2.6.A"] == "PD4"
    assert shown["09 96 00 2.2.C"] == "PD7"
    # A target that no paper can prove before the mockup is shown where it is held.
    assert shown["09 96 00 2.4.A"] == "D08, D10"


# International Building Code, 2603.5: foam plastic in walls of types I to IV, any height; type V owes no such test. The
# mark behind a reason is that of its source.
@pytest.mark.parametrize(
    ("kind", "board", "due", "why"),
    [
        ("IIB", "eps", "yes", "foam plastic in an exterior wall of type IIB, {where}; {report}"),
        ("VB", "eps", "no", "construction type VB is not type I to IV"),
        ("IIB", "mineral_wool", "no", "the board is not foam plastic; {else}: ask the authority having jurisdiction"),
    ],
)
def test_a_wall_owes_its_fire_tests_by_type_and_board(
    kind: str, board: str, due: str, why: str, tmp_path: Path
) -> None:
    code = {"model": "ibc", "edition": 2021, "construction_type": kind, "occupancy_groups": ["B"]}
    change = {
        "code": code,
        "building": {"stories": 1, "eifs_top": "26 ft"},
        "walls": {"W1": {"insulation": {"kind": board}}},
        "elevations": {"E1": {"fire_separation": "60 ft"}, "E2": {"fire_separation": "48 ft"}},
    }
    rows = rows_of(tmp_path, change)
    propagation = {
        "where": "regardless of height; one story is exempt only with metal-faced foam and sprinklers",
        "report": f"NFPA 285 {OWED_REPORT}",
        "else": "a combustible water-resistive barrier may still require the test",
    }
    radiant = {
        "where": "regardless of fire separation; a thin base coat is not an exempt covering; fire separation distance "
        "48 ft to 60 ft",
        "report": f"NFPA 268 {OWED_REPORT}",
        "else": "combustible coats may still require the test",
    }
    # 2603.5 itself is about buildings of types I to IV, whatever the test.
    if kind == "VB":
        assert unmarked(rows["Fire propagation, NFPA 285; radiant heat, NFPA 268, W1"]) == ["2603.5", due, why]
        return
    for subject, section, words in (
        ("Fire propagation, NFPA 285, W1", "2603.5.5", propagation),
        ("Radiant heat, NFPA 268, W1", "2603.5.7", radiant),
    ):
        assert unmarked(rows[subject]) == [section, due, why.format(**words)]


FOAM: dict[str, Any] = {"kind": "eps", "flame_spread": 20, "smoke_developed": 300}
# 2603.4: 1/2 in gypsum wallboard, or what passes the same test; sheathing outside the studs is neither.
ASKED = "1/2 in gypsum wallboard or equal at the interior: architect to confirm in writing"
GYPSUM = {"kind": "glass_mat_gypsum", "thickness": "5/8 in"}


def foam_rows(folder: Path, construction: str, substrate: Any, board: Any, **more: Any) -> dict[str, list[str]]:
    code = {"model": "ibc", "edition": 2021, "construction_type": construction, "occupancy_groups": ["B"]}
    change = {"code": code, "walls": {"W1": {"substrate": substrate, "insulation": board}}} | more
    rows = rows_of(folder, change)
    return {subject: unmarked(cells) for subject, cells in rows.items() if subject.startswith("Foam plastic")}


# International Building Code 2021, 2603.3: indexes of 75 and 450; 2603.4: 1/2 in gypsum wallboard or the like to the
# interior. 2603.5: walls of type V comply with these two.
def test_foam_plastic_owes_its_indexes_and_its_thermal_barrier_in_any_building(tmp_path: Path) -> None:
    report = {"attachments": {"A2": {"kind": "test_report", "standard": "ASTM E84"}}}
    rows = foam_rows(tmp_path, "VB", GYPSUM, FOAM, **report)
    limits = (
        "flame spread index maximum 75, smoke-developed index maximum 450; board: flame spread index 20, met; "
        "smoke-developed index 300, met; report A2"
    )
    assert rows == {
        "Foam plastic, surface burning, W1": ["2603.3", "yes", limits],
        "Foam plastic, thermal barrier, W1": ["2603.4", "yes", ASKED],
    }


# 2603.5.4: an index of 25 and no more.
def test_a_board_that_burns_faster_than_the_code_allows_is_told_so(tmp_path: Path) -> None:
    rows = foam_rows(tmp_path, "IIB", {"kind": "concrete_masonry"}, {"kind": "eps", "flame_spread": 26})
    assert "; board: flame spread index 26, not met; " in rows["Foam plastic, surface burning, W1"][2]


def test_a_report_of_one_wall_says_why_it_serves_the_other() -> None:
    # TR1 was made of W1; W2 has the same board, base coat, and mesh in the project file.
    said = text.write_text(document_of("clean", "D02"))
    assert "report TR1, tested on W1; W2 has the same board, base coat, and mesh; installed per" in said


# 2603.3: tested in the maximum thickness intended for use; a ledge of 6 in added to a board of 3 in makes it 9 in.
@pytest.mark.parametrize(
    ("title", "owed"),
    [
        ("Surface burning", ": report of this thickness required"),
        ("Surface burning, 19 in and 1-9 in thick", ": report of this thickness required"),
        ("Surface burning, 3 in and 9 in thick", ": tested at this thickness, A2"),
    ],
)
def test_indexes_hold_for_a_thickness_and_a_ledge_of_added_board_owes_its_own_report(
    title: str, owed: str, tmp_path: Path
) -> None:
    more = {
        "attachments": {"A2": {"kind": "test_report", "standard": "ASTM E84", "title": title}},
        "elevations": {"E1": {"wall": "W1"}},
        "details": {"L1": {"kind": "ledge", "elevation": "E1", "depth": "6 in", "slope": "6 in 12", "cap": "no"}},
    }
    rows = foam_rows(tmp_path, "VB", GYPSUM, FOAM | {"thickness": "3 in"}, **more)
    assert rows["Foam plastic, surface burning, W1"][2] == (
        "flame spread index maximum 75, smoke-developed index maximum 450; board at 3 in: flame spread index 20, met; "
        "smoke-developed index 300, met; report A2; "
        f"ledge L1, W1, 9 in of board in all{owed}"
    )


def test_a_wallboard_among_the_layers_is_the_thermal_barrier(tmp_path: Path) -> None:
    layers = [{"name": "painted 5/8 in gypsum wallboard"}, {"name": "glass mat gypsum sheathing"}]
    wall = {"substrate": GYPSUM, "insulation": FOAM, "layers": layers}
    row = rows_of(tmp_path, {"code": {"model": "ibc", "edition": 2021}, "walls": {"W1": wall}})
    (*_, told) = unmarked(row["Foam plastic, thermal barrier, W1"])
    assert told == "painted 5/8 in gypsum wallboard between board and interior, minimum 1/2 in"


# International Building Code 2018, 2603.5.1, 2603.5.3 and 2603.5.4 besides, the last with an index of 25: board,
# exterior coatings, and facings are tested separately, so that each coat owes a report of its own.
def test_foam_plastic_in_a_wall_of_types_i_to_iv_owes_more(tmp_path: Path) -> None:
    rows = foam_rows(tmp_path, "IIB", {"kind": "concrete_masonry"}, {"kind": "eps"})
    owed = "report required from the EIFS manufacturer"
    assert rows == {
        "Foam plastic, surface burning, W1": [
            "2603.5.4",
            "yes",
            "flame spread index maximum 25, smoke-developed index maximum 450; board: flame spread index [Board flame "
            f"spread index]; smoke-developed index [Board smoke-developed index]; ASTM E84 {owed}; exterior coatings "
            "and facings tested separately, same "
            f"limits; ASTM E84 report of the base coat with mesh {owed.removeprefix('report ')}; "
            "ASTM E84 report of the smoothing, primer, and gloss required from the finish manufacturer",
        ],
        "Foam plastic, thermal barrier, W1": ["2603.4", "yes", "concrete masonry between board and interior"],
        "Foam plastic, fire-resistance-rated wall, W1": [
            "2603.5.1",
            "pending",
            "architect to confirm the rating, if any, at the fire separation distance of each face; where rated, "
            f"ASTM E119 or UL 263 {owed}",
        ],
        "Foam plastic, potential heat, W1": [
            "2603.5.3",
            "yes",
            f"not above that of the wall tested per NFPA 285; NFPA 259 {owed}",
        ],
        # 2603.5.6, the label; from memory.
        "Foam plastic, label, W1": ["2603.5.6", "yes", "label of an approved agency on the board or package"],
    }


@pytest.mark.parametrize(
    "substrate",
    [{"kind": "plywood", "thickness": "5/8 in"}, {"kind": "glass_mat_gypsum", "thickness": "5/8 in"}, {"kind": "icf"}],
)
def test_a_thermal_barrier_that_the_substrate_is_not_is_asked_of_the_architect(substrate: Any, tmp_path: Path) -> None:
    (*_, told) = foam_rows(tmp_path, "VB", substrate, FOAM)["Foam plastic, thermal barrier, W1"]
    assert told == ASKED


def test_walls_that_meet_it_in_different_ways_share_a_row(tmp_path: Path) -> None:
    second = {"W2": {"substrate": {"kind": "concrete"}, "insulation": FOAM, "framing": {"kind": "none"}}}
    change = {
        "code": {"model": "irc", "edition": 2021},
        "walls": {"W1": {"substrate": GYPSUM, "insulation": FOAM}} | second,
    }
    row = rows_of(tmp_path, change)["Foam plastic, thermal barrier, W1, W2"]
    told = f"W1: {ASKED}; W2: concrete between board and interior"
    # International Residential Code, R316.4, from memory.
    assert unmarked(row) == ["R316.4", "yes", told]


def test_the_energy_code_stands_where_the_project_gives_its_figure(tmp_path: Path) -> None:
    board = {"kind": "eps", "thickness": "3 in", "rasp_allowance": "0 in", "r_value": "R-9"}
    change: dict[str, Any] = {
        "code": {"model": "ibc", "edition": 2021, "required_r_value": "R-9.5", "required_r_value_basis": "table 7"},
        "walls": {
            "W1": {"insulation": board, "required_r_value": "R-7.5", "required_r_value_basis": "metal framed"},
            "W2": {"insulation": board, "substrate": {"kind": "concrete"}, "framing": {"kind": "none"}},
        },
    }
    row = rows_of(tmp_path, change)["Continuous insulation, W1, W2"]
    told = "table 7; W1: minimum R-7.5, metal framed, board R-9 after rasping, met; "
    assert row == ["energy code", "yes", f"{told}W2: minimum R-9.5, board R-9 after rasping, not met"]
    del change["code"]["required_r_value"], change["walls"]["W1"]["required_r_value"]
    (tmp_path / "none").mkdir()
    # A draft tells who states it, and what the boards have.
    row = rows_of(tmp_path / "none", change)["Continuous insulation, W1, W2"]
    asked = "R-value of continuous insulation required, or none: architect to state"
    assert row == ["energy code", "pending", f"{asked}; board: W1 R-9; W2 R-9"]


def test_a_tall_building_is_not_told_of_the_one_story_exception(tmp_path: Path) -> None:
    change = {
        "code": {"model": "ibc", "edition": 2021, "construction_type": "IA", "occupancy_groups": ["B"]},
        "building": {"stories": 12},
        "walls": {"W1": {"insulation": {"kind": "eps"}}},
    }
    report = f"NFPA 285 {OWED_REPORT}"
    why = f"foam plastic in an exterior wall of type IA, regardless of height; {report}"
    assert unmarked(rows_of(tmp_path, change)["Fire propagation, NFPA 285, W1"]) == ["2603.5.5", "yes", why]


def unmarked(cells: list[str]) -> list[str]:
    """Cells without the marks of their sources."""
    return [re.sub(r"\[[a-z]+\]", "", cell) for cell in cells]


def test_a_report_that_is_listed_stands_beside_the_test_it_is_of(tmp_path: Path) -> None:
    change = {
        "code": {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]},
        "walls": {"W1": {"insulation": {"kind": "eps"}}},
        "attachments": {"A4": {"kind": "test_report", "standard": "NFPA 268", "assembly": "W1"}},
    }
    rows = rows_of(tmp_path, change)
    assert unmarked(rows["Radiant heat, NFPA 268, W1"])[-1].endswith("; report A4")
    assert unmarked(rows["Fire propagation, NFPA 285, W1"])[-1].endswith(f"; NFPA 285 {OWED_REPORT}")


def test_under_a_local_code_the_authority_is_asked_for_drainage_fire_class_and_inspection(tmp_path: Path) -> None:
    bare = {"W1": {"drainage": {"kind": "none"}}}
    rows = rows_of(tmp_path, {"code": {"model": "other", "construction_type": "IIB"}, "walls": bare})
    pending = "letter of the authority pending, see D19"
    refused = f"{pending}; W1 without drainage, not suitable if a drained wall is required"
    assert rows["Drained wall"] == ["authority to name", "pending", refused]
    assert rows["Fire class and tests of the walls"] == ["authority to name", "pending", pending]
    assert rows["Special inspection"] == ["authority to name", "pending", pending]
    assert not any("NFPA" in cell for row in rows.values() for cell in row)


def test_a_section_from_memory_says_so_on_the_page(tmp_path: Path) -> None:
    # IBC 2018: EIFS by Chicago Title 14B, inspection from memory; IBC 2021: both read.
    told = {}
    for edition in (2018, 2021):
        folder = tmp_path / str(edition)
        folder.mkdir()
        rows_of(folder, {"code": {"model": "ibc", "edition": edition}})
        (made,) = (folder / "out").glob("D02*.txt")
        told[edition] = made.read_text("utf-8")
    # A section that was read needs no letter beside the edition above the table.
    assert "EIFS | 1407 |" in told[2018] and "Special inspection | 1705.16[p] |" in told[2018]
    assert "\n[p] Proposed, not verified; see D05" in told[2018]
    table = told[2021].partition("\nCODE REQUIREMENTS\n")[2].partition("\n\n")[0]
    assert "Special inspection | 1705.17 |" in table and "[p]" not in table


def test_fasteners_of_the_local_code_are_told_by_height_and_by_elevation(tmp_path: Path) -> None:
    change = {
        "code": {
            "jurisdiction": "City of Ashmoor",
            "local_fasteners_required": "yes",
            "local_fasteners_above": "24 ft",
        },
        "elevations": {"E1": {"width": "40 ft"}, "E2": {"local_fasteners_required": "no"}},
    }
    row = rows_of(tmp_path, change)["Fasteners, local code"]
    assert row == [
        "local code",
        "yes, above 24 ft",
        "required, according to the applicator; letter of the authority, City of Ashmoor, pending; E2: no",
    ]


def test_an_answer_on_fasteners_counts_once_the_authority_is_named(tmp_path: Path) -> None:
    subject, code = "Fasteners, local code", {"local_fasteners_required": "no"}
    unlettered = "not required, according to the applicator; letter of the authority, {}, pending; if required, "
    unlettered += "W1 is not suitable as designed"
    (unnamed := tmp_path / "unnamed").mkdir()
    assert rows_of(unnamed, {"code": code})[subject] == ["local code", "pending", unlettered.format("not named")]
    said = {"jurisdiction": "City of Ashmoor", "local_fasteners_basis": "letter of January 22, 2027"}
    (named := tmp_path / "named").mkdir()
    answer = "City of Ashmoor: letter of January 22, 2027"
    (said_by_none := tmp_path / "unconfirmed").mkdir()
    unconfirmed = ["local code", "pending", unlettered.format("City of Ashmoor")]
    assert rows_of(said_by_none, {"code": code | {"jurisdiction": "City of Ashmoor"}})[subject] == unconfirmed
    assert rows_of(named, {"code": code | said})[subject] == ["local code", "no", answer]


# International Building Code 2021, 1705.17.1: a barrier coating over sheathing; 1705.17: all but drained or masonry.
@pytest.mark.parametrize(
    ("wrb", "drainage", "section", "why"),
    [
        (
            "fluid_applied",
            "adhesive_ribbons",
            "1705.17.1",
            "W1: fluid-applied WRB over sheathing; 1705.17 itself not due: drained over a WRB; periodic by Plumb Line",
        ),
        ("none", "none", "1705.17", "W1: EIFS without drainage over a WRB; periodic by Plumb Line"),
    ],
)
def test_special_inspection_names_its_paragraph_and_who_inspects(
    wrb: str, drainage: str, section: str, why: str, tmp_path: Path
) -> None:
    wall = {"substrate": {"kind": "plywood"}, "framing": {"kind": "wood"}, "wrb": {"kind": wrb}}
    change = {
        "code": {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]},
        "contract": {"inspection_level": "periodic"},
        "parties": {"inspector": {"name": "Plumb Line"}},
        "walls": {"W1": wall | {"drainage": {"kind": drainage}}},
    }
    assert unmarked(rows_of(tmp_path, change)["Special inspection"]) == [section, "yes", why]


def test_walls_that_need_no_inspection_for_different_reasons_are_named_with_their_own(tmp_path: Path) -> None:
    coated = {"substrate": {"kind": "plywood"}, "framing": {"kind": "wood"}, "wrb": {"kind": "fluid_applied"}}
    block = {"substrate": {"kind": "concrete_masonry"}, "framing": {"kind": "none"}, "wrb": {"kind": "none"}}
    change = {
        "code": {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]},
        "contract": {"inspection_level": "periodic"},
        "walls": {
            "W1": coated | {"drainage": {"kind": "adhesive_ribbons"}},
            "W2": block | {"drainage": {"kind": "none"}, "attachment": {"method": "adhesive_full_bed"}},
        },
    }
    # International Building Code 2021, 1705.17: drained over a WRB, or over concrete or masonry, is exempt.
    assert unmarked(rows_of(tmp_path, change)["Special inspection"])[2] == (
        "W1: fluid-applied WRB over sheathing; 1705.17 itself not due: W1 drained over a WRB, "
        "W2 installed over concrete or masonry; periodic"
    )


def test_mesh_of_a_zone_names_it(tmp_path: Path) -> None:
    layers = [
        {"kind": "high_impact", "order": 1, "zone": "high"},
        {"kind": "standard", "order": 2, "zone": "all"},
    ]
    base = {"dry_thickness": "3/32 in", "passes": 2}
    change = {"walls": {"W1": {"base_coat": base, "mesh": {"layers": layers}}}}
    told = rows_of(tmp_path, change)["W1"][0]
    assert told.startswith(
        "base coat 3/32 in, 2 passes (EIFS manufacturer to confirm), heavy mesh in the high zone, standard mesh; "
    )


def test_paragraphs_that_are_not_listed_say_who_reviewed_them(tmp_path: Path) -> None:
    told = {"number": "07 24 00", "title": "EIFS", "rest_reviewed": "reviewed by J. Ortiz; no exceptions"}
    demand = {
        "section": "07 24 00",
        "paragraph": "2.3.B",
        "field": "gloss_target.units",
        "relation": ">=",
        "value": "75",
    }
    rows_of(
        tmp_path,
        {"contract": {"spec_sections": [told, {"number": "09 96 00", "title": "Coatings"}], "demands": [demand]}},
    )
    (made,) = (tmp_path / "out").glob("D02*.txt")
    page = made.read_text("utf-8")
    assert "Section 07 24 00, EIFS. Paragraphs not listed below: reviewed by J. Ortiz; no exceptions." in page
    assert "Section 09 96 00, Coatings. Paragraphs not listed below: not reviewed." in page


def test_a_gloss_stands_with_its_unit_and_angle(tmp_path: Path) -> None:
    demand = {
        "section": "09 96 00",
        "paragraph": "2.4.A",
        "field": "gloss_target.units",
        "relation": ">=",
        "value": "75",
    }
    change = {"contract": {"demands": [demand]}, "gloss_target": {"units": 80, "angle": 60}}
    row = rows_of(tmp_path, change)["09 96 00 2.4.A"]
    # ASTM D523 states gloss in gloss units at an angle.
    assert row[1:3] == ["minimum 75 gloss units at 60 degrees", "80 gloss units at 60 degrees"]


def test_without_a_specification_deviations_are_not_known(tmp_path: Path) -> None:
    rows_of(tmp_path, {})
    (made,) = (tmp_path / "out").glob("D02*.txt")
    assert "Specification: none received. Deviations: not known." in made.read_text("utf-8")


def test_what_the_contractor_gives_of_the_code_is_his_until_the_authority_is_named(tmp_path: Path) -> None:
    rows_of(tmp_path, {"code": {"model": "ibc", "edition": 2018}})
    page = next((tmp_path / "out").glob("D02*.txt")).read_text("utf-8")
    assert (
        "Code: International Building Code, 2018, according to the applicator. Authority having jurisdiction: [" in page
    )


# International Building Code 2021, 1407.4.1: "EIFS with drainage" drain an average of 90 percent in ASTM E2273, those
# too that drain where the section asks for none.
def test_a_wall_drained_by_choice_is_asked_for_the_efficiency_of_every_drained_system(tmp_path: Path) -> None:
    code = {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]}
    wall = {"framing": {"kind": "cold_formed_steel"}, "drainage": {"kind": "adhesive_ribbons"}}
    row = rows_of(tmp_path, {"code": code, "walls": {"W1": wall}})["Drained wall, W1"]
    said = "; drained by choice: adhesive ribbons, drainage efficiency minimum 90%, as for each EIFS with drainage"
    assert unmarked(row)[-1].endswith(said)


def test_a_floor_line_is_drained_as_given_and_else_as_proposed(tmp_path: Path) -> None:
    joint = {"elevation": "E1", "kind": "floor_line", "at": "14 ft", "runs": "horizontal"}
    told: list[str] = []
    for number, outlets in enumerate(({}, {"outlets": ["base"]}, {"outlets": ["base", "joints"]})):
        wall = {"drainage": {"kind": "grooved_board", **outlets}}
        change = {"walls": {"W1": wall}, "elevations": {"E1": {"wall": "W1"}}, "joints": {"J1": joint}}
        (folder := tmp_path / str(number)).mkdir()
        building.build(written(folder, merged(SMALL, change)), folder / "out", ("txt",), ("D02",), draft=True)
        page = next((folder / "out").glob("D02*.txt")).read_text("utf-8")
        told += re.findall(r"(?m)^E1 \| J1: floor line, .* \| (.*)$", page)
    proposed = "flashing with weeps, proposed by the applicator"
    pending = (
        "pending: [Drainage outlets], from the architect, before the decision on the walls; proposed: flashing with "
        "weeps"
    )
    assert told == [pending, proposed, "flashing with weeps"]


def test_the_foot_of_elevations_is_told_once_and_by_what_lies_there(tmp_path: Path) -> None:
    soil = {"wall": "W1", "grade_clearance": "9 in", "grade_is_soil": "yes"}
    paved = {"wall": "W1", "grade_clearance": "9 in", "grade_is_soil": "no"}
    rows = rows_of(tmp_path, {"elevations": {"E1": soil, "E2": soil, "E3": paved}})
    assert rows["E1, E2"] == ["base of the wall", "9 in above soil"]
    assert rows["E3"] == ["base of the wall", "9 in above paving"]


def test_a_build_up_says_its_framing_and_the_thickness_of_its_board(tmp_path: Path) -> None:
    wall = {
        "framing": {"kind": "cold_formed_steel", "spacing": "16 in"},
        "substrate": GYPSUM,
        "insulation": {"kind": "eps", "thickness": "2-1/2 in"},
    }
    rows_of(tmp_path, {"walls": {"W1": wall}})
    page = next((tmp_path / "out").glob("D02*.txt")).read_text("utf-8")
    (told,) = re.findall(r"(?m)^W1 \| (.*) \| .* \| .* \| .*$", page)
    assert told == "glass-mat gypsum on cold-formed steel framing at 16 in, full-bed adhesive, 2-1/2 in EPS"


# Rules of our own: a height without a requirement says nothing, and what is open is asked for.
def test_fasteners_that_local_code_does_not_require_have_no_height(tmp_path: Path) -> None:
    code = {"model": "ibc", "edition": 2021, "jurisdiction": "City of Ambry", "local_fasteners_above": "24 ft"}
    for answer, told in (("no", "no"), ("yes", "yes, above 24 ft")):
        row = rows_of(
            tmp_path, {"code": code | {"local_fasteners_required": answer, "local_fasteners_basis": "letter"}}
        )
        assert unmarked(row["Fasteners, local code"])[1] == told


def test_a_layer_of_mesh_whose_type_is_open_is_asked_for(tmp_path: Path) -> None:
    layers = [{"order": 1, "zone": "high"}, {"order": 2, "kind": "standard", "zone": "all"}]
    row = rows_of(tmp_path, {"walls": {"W1": {"mesh": {"layers": layers}}}})["W1"]
    assert ", [Mesh type] in the high zone, standard mesh; " in row[-1]
