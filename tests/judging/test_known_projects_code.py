"""Whole projects with what an expert says of them, as far as the building code goes.

What he says is judgment of the trade; the texts behind it stand in the cases of the clauses.
"""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.finding import Judgment, Severity, Verdict
from tests.judging.test_outcomes import WHOLE, verdicts
from tests.support import case_of, merged

# A one-story shop of steel, 60 ft from the lot line, its walls of foam on concrete.
SHOP = merged(
    WHOLE,
    {
        "package": {"purpose": "mockup_submittal"},
        "code": {"construction_type": "IIB"},
        "building": {"stories": 1, "eifs_top": "18 ft"},
        "elevations": {"E1": {"height": "18 ft", "fire_separation": "60 ft"}},
    },
)
REPORTS = {
    "A1": {"kind": "test_report", "standard": "NFPA 285", "assembly": "W1"},
    "A2": {"kind": "test_report", "standard": "NFPA 268", "assembly": "W1"},
}


def stops_of_code(judgment: Judgment) -> set[str]:
    return {f.code for f in judgment.of(Severity.STOP) if f.rule in ("ATT-03", "COD-01", "COD-02", "COD-03", "COD-04")}


def test_a_low_shop_far_from_the_line_is_stopped_for_its_fire_reports_and_for_nothing_else(tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {}, SHOP).judgment
    assert judgment.stopped
    assert stops_of_code(judgment) == {"COD-03a", "COD-03c"}
    wall = judgment.walls["W1"]
    assert wall.verdict is Verdict.NOT_YET_KNOWN
    assert {"NFPA 285 report of this wall", "NFPA 268 report of this wall"} <= set(wall.documents)
    # The finish itself may go on: nothing but the want of documents speaks against it.
    drafted = case_of(tmp_path, {"package": {"purpose": "design_draft"}}, SHOP).judgment
    assert verdicts(drafted) == {"W1": Verdict.YES}


@pytest.mark.parametrize(
    ("attachments", "stops"),
    [
        (REPORTS, set()),
        ({"A1": REPORTS["A1"]}, {"COD-03c"}),
        ({"A2": REPORTS["A2"]}, {"COD-03a"}),
        ({"A1": REPORTS["A1"] | {"standard": "NFPA 285 and NFPA 268"}}, set()),
    ],
    ids=["both", "propagation only", "radiant only", "one report of both"],
)
def test_each_report_lifts_its_own_stop(attachments: Any, stops: set[str], tmp_path: Path) -> None:
    assert stops_of_code(case_of(tmp_path, {"attachments": attachments}, SHOP).judgment) == stops


def test_an_approved_deviation_turns_the_missing_reports_into_cautions(tmp_path: Path) -> None:
    deviation = {"D1": {"answers": ["COD-03"], "approved_on": "2027-02-01"}}
    judgment = case_of(tmp_path, {"deviations": deviation}, SHOP).judgment
    assert stops_of_code(judgment) == set()
    assert {f.code for f in judgment.of(Severity.CAUTION) if f.lifted_by == "D1"} == {"COD-03a", "COD-03c"}


@pytest.mark.parametrize(
    "code", [{"construction_type": "VB"}, {"model": "irc"}, {"model": "other"}], ids=["type V", "residential", "local"]
)
def test_the_same_shop_owes_no_reports_where_the_building_code_does_not_restrict_it(
    code: dict[str, str], tmp_path: Path
) -> None:
    judgment = case_of(tmp_path, {"code": code}, SHOP).judgment
    assert stops_of_code(judgment) == set()
    asked = {f.code for f in judgment.findings if f.code == "COD-03d"}
    assert bool(asked) is (code.get("model") == "other")


# Four stories of type IIA with a lower wing; the city wants fasteners above two stories, 24 ft above grade here.
TOWER = merged(
    WHOLE,
    {
        "code": {"construction_type": "IIA", "local_fasteners_required": "yes", "local_fasteners_above": "24 ft"},
        "building": {"stories": 4, "eifs_top": "48 ft", "mean_roof_height": "48 ft"},
        "walls": {"W2": WHOLE["walls"]["W1"]},
        "elevations": {
            "E1": {"wall": "W1", "base_above_grade": "0 ft", "height": "48 ft"},
            "E2": {
                "wall": "W2",
                "base_above_grade": "0 ft",
                "height": "22 ft",
                "facing": "W",
                "reflecting_surface_near": "no",
            },
        },
    },
)


def test_fasteners_above_two_stories_stop_the_tower_and_leave_the_wing(tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {}, TOWER).judgment
    assert verdicts(judgment) == {"W1": Verdict.NO, "W2": Verdict.YES}
    assert {mark: wall.deciding for mark, wall in judgment.walls.items()} == {"W1": ("ATT-03b",), "W2": ()}
    (finding,) = judgment.of(Severity.STOP)
    assert finding.subjects == ("E1",)
    assert "above 24 ft" in finding.message and "48 ft" in finding.message


def test_the_wing_stays_as_well_by_the_answer_of_the_authority(tmp_path: Path) -> None:
    answered = {
        "code": {"local_fasteners_above": "drop"},
        "elevations": {"E2": {"local_fasteners_required": "no"}},
    }
    judgment = case_of(tmp_path, answered, TOWER).judgment
    assert verdicts(judgment) == {"W1": Verdict.NO, "W2": Verdict.YES}
    assert {mark: wall.deciding for mark, wall in judgment.walls.items()} == {"W1": ("ATT-03c",), "W2": ()}


def test_a_rule_for_the_whole_building_stops_the_wing_too(tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"code": {"local_fasteners_above": "drop"}}, TOWER).judgment
    assert verdicts(judgment) == {"W1": Verdict.NO, "W2": Verdict.NO}


def test_the_tower_is_not_yet_known_until_its_height_is(tmp_path: Path) -> None:
    unknown = {"elevations": {"E1": {"height": "drop"}}}
    judgment = case_of(tmp_path, unknown, TOWER).judgment
    assert verdicts(judgment) == {"W1": Verdict.NOT_YET_KNOWN, "W2": Verdict.YES}
    assert judgment.walls["W1"].undecided == ("ATT-03",)


# Block under old paint, pulled to 21 psi, its paint left on: International Building Code, special inspection and its
# exceptions; drained walls by 1407.4.1 and R703.9.
@pytest.mark.parametrize("model", ["ibc", "irc"])
def test_painted_block_owes_neither_special_inspection_nor_a_drained_wall(model: str, tmp_path: Path) -> None:
    block = {
        "code": {"model": model, "construction_type": "VB", "occupancy_groups": ["R-2"]},
        "contract": {"inspection_level": "none"},
        "walls": {
            "W1": {
                "substrate": {
                    "kind": "existing_coated",
                    "base": "masonry",
                    "age_days": "drop",
                    "coating_removed": "no",
                    "bond_limit": "15 psi",
                    "bond_result": "21 psi",
                }
            }
        },
    }
    judgment = case_of(tmp_path, block, WHOLE).judgment
    assert not {f.code for f in judgment.findings} & {"COD-02a", "COD-04a", "ATT-08a"}
    assert judgment.walls["W1"].verdict is not Verdict.NO


# Edition, what the specification cites, and where the right section was read. IBC 2021: 1407 in the Virginia
# Construction Code 2021, 1705.17 on page 484 of the code; IBC 2018: 1407 between 1406 and 1408 of Chicago Title 14B,
# 1705.16 from memory; IBC 2015: 1408 in the contents of the illustrated handbook.
@pytest.mark.parametrize(
    ("edition", "cited", "basis"),
    [
        (
            2021,
            {"cited_eifs_section": "1408"},
            "International Building Code, ICC, 2021, section 1407, as told in Virginia",
        ),
        (
            2018,
            {"cited_eifs_section": "1408"},
            "International Building Code, ICC, 2018, section 1407, between 1406 on metal",
        ),
        (2015, {"cited_eifs_section": "1407"}, "Illustrated handbook of the International Building Code, ICC, 2015"),
        (
            2021,
            {"cited_inspection_section": "1705.16"},
            "International Building Code, ICC, 2021, page 484, sections 1407.6 and 1705.17",
        ),
        (
            2018,
            {"cited_inspection_section": "1705.17"},
            "from memory (section numbers of the International Building Code",
        ),
    ],
)
def test_a_wrong_citation_rests_on_the_text_of_the_adopted_edition(
    edition: int, cited: dict[str, str], basis: str, tmp_path: Path
) -> None:
    judgment = case_of(tmp_path, {"code": {"edition": edition} | cited}, WHOLE).judgment
    (finding,) = (f for f in judgment.findings if f.code in ("COD-01a", "COD-01b"))
    assert str(finding.basis).startswith(basis)
    assert ";" not in str(finding.basis)
