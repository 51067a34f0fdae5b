"""Cases in which submittals of the trade are often refused, each with the clauses that must tell it and those that must
not. What a clause rests on stands in its own cases; the behavior checked here is ours."""

from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.model.finding import Verdict
from specgen.model.problem import Refused
from specgen.output import package
from tests.support import SMALL, case_of, merged, written

SENT = {"package": {"purpose": "mockup_submittal", "date": "2027-03-01"}}
PAINTED = {"substrate": {"kind": "existing_coated", "coating_removed": "no"}}
REPORT = {"kind": "test_report", "signed": "yes", "issued_on": "2026-05-04", "assembly": "W1"}
LETTER = {"kind": "letter", "signed": "yes", "project_named": "yes", "parties": ["eifs_source", "finish_source"]}
TWO_SOURCES = {"eifs_source": {"name": "Brindle Board"}, "finish_source": {"name": "Lantern Coats"}}
DEMAND = {"paragraph": "2.3.B", "field": "walls.*.base_coat.passes", "relation": ">=", "value": "2"}


def code(**fields: Any) -> dict[str, Any]:
    return {"code": {"model": "ibc", "edition": 2021, **fields}}


def wall(**fields: Any) -> dict[str, Any]:
    return {"walls": {"W1": fields}}


def papers(**listed: Any) -> dict[str, Any]:
    return {"attachments": listed}


# What the file says, the clauses that tell it, and those that must keep silent.
CASES: list[tuple[str, list[dict[str, Any]], set[str], set[str]]] = [
    (
        "a specification cites the sections of an older edition",
        [code(cited_eifs_section="1408.2", cited_inspection_section="1705.16", wind_standard="asce_7_10")],
        {"COD-01a", "COD-01b", "COD-01c"},
        set(),
    ),
    (
        "a specification cites the sections of the adopted edition",
        [code(cited_eifs_section="1407.4", cited_inspection_section="1705.17", wind_standard="asce_7_16")],
        set(),
        {"COD-01a", "COD-01b", "COD-01c"},
    ),
    ("local code wants fasteners", [code(local_fasteners_required="yes")], {"ATT-03a"}, set()),
    ("local code does not want fasteners", [code(local_fasteners_required="no")], set(), {"ATT-03a"}),
    ("a painted wall and no bond report", [SENT, wall(**PAINTED), papers(A1=REPORT)], {"ATT-05d", "ATT-05e"}, set()),
    (
        "a painted wall and a signed bond report that names the place of failure",
        [
            SENT,
            wall(
                substrate=PAINTED["substrate"]
                | {"bond_report": "A1", "bond_limit": "30 psi", "bond_result": "60 psi", "bond_failure": "substrate"}
            ),
            papers(A1=REPORT),
        ],
        {"ATT-05e"},
        {"ATT-05a", "ATT-05c", "ATT-05d"},
    ),
    (
        "a painted wall and a bond report of a weak pull",
        [wall(substrate=PAINTED["substrate"] | {"bond_limit": "30 psi", "bond_result": "12 psi"})],
        {"ATT-05a"},
        set(),
    ),
    (
        "a painted wall whose paint comes off",
        [wall(substrate=PAINTED["substrate"] | {"coating_removed": "yes"})],
        set(),
        {"ATT-05a", "ATT-05d", "ATT-05e"},
    ),
    ("two sources and no letter", [SENT, {"parties": TWO_SOURCES}, papers(A1=REPORT)], {"SUB-06a"}, set()),
    ("two sources and a letter of both", [SENT, {"parties": TWO_SOURCES}, papers(A1=LETTER)], set(), {"SUB-06a"}),
    (
        "two sources and a letter that nobody signed",
        [SENT, {"parties": TWO_SOURCES}, papers(A1=LETTER | {"signed": "no"})],
        {"SUB-04a", "SUB-06a"},
        set(),
    ),
    (
        "one source for wall and finish",
        [SENT, {"parties": TWO_SOURCES | {"finish_source": {"name": "brindle board"}}}, papers(A1=REPORT)],
        set(),
        {"SUB-06a"},
    ),
    (
        "a report too old, of another wall and unsigned",
        [
            {"contract": {"award_date": "2027-01-11", "report_max_age_years": 3}, "elevations": {"E1": {"wall": "W1"}}},
            {"walls": {"W2": SMALL["walls"]["W1"]}},
            papers(A1={"kind": "test_report", "signed": "no", "issued_on": "2023-01-10", "assembly": "W2"}),
        ],
        {"SUB-03a", "SUB-03c", "SUB-04a"},
        set(),
    ),
    (
        "a report of the day three years before the award, of this wall, signed",
        [
            {"contract": {"award_date": "2027-01-11", "report_max_age_years": 3}, "elevations": {"E1": {"wall": "W1"}}},
            papers(A1={"kind": "test_report", "signed": "yes", "issued_on": "2024-01-11", "assembly": "W1"}),
        ],
        set(),
        {"SUB-03a", "SUB-03c", "SUB-04a"},
    ),
    (
        "a custom color ordered when the mockup is made",
        [
            {
                "colors": {"C1": {"kind": "custom", "lead_time_days": 21}},
                "schedule": {"color_sample_order_on": "2027-03-01", "spray_start": "2027-05-10"},
                "mockup": {"planned_on": "2027-03-08"},
            }
        ],
        {"SCH-02a"},
        {"SCH-02c"},
    ),
    (
        "a custom color of the shelf's lead time",
        [{"colors": {"C1": {"kind": "custom", "lead_time_days": 3}}}],
        {"SCH-02c"},
        set(),
    ),
    (
        "an open platform under the safety rules of the United States",
        [{"safety": {"rules": "us_osha"}, "access": {"X1": {"face_gap": "20 in", "front_guard": "none"}}}],
        {"ACC-05c"},
        {"ACC-05d"},
    ),
    (
        "an open platform under other safety rules",
        [{"safety": {"rules": "other"}, "access": {"X1": {"face_gap": "20 in", "front_guard": "none"}}}],
        {"ACC-05d"},
        {"ACC-05c"},
    ),
]


@pytest.mark.parametrize(("said", "parts", "told", "silent"), CASES, ids=[case[0] for case in CASES])
def test_what_is_often_refused_is_told(
    said: str, parts: list[dict[str, Any]], told: set[str], silent: set[str], tmp_path: Path
) -> None:
    change: dict[str, Any] = {}
    for part in parts:
        change = merged(change, part)
    fired = {finding.code for finding in case_of(tmp_path, change).judgment.findings}
    assert told <= fired, said
    assert not silent & fired, said


@pytest.mark.parametrize(("passes", "outcome"), [(1, {"W1"}), (2, set())])
def test_a_demand_for_some_walls_is_held_against_those_only(passes: int, outcome: set[str], tmp_path: Path) -> None:
    change = {
        "contract": {"demands": [DEMAND | {"for": ["W1"]}]},
        "walls": {
            "W1": {"base_coat": {"passes": passes}},
            "W2": merged(SMALL["walls"]["W1"], {"base_coat": {"passes": 1}}),
        },
    }
    judgment = case_of(tmp_path, change).judgment
    found = [f for f in judgment.findings if f.code == "SUB-05a"]
    assert bool(found) is bool(outcome)
    assert all("W2" not in f.message for f in found)


def test_a_declared_substitution_answers_the_demand(tmp_path: Path) -> None:
    bare = {
        "contract": {"demands": [DEMAND | {"for": ["W1"]}]},
        "walls": {"W1": {"base_coat": {"passes": 1}}},
        "deviations": {},
    }
    declared = merged(bare, {"deviations": {"D1": {"kind": "substitution", "answers": ["2.3.B"]}}})
    assert "SUB-05a" in {f.code for f in case_of(tmp_path, bare).judgment.findings}
    assert "SUB-05a" not in {f.code for f in case_of(tmp_path, declared).judgment.findings}
    assert outcomes(case_of(tmp_path, declared)) == ["substitution D1, not approved"]
    approved = merged(declared, {"deviations": {"D1": {"approved_on": "2027-02-01"}}})
    assert outcomes(case_of(tmp_path, approved)) == ["substitution D1, approved February 1, 2027"]


def outcomes(case: pipeline.JudgedProject) -> list[str]:
    """The status in the compliance list, for the one paragraph that these cases demand."""
    context = case.context
    made = package.make_package(
        context.project, context.standards, case.judgment, context.resolve, ("txt",), ("D02",), True
    )
    (text,) = (content.decode() for name, content in made.files.items() if name.endswith(".txt"))
    return [line.split(" | ")[-2] for line in text.splitlines() if "2.3.B |" in line and line.endswith(" | D08")]


def test_two_coating_systems_in_one_project_are_refused_in_one_message(tmp_path: Path) -> None:
    file = written(tmp_path, SMALL | {"coating_system": ["one.yaml", "other.yaml"]})
    with pytest.raises(Refused) as refused:
        pipeline.check(file)
    assert [problem.path for problem in refused.value.problems] == ["coating_system"]


@pytest.mark.parametrize("purpose", ["design_draft", "mockup_submittal", "work_submittal", "closeout"])
def test_a_project_that_answers_nothing_is_unknown_and_not_well(purpose: str, tmp_path: Path) -> None:
    judgment = case_of(tmp_path, {"package": {"purpose": purpose}}).judgment
    assert [wall.verdict for wall in judgment.walls.values()] == [Verdict.NOT_YET_KNOWN]
    assert judgment.open_items
    assert judgment.stops_when_open is (purpose != "design_draft")
    assert len(judgment.not_judged) > 100
