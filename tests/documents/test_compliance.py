"""Tables of the compliance document: what the contract demands against what there is, and fire tests owed."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen import building
from tests.support import SMALL, merged, written


def rows_of(folder: Path, change: Any) -> dict[str, list[str]]:
    """The rows of the tables of D02 for the small project with a change, by their first cell."""
    building.build(written(folder, merged(SMALL, change)), folder / "out", ("txt",), ("D02",), draft=True)
    (made,) = (folder / "out").glob("D02*.txt")
    rows = [line.split(" | ") for line in made.read_text("utf-8").splitlines() if " | " in line]
    return {row[0]: row[1:] for row in rows}


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


# International Building Code, 2603.5: foam plastic in walls of types I to IV, any height; type V owes no such test. The
# mark behind a reason is that of its source.
@pytest.mark.parametrize(
    ("kind", "board", "due", "why"),
    [
        ("IIB", "eps", "yes", "foam plastic in an exterior wall of type IIB, {where}; no report listed"),
        ("VB", "eps", "no", "construction type VB is not type I to IV"),
        ("IIB", "mineral_wool", "no", "the board is not foam plastic; {else}: ask the building official"),
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
        "else": "a combustible water-resistive barrier may still require the test",
    }
    radiant = {
        "where": "regardless of fire separation; a thin base coat is not an exempt covering; fire separation distance "
        "48 ft to 60 ft",
        "else": "combustible coats may still require the test",
    }
    for subject, standard, words in (
        ("Fire propagation, W1", "NFPA 285", propagation),
        ("Radiant heat, W1", "NFPA 268", radiant),
    ):
        assert unmarked(rows[subject]) == [standard, due, why.format(**words)]


def test_a_tall_building_is_not_told_of_the_one_story_exception(tmp_path: Path) -> None:
    change = {
        "code": {"model": "ibc", "edition": 2021, "construction_type": "IA", "occupancy_groups": ["B"]},
        "building": {"stories": 12},
        "walls": {"W1": {"insulation": {"kind": "eps"}}},
    }
    why = "foam plastic in an exterior wall of type IA, regardless of height; no report listed"
    assert unmarked(rows_of(tmp_path, change)["Fire propagation, W1"]) == ["NFPA 285", "yes", why]


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
    assert unmarked(rows["Radiant heat, W1"])[-1].endswith("; report A4")
    assert unmarked(rows["Fire propagation, W1"])[-1].endswith("; no report listed")


def test_under_a_local_code_the_authority_is_asked_for_the_fire_class(tmp_path: Path) -> None:
    rows = rows_of(tmp_path, {"code": {"model": "other", "construction_type": "IIB"}})
    ask = "Confirm the fire class of the walls with the building official."
    assert rows["Fire class of the walls"] == ["Local code", "not evaluated", ask]
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
    assert "section 1407[a]" in told[2018] and "section 1705.16[b]" in told[2018]
    assert "\n[a] International Building Code 2018, 1407\n" in told[2018]
    assert "\n[b] Not verified; see D05" in told[2018]
    assert "section 1705.17[b]" in told[2021] and "Not verified" not in told[2021]


def test_fasteners_of_the_local_code_are_told_by_height_and_by_elevation(tmp_path: Path) -> None:
    change = {
        "code": {
            "jurisdiction": "City of Ashmoor",
            "local_fasteners_required": "yes",
            "local_fasteners_above": "24 ft",
        },
        "elevations": {"E1": {"width": "40 ft"}, "E2": {"local_fasteners_required": "no"}},
    }
    row = rows_of(tmp_path, change)["Fasteners required by local code"]
    assert row == ["City of Ashmoor", "yes, above 24 ft", "E2: no"]
