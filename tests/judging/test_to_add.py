"""What a finding says to type, the place of each of its subjects, and what a stop tells in place of an open item."""

from pathlib import Path

import pytest

from specgen.judging.owners import find_owners
from tests.judging.clause_cases import JUDGED
from tests.support import case_of, project_of, told_by

# Clause, the first project of its cases on which it fires, and the lines as they are typed there.
TYPED = {
    "COD-03a": ["attachments.X: {kind: test_report, standard: NFPA 285, assembly: W1}"],
    "COD-03c": ["attachments.X: {kind: test_report, standard: NFPA 268, assembly: W1}"],
    "SUB-06a": ["attachments.X: {kind: letter, signed: yes, parties: [eifs_source, finish_source]}"],
    "HEA-01a": ["attachments.X: {kind: test_report, covers: [gloss], standard: C1549}"],
    "HEA-05b": ["attachments.X: {kind: letter, colors: [C1], parties: [eifs_source], signed: yes}"],
    "SUB-08e": ["people.X: {role: inspector}"],
    "SLT-06a": ["sealants.S1.adhesion_report"],
    "ATT-09b": ["walls.W1.substrate.fastener_schedule"],
    # What is given, or is as good as given, is changed and not added; what was measured is nobody's to change.
    "BAS-01b": [],
    "ATT-05a": [],
    "ATT-03c": [],
    "PLN-02a": [],
    "SLT-06b": [],
}


@pytest.mark.parametrize("code", TYPED)
def test_a_finding_says_what_line_answers_it(code: str, tmp_path: Path) -> None:
    finding = told_by(project_of(tmp_path, JUDGED[code]["fires"][0]["project"]), code).finding
    assert finding is not None
    assert [f"{line.path}: {line.value}".removesuffix(": ") for line in finding.to_add] == TYPED[code]


@pytest.mark.parametrize(
    ("code", "owners"),
    [
        ("COD-03a", ("eifs_source",)),
        ("ATT-09b", ("engineer",)),
        ("SLT-06a", ("sealant_source",)),
        ("SUB-01a", ("general_contractor",)),
        ("BAS-01b", ("applicator",)),
        ("HEA-02a", ("architect",)),
    ],
)
def test_a_finding_has_who_answers_for_it(code: str, owners: tuple[str, ...], tmp_path: Path) -> None:
    project = project_of(tmp_path, JUDGED[code]["fires"][0]["project"])
    finding = told_by(project, code).finding
    assert finding is not None
    assert find_owners(project, finding) == owners


def test_each_subject_has_its_place(tmp_path: Path) -> None:
    walls = {mark: {"base_coat": {"passes": 1}} | BARE for mark in ("W1", "W2", "W3")}
    finding = told_by(project_of(tmp_path, {"walls": walls}), "BAS-01a").finding
    assert finding is not None
    assert finding.subjects == ("W1", "W2", "W3")
    assert [place.path for place in finding.places] == [f"walls.{mark}.base_coat.passes" for mark in finding.subjects]
    assert len({place.line for place in finding.places}) == 3
    assert finding.place == finding.places[0]


BARE = {"substrate": {"kind": "concrete"}, "attachment": {"method": "adhesive_full_bed"}}
UNSEALED = {"package": {"purpose": "mockup_submittal"}, "sealants": {"S1": {"product": "Sealant 61"}}}
APPROVED = {"deviations": {"DV1": {"answers": ["SLT-06a"], "approved_on": "2027-03-15"}}}


@pytest.mark.parametrize(("more", "severity"), [({}, "stop"), (APPROVED, "caution")])
def test_what_a_stop_tells_is_no_open_item_besides(more: dict[str, object], severity: str, tmp_path: Path) -> None:
    judgment = case_of(tmp_path, UNSEALED | more).judgment
    (finding,) = (one for one in judgment.findings if one.code == "SLT-06a")
    assert finding.severity == severity
    assert "sealants.S1.adhesion_report" not in [item.path for item in judgment.open_items]


def test_what_no_stop_tells_stays_open(tmp_path: Path) -> None:
    # Under other safety rules the missing program is a caution: it is owed all the same.
    change = {"package": {"purpose": "work_submittal"}, "safety": {"rules": "other"}}
    judgment = case_of(tmp_path, change).judgment
    assert "ACC-07b" in [finding.code for finding in judgment.findings]
    assert "safety.hazcom" in [item.path for item in judgment.open_items]
