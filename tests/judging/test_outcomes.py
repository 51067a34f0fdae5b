"""What judging adds up to: verdicts, open items, findings with their subjects. The behavior is ours."""

from pathlib import Path
from typing import Any

import pytest

from specgen.vocabulary.finding import Severity, Verdict
from tests.support import SMALL, case_of, merged

# A wall on which every clause that counts for a plain yes can be judged, and none fires.
WHOLE: dict[str, Any] = merged(
    SMALL,
    {
        "code": {
            "model": "ibc",
            "edition": 2021,
            "local_fasteners_required": "no",
            "construction_type": "IIB",
            "occupancy_groups": ["B"],
            "required_r_value": "R-6",
            "wind_standard": "asce_7_16",
        },
        "building": {"eifs_top": "30 ft", "stories": 2},
        "contract": {"inspection_level": "periodic"},
        "site": {"altitude": "300 ft"},
        "gloss_target": {"units": 60, "angle": 60, "tolerance": 5},
        "aesthetic_joint": {"depth": "1/2 in"},
        "elevations": {"E1": {"reflecting_surface_near": "no", "fire_separation": "40 ft"}},
        "colors": {
            "C1": {
                "lrv": 44,
                "emittance": 0.8,
                "solar_reflectance": 0.52,
                "solar_reflectance_method": "C1549",
                "emittance_method": "C1371",
                "metallic": "no",
            }
        },
        "mockup": {"criteria": []},
        "walls": {
            "W1": {
                "framing": {"kind": "none"},
                "substrate": {"kind": "concrete", "age_days": 60, "condition": []},
                "wrb": {"kind": "none"},
                "attachment": {"method": "adhesive_full_bed"},
                "drainage": {"kind": "none"},
                "base_coat": {"class": "PB"},
                "insulation": {
                    "kind": "eps",
                    "thickness": "2 in",
                    "c578_type": "I",
                    "e2430": "yes",
                    "aged": "yes",
                    "flame_spread": 20,
                    "smoke_developed": 300,
                    "r_value": "R-7.2",
                    "board_joint_to_reveal": "4 in",
                    "board_joint_to_opening_corner": "8 in",
                },
            }
        },
    },
)


@pytest.mark.parametrize(
    ("change", "verdict"),
    [
        ({}, Verdict.YES),
        ({"walls": {"W1": {"insulation": {"kind": "mineral_wool"}}}}, Verdict.NO),
        ({"walls": {"W1": {"substrate": {"age_days": 20}}}}, Verdict.WITH_MEASURES),
        ({"walls": {"W1": {"insulation": {"c578_type": "drop"}}}}, Verdict.NOT_YET_KNOWN),
        # No drainage is due on concrete, but a drained wall has rules of its own.
        ({"walls": {"W1": {"drainage": "drop"}}, "code": {"model": "irc"}}, Verdict.NOT_YET_KNOWN),
        ({"code": {"local_fasteners_required": "yes"}}, Verdict.NO),
        ({"code": {"local_fasteners_required": "drop"}}, Verdict.NOT_YET_KNOWN),
        ({"walls": {"W1": {"base_coat": {"passes": 1}}}}, Verdict.NO),
        # Stops of other groups hold the package, not the wall.
        ({"smoothing": {"coats": 1}}, Verdict.YES),
        # A lifted stop is a measure.
        (
            {
                "walls": {"W1": {"base_coat": {"passes": 1}}},
                "deviations": {"D1": {"answers": ["BAS-01"], "approved_on": "2027-01-01"}},
            },
            Verdict.WITH_MEASURES,
        ),
    ],
)
def test_a_wall_has_the_verdict_of_what_fired_and_what_waits(change: Any, verdict: Verdict, tmp_path: Path) -> None:
    judgment = case_of(tmp_path, change, WHOLE).judgment
    assert judgment.walls == {"W1": verdict}, (judgment.deciding, judgment.undecided)


def test_a_finding_on_an_elevation_counts_for_its_own_wall_only(tmp_path: Path) -> None:
    second = {
        "walls": {"W2": WHOLE["walls"]["W1"]},
        "elevations": {
            "E1": {"wall": "W1", "grade_clearance": "3 in"},
            "E2": {
                "wall": "W2",
                "grade_clearance": "9 in",
                "reflecting_surface_near": "no",
                "fire_separation": "40 ft",
            },
        },
    }
    assert case_of(tmp_path, second, WHOLE).judgment.walls == {"W1": Verdict.NO, "W2": Verdict.YES}


def test_a_fired_clause_is_one_finding_with_all_its_subjects(tmp_path: Path) -> None:
    walls = {
        "W1": {"attachment": {"cure_hours": 12}},
        "W2": merged(SMALL["walls"]["W1"], {"attachment": {"cure_hours": 8}}),
        "W3": merged(SMALL["walls"]["W1"], {"attachment": {"cure_hours": 30}}),
    }
    (finding,) = (f for f in case_of(tmp_path, {"walls": walls}).judgment.findings if f.code == "FIN-03a")
    assert finding.subjects == ("W1", "W2")
    assert finding.found == "12 (W1); 8 (W2)"
    assert finding.message == (
        "W1: Adhesive is given 12 h; 24 h is the least. W2: Adhesive is given 8 h; 24 h is the least."
    )
    assert finding.place.path == "walls.W1.attachment.cure_hours"


def test_subjects_that_say_the_same_share_a_sentence(tmp_path: Path) -> None:
    walls = {
        "W1": {"attachment": {"method": "mechanical"}},
        "W2": merged(SMALL["walls"]["W1"], {"attachment": {"method": "mechanical"}}),
    }
    (finding,) = (f for f in case_of(tmp_path, {"walls": walls}).judgment.findings if f.code == "ATT-01a")
    assert (finding.subjects, finding.found) == (("W1", "W2"), "mechanical")
    assert finding.message.count("Fasteners") == 1


def test_a_clause_that_cannot_be_judged_is_neither_fired_nor_passed(tmp_path: Path) -> None:
    judgment = case_of(tmp_path).judgment
    waiting = {n.code for n in judgment.not_judged}
    assert "BAS-01b" in waiting
    assert not waiting & {f.code for f in judgment.findings}
    assert all(n.needs for n in judgment.not_judged)


def test_an_absent_collection_is_one_open_item_and_holds_its_clauses(tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"package": {"purpose": "mockup_submittal"}}).judgment
    (item,) = (i for i in judgment.open_items if i.path.startswith("sealants"))
    assert (item.path, item.ring) == ("sealants", "mockup")
    assert {"SLT-04a", "SLT-04d"} <= set(item.holds_up)


@pytest.mark.parametrize(
    ("purpose", "rings", "stops"),
    [
        ("design_draft", {"verdict"}, False),
        ("mockup_submittal", {"verdict", "mockup"}, True),
        ("work_submittal", {"verdict", "mockup", "work"}, True),
        ("resubmittal", {"verdict", "mockup", "work"}, True),
        ("closeout", {"verdict", "mockup", "work", "closeout"}, True),
    ],
)
def test_a_purpose_owes_its_rings(purpose: str, rings: set[str], stops: bool, tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"package": {"purpose": purpose}}).judgment
    assert {item.ring for item in judgment.open_items} == rings
    assert judgment.stops_when_open is stops
    assert judgment.stopped is stops


def test_a_draft_counts_the_rings_it_does_not_owe(tmp_path: Path) -> None:
    later = case_of(tmp_path).judgment.later_rings
    assert set(later) == {"mockup", "work", "closeout"}
    assert later["mockup"] > later["closeout"] > 0


def test_optional_fields_and_fields_that_do_not_apply_are_owed_by_nobody(tmp_path: Path) -> None:
    case = case_of(tmp_path, {"package": {"purpose": "closeout"}, "code": {"model": "irc"}})
    paths = {item.path for item in case.judgment.open_items}
    assert not paths & {
        "code.construction_type",
        "contract.demands",
        "deviations",
        "walls.W1.substrate.bond_limit",
        "code.cited_eifs_section",
    }
    assert "walls.W1.substrate.age_days" in paths


def test_papers_are_not_judged_in_a_draft(tmp_path: Path) -> None:
    papers = {"safety": {"rules": "us_osha"}}
    assert "ACC-07a" not in {f.code for f in case_of(tmp_path, papers).judgment.findings}
    submittal = merged(papers, {"package": {"purpose": "mockup_submittal"}})
    fired = {f.code: f for f in case_of(tmp_path, submittal).judgment.findings}
    assert fired["ACC-07a"].severity is Severity.STOP
