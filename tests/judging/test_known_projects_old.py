"""Whole jobs on old walls, and a set that comes back from review, with the judgment that an expert reaches.

The figures are common practice, no source, or from memory; the year of lead paint is that of 40 CFR 745.103 (2015).
"""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.model.finding import Finding, Judgment, Severity, Verdict
from specgen.output import package
from tests.judging.test_outcomes import WHOLE, verdicts
from tests.support import case_of, merged

# A shop of 1964: painted block that chalks, tested for lead and asbestos, pulled at 21 psi three times on 900 sq ft.
PAINTED: dict[str, Any] = {
    "package": {"purpose": "mockup_submittal", "date": "2027-03-01"},
    "building": {"built_year": 1964, "eifs_top": "16 ft"},
    "walls": {
        "W1": {
            "framing": {"kind": "none"},
            "substrate": {
                "kind": "existing_coated",
                "condition": ["chalking"],
                "coating_removed": "no",
                "lead_tested": "yes",
                "lead_found": "no",
                "asbestos_tested": "yes",
                "asbestos_found": "no",
                "bond_report": "A1",
                "bond_limit": "15 psi",
                "bond_result": "21 psi",
                "bond_pulls": 3,
                "bond_failure": "old_coating",
            },
            "wrb": {"kind": "none"},
            "attachment": {"method": "adhesive_full_bed", "ultimate_strength": "180 psf", "safety_factor": 3},
            "drainage": {"kind": "none"},
        }
    },
    "elevations": {"E1": {"wall": "W1", "width": "60 ft", "height": "15 ft", "design_pressure_outward": "28 psf"}},
    "code": {"local_fasteners_required": "no"},
    "attachments": {"A1": {"kind": "test_report", "signed": "yes", "issued_on": "2027-01-20"}},
}
BARE = {"bond_report": "drop", "bond_result": "drop", "bond_pulls": "drop", "bond_failure": "drop"}


def judged(folder: Path, **substrate: Any) -> Judgment:
    change = {"walls": {"W1": {"substrate": substrate}}}
    return case_of(folder, merged(PAINTED, change)).judgment


def of_attachment(judgment: Judgment) -> dict[str, Finding]:
    return {f.code: f for f in judgment.findings if f.rule in ("ATT-05", "ATT-06", "ATT-10")}


def waiting(judgment: Judgment) -> set[str]:
    return {clause.code for clause in judgment.not_judged if clause.rule in ("ATT-05", "ATT-06", "ATT-10")}


def test_painted_chalking_block_with_good_pulls_needs_its_measures_and_nothing_more(tmp_path: Path) -> None:
    judgment = judged(tmp_path)
    told = of_attachment(judgment)
    assert {code: finding.severity for code, finding in told.items()} == {
        "ATT-05e": Severity.CAUTION,
        "ATT-06b": Severity.CAUTION,
    }
    assert "wash off the chalk" in told["ATT-06b"].remedy
    assert waiting(judgment) == set()


def test_the_painted_block_may_take_the_finish_with_its_measures(tmp_path: Path) -> None:
    block = merged(PAINTED["walls"]["W1"], {"substrate": {"base": "masonry"}})
    shop = {
        "building": PAINTED["building"],
        "contract": {"inspection_level": "none"},
        "walls": {"W1": block},
        "attachments": {"A1": PAINTED["attachments"]["A1"] | {"standard": "ASTM D7234"}},
        "elevations": {"E1": PAINTED["elevations"]["E1"]},
    }
    judgment = case_of(tmp_path, shop, merged(WHOLE, {"walls": {"W1": {"substrate": {"age_days": "drop"}}}})).judgment
    assert verdicts(judgment) == {"W1": Verdict.WITH_MEASURES}
    # Neither special inspection nor a drained wall is asked of masonry, painted or not.
    assert judgment.walls["W1"].deciding == ("ATT-05e", "ATT-06b")


@pytest.mark.parametrize(
    ("substrate", "code", "severity"),
    [
        ({"bond_limit": "2 psi", "bond_result": "3 psi"}, "ATT-05f", Severity.STOP),
        ({"bond_pulls": 2}, "ATT-05h", Severity.CAUTION),
        ({"condition": ["chalking", "loose_coating"]}, "ATT-06h", Severity.STOP),
        ({"lead_tested": "no", "lead_found": "drop"}, "ATT-10a", Severity.STOP),
        ({"asbestos_tested": "no", "asbestos_found": "drop"}, "ATT-10c", Severity.STOP),
        ({"bond_report": "drop"}, "ATT-05d", Severity.STOP),
    ],
)
def test_one_thing_wrong_with_the_painted_block_is_told(
    substrate: dict[str, Any], code: str, severity: Severity, tmp_path: Path
) -> None:
    told = of_attachment(judged(tmp_path, **substrate))
    assert told[code].severity is severity
    assert {"ATT-05e", code} <= set(told) <= {"ATT-05e", "ATT-06b", code}


def test_each_fault_has_its_own_remedy(tmp_path: Path) -> None:
    faults = ["chalking", "efflorescence", "damp", "frost_damage"]
    told = of_attachment(judged(tmp_path, kind="existing_brick", condition=faults))
    assert told["ATT-06h"].found == "damp, frost_damage"
    assert told["ATT-06b"].found == "chalking, efflorescence"
    assert ["dry" in told["ATT-06h"].remedy, "replace" in told["ATT-06h"].remedy] == [True, True]
    assert "chalk" not in told["ATT-06h"].remedy
    assert "after the source of the water is found and stopped" in told["ATT-06b"].remedy


def test_old_paint_that_nobody_pulled_on_is_no_yes_of_any_kind(tmp_path: Path) -> None:
    case = case_of(tmp_path, merged(PAINTED, {"package": {"purpose": "design_draft"}}))
    bare = merged(PAINTED, {"package": {"purpose": "design_draft"}, "walls": {"W1": {"substrate": BARE}}})
    assert waiting(case.judgment) == set()
    assert {"ATT-05a", "ATT-05g", "ATT-05h"} <= waiting(case_of(tmp_path, bare).judgment)


COMMENTS = {
    f"C{n}": {"text": f"Comment number {n}", "answer": f"Answer number {n}", "where": f"D08, part {n}"}
    for n in range(1, 7)
}
RETURNED = {
    "package": {
        "purpose": "resubmittal",
        "revision": 1,
        "date": "2027-04-02",
        "changes": ["answers to the review"],
        "review": {"action": "revise_and_resubmit", "by": "R. Lindqvist", "on": "2027-03-19"},
    },
    "comments": COMMENTS,
}


def test_a_resubmittal_that_answers_five_of_six_comments_is_stopped(tmp_path: Path) -> None:
    case = case_of(tmp_path, merged(RETURNED, {"comments": {"C4": {"answer": "drop"}}}))
    (stop,) = (f for f in case.judgment.findings if f.code == "SUB-07d")
    assert (stop.severity, stop.subjects, stop.place.path) == (Severity.STOP, ("C4",), "comments.C4.answer")


def test_a_resubmittal_that_answers_all_six_is_not_and_prints_every_answer(tmp_path: Path) -> None:
    case = case_of(tmp_path, RETURNED)
    assert "SUB-07d" not in {f.code for f in case.judgment.findings}
    text = document(case, "D01")
    assert "\nLast review | revise and resubmit, by R. Lindqvist, March 19, 2027\n" in text
    assert "\nCHANGES SINCE THE LAST ISSUE\n1. answers to the review\n" in text
    lines = [line for line in text.splitlines() if line.startswith("C")]
    for mark, comment in COMMENTS.items():
        assert " | ".join((mark, comment["text"], comment["answer"], comment["where"])) in "\n".join(lines)


def test_a_set_without_comments_says_so(tmp_path: Path) -> None:
    text = document(case_of(tmp_path, merged(RETURNED, {"comments": "drop"})), "D01")
    assert "ANSWERS TO REVIEW COMMENTS\nNo comment listed.\n" in text


def document(case: pipeline.JudgedProject, name: str) -> str:
    context = case.context
    made = package.make_package(
        context.project, context.standards, case.judgment, context.resolve, ("txt",), (name,), True
    )
    (text,) = (content.decode() for file, content in made.files.items() if file.endswith(".txt"))
    return text


@pytest.mark.parametrize("removed", ["yes", "no"])
def test_the_documents_hold_the_work_for_lead_and_asbestos(removed: str, tmp_path: Path) -> None:
    case = case_of(tmp_path, merged(PAINTED, {"walls": {"W1": {"substrate": {"coating_removed": removed}}}}))
    warnings, procedure = document(case, "D05"), document(case, "D08")
    for rule in ("29 CFR 1926.62", "40 CFR 745", "29 CFR 1926.1101", "29 CFR 1926.1153"):
        assert rule in warnings
        assert rule in procedure
    # Nothing disturbs the coating before the laboratory reports are released.
    before, release, after = procedure.partition(
        "Written release of laboratory reports for lead and asbestos, Form D11"
    )
    assert release
    assert not re.search(r"\d\. (?:Strip|Wash) the coating", before)
    assert ("Strip the coating" in after) is (removed == "yes")
    assert ("Wash the coating" in after) is (removed == "no")
    assert ("Pull-test the coating again" in procedure) is (removed == "no")


def test_a_new_wall_has_no_step_and_no_warning_for_old_coatings(tmp_path: Path) -> None:
    case = case_of(tmp_path, {"walls": {"W1": {"substrate": {"kind": "concrete_masonry"}}}})
    assert "EXISTING WALLS" not in document(case, "D05")
    assert " Existing walls\n" not in document(case, "D08")


# Common practice, no source: the manufacturer of the EIFS says in writing how the wall that stands is to dry.
@pytest.mark.parametrize(
    ("letter", "owed"),
    [
        ({}, True),
        ({"kind": "letter", "parties": ["wrb_source"]}, True),
        ({"kind": "letter", "parties": ["eifs_source"]}, False),
    ],
)
def test_the_manufacturer_owes_his_word_on_a_wall_that_stands(
    letter: dict[str, Any], owed: bool, tmp_path: Path
) -> None:
    case = case_of(tmp_path, merged(PAINTED, {"attachments": {"L1": letter}} if letter else {}))
    assert ("Written instructions: drying, maximum moisture, and mortar cure" in document(case, "D19")) is owed
