"""Tables of the compliance document: what the contract demands against what there is, and fire tests owed."""

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
            ["Dry thickness of the base coat", "at least 3/32 in (2.4 mm)", "[open]", "open"],
        ),
        (
            {"field": "sealants.*.c920_class", "relation": "in", "value": "50, 100/50"},
            {},
            ["Movement class of the sealant", "one of 50, 100/50", "[open]", "open"],
        ),
        (
            {"field": "mockup.includes", "relation": ">=", "value": "full_panel, sealant_joint"},
            {"mockup": {"includes": ["full_panel", "opening"]}},
            [
                "Details shown by the mockup",
                "at least full panel, sealant joint",
                "full panel, opening",
                "not met",
            ],
        ),
        (
            {"field": "walls.*.base_coat.dry_thickness"},
            {},
            ["Dry thickness of the base coat", "[Value demanded]", "", "open"],
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
            ["Curing time of the adhesive", "at least 36 h", "W1: 48 h; W2: 40 h", "met"],
        ),
    ],
    ids=["absent value", "absent members", "list", "no figure demanded", "walls that differ"],
)
def test_a_demand_of_the_contract_stands_beside_what_there_is(
    demand: dict[str, str], given: Any, row: list[str], tmp_path: Path
) -> None:
    demands = [{"section": "07 24 00", "paragraph": "2.3.B"} | demand]
    assert rows_of(tmp_path, given | {"contract": {"demands": demands}})["07 24 00 2.3.B"] == row


# IBC, section 1402.5: walls of types I to IV that are higher than 40 ft; the mark a is that of its source.
@pytest.mark.parametrize(
    ("kind", "stories", "top", "due", "why"),
    [
        ("IIB", 3, "30 ft", "yes", "3 stories, and not of type V; no report is listed"),
        ("IIB", 1, "50 ft", "yes", "EIFS above 40 ft (12.2 m)[a], and not of type V; no report is listed"),
        ("IIB", 1, "30 ft", "no", "one story, and no EIFS above 40 ft (12.2 m)[a]"),
        ("VB", 3, "50 ft", "no", "construction of type VB"),
    ],
)
def test_a_wall_owes_the_fire_propagation_test_by_its_type_and_height(
    kind: str, stories: int, top: str, due: str, why: str, tmp_path: Path
) -> None:
    code = {"model": "ibc", "edition": 2021, "construction_type": kind, "occupancy_groups": ["B"]}
    change = {"code": code, "building": {"stories": stories, "eifs_top": top}}
    assert rows_of(tmp_path, change)["Fire propagation, W1"] == ["NFPA 285", due, why]
