"""`rules`, and `check --rule`."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.running import run_main
from tests.support import EXAMPLES, SMALL, merged, with_deviation, written


def test_a_rule_is_told_in_general_and_with_the_numbers_of_a_project(tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "rules", "slt-03").out
    assert "Why:" in out
    assert "SLT-03e" in out
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "3 in"}}}))
    out = run_main(capsys, "check", str(file), "--rule", "SLT-03c").out
    assert "SLT-03c stop, J1: not met" in out
    assert "joints.J1.width = 3 in" in out
    assert "limit: at most 2 in" in out


def test_a_clause_tells_the_answer_of_the_code_it_rests_on(tmp_path: Path, capsys: Any) -> None:
    code = {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]}
    file = written(tmp_path, merged(SMALL, {"code": code, "walls": {"W1": {"framing": {"kind": "wood"}}}}))
    out = run_main(capsys, "check", str(file), "--rule", "COD-02").out
    assert "COD-02a stop, W1: met\n" in out
    assert "    walls.W1.drainage.kind = absent\n" in out
    # IBC 1407 asks for drainage on framed walls of type V only.
    assert "    calc.drainage_due = no, construction type IIB is not type V\n" in out


def test_a_clause_that_waits_tells_for_what_and_what_it_could_read(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "3 in"}}}))
    out = run_main(capsys, "check", str(file), "--rule", "SLT-03d").out
    assert "SLT-03d stop, J1: pending: joints.J1.rod_kind\n    joints.J1.rod_kind = absent\n" in out
    out = run_main(capsys, "check", str(file), "--rule", "SLT-02").out
    assert "SLT-02a stop, J1: pending: " in out
    assert "    calc.joint_width = absent\n" in out
    # Of members that are not there no one can be named.
    assert "\n    colors = absent\n" in run_main(capsys, "check", str(file), "--rule", "HEA-03e").out


def test_a_clause_tells_a_computed_value_in_its_unit(capsys: Any) -> None:
    file = EXAMPLES / "clean" / "project.yaml"
    out = run_main(capsys, "check", str(file), "--rule", "SLT-02a").out
    widths = json.loads(run_main(capsys, "calc", "joint-width", "--from", str(file), "--format", "json").out)
    wanted = [f"    calc.joint_width = {one['result']:.4g} {one['unit']}" for one in widths["instances"]]
    assert wanted and [line for line in out.splitlines() if "calc.joint_width" in line] == wanted


def margins(out: str) -> dict[str, str]:
    """The margin of each clause and subject that has one, by the line that names them."""
    return dict(re.findall(r"^(\S+ \w+, [^:]+): .*\n(?:    (?!margin).*\n)*    margin: (.*)$", out, flags=re.M))


def test_each_need_is_told_with_what_is_found_its_limit_and_the_margin(capsys: Any) -> None:
    # The figures of the example: base coats of 3/64 and 3/32 in against 1/16 in of ASTM C1397, one pass of two.
    file = str(EXAMPLES / "stops" / "project.yaml")
    out = run_main(capsys, "check", file, "--rule", "BAS-01").out
    told = margins(out)
    assert (told["BAS-01a stop, W1"], told["BAS-01a stop, W2"]) == ("short by 1", "none, on the limit")
    assert (told["BAS-01b stop, W1"], told["BAS-01b stop, W2"]) == ("short by 1/64 in", "1/32 in to spare")
    # A computed value against a field, with where that comes from: 171.5 F on board that softens at 165 F.
    out = run_main(capsys, "check", file, "--rule", "HEA-02a").out
    assert margins(out)["HEA-02a stop, E1"] == "over by 6.5 °F"
    assert "    limit: at most 165 °F (ASTM C578-22, " in out


def test_a_field_behind_a_reference_is_told_by_its_own_mark(capsys: Any) -> None:
    out = run_main(capsys, "check", str(EXAMPLES / "clean" / "project.yaml"), "--rule", "SLT-06c").out
    assert "    sealants.S1.reported_face = primer\n    joints.J1.bond_face = primer\n" in out
    assert "*" not in out


# Plywood on wood studs that may bend more than is usual, no schedule of its fasteners, wind within the glue's strength.
FRAMED = {
    "package": {"purpose": "mockup_submittal"},
    "walls": {
        "W1": {
            "framing": {"kind": "wood", "deflection_limit": "L/180"},
            "substrate": {"kind": "plywood"},
            "attachment": {"ultimate_strength": "90 psf", "safety_factor": 3},
        }
    },
    "elevations": {"E1": {"wall": "W1", "design_pressure_outward": "20 psf"}},
}


def unfolded(out: str) -> str:
    """A page without the breaks that its width makes."""
    return re.sub(r"\n {6}(?=\S)", " ", out)


def told_clauses(out: str) -> list[str]:
    """The lines of a page that name a clause and its outcome."""
    return re.findall(r"^[A-Z]{3}-\d\d[a-z] .*$", out, flags=re.M)


def test_a_clause_is_shown_alone_and_a_rule_whole(tmp_path: Path, capsys: Any) -> None:
    file = str(written(tmp_path, merged(SMALL, FRAMED)))
    whole = [
        "ATT-09a stop, E1: met",
        "ATT-09b stop, W1: not met",
        "ATT-09c caution, W1: not met",
    ]
    assert told_clauses(run_main(capsys, "check", file, "--rule", "ATT-09").out) == whole
    for code, line in zip(("ATT-09a", "att-09B", "ATT-09c"), whole, strict=True):
        assert told_clauses(run_main(capsys, "check", file, "--rule", code).out) == [line]
    done = run_main(capsys, "check", file, "--rule", "ATT-09c")
    assert (done.code, told_clauses(done.out)) == (1, whole[2:])
    assert "L/180" in done.out and "fastener_schedule" not in done.out


@pytest.mark.parametrize(
    ("code", "clauses"), [("ATT-09", ["b", "c"]), ("ATT-09a", []), ("ATT-09b", ["b"]), ("ATT-09c", ["c"])]
)
def test_the_object_of_a_check_holds_only_the_findings_asked_for(
    code: str, clauses: list[str], tmp_path: Path, capsys: Any
) -> None:
    file = str(written(tmp_path, merged(SMALL, FRAMED)))
    made = json.loads(run_main(capsys, "check", file, "--rule", code, "--format", "json").out)
    assert [(f["rule"], f["clause"]) for f in made["findings"]] == [("ATT-09", clause) for clause in clauses]


def test_a_clause_with_a_measure_of_its_own_tells_that_one(tmp_path: Path, capsys: Any) -> None:
    old = {"kind": "existing_coated", "coating_removed": False, "bond_pulls": 1, "condition": ["chalking"]}
    file = str(written(tmp_path, merged(SMALL, {"walls": {"W1": {"substrate": old}}})))
    out = unfolded(run_main(capsys, "check", file, "--rule", "ATT-05h").out)
    assert [line for line in out.splitlines() if "measure: " in line] == [
        "    measure: Make a minimum of 3 pull tests in all, distributed over the wall and on each kind of surface."
    ]
    out = unfolded(run_main(capsys, "check", file, "--rule", "ATT-05").out)
    assert out.count("measure: ") == 2
    assert "    measure: Disturb no coating before the laboratory reports on lead and asbestos. Then: " in out
    out = unfolded(run_main(capsys, "check", file, "--rule", "ATT-06b").out)
    assert "wash off the chalk and collect the wash water" in out.lower()


def test_a_computed_value_that_does_not_apply_is_told_so(tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "check", str(written(tmp_path, SMALL)), "--rule", "ATT-05h").out
    assert "    calc.bond_pulls = does not apply\n" in out
    assert "None" not in out


@pytest.mark.parametrize(("approved_on", "told"), [("2027-02-24", ", lifted by deviation DV9"), ("tbd", "")])
def test_a_clause_that_a_deviation_lifts_says_so(approved_on: str, told: str, tmp_path: Path, capsys: Any) -> None:
    walls = {mark: {"substrate": {"kind": kind}} for mark, kind in (("W1", "paper_faced_gypsum"), ("W2", "concrete"))}
    walls["W2"]["attachment"] = {"method": "adhesive_full_bed"}
    change = with_deviation({"walls": walls}, "ATT-04", approved_on)
    out = run_main(capsys, "check", str(written(tmp_path, merged(SMALL, change))), "--rule", "ATT-04a").out
    assert told_clauses(out) == [f"ATT-04a stop, W1: not met{told}", "ATT-04a stop, W2: met"]


@pytest.mark.parametrize("code", ["WEA-09", "FIN-09", "FIN-13", "AIR-04"])
def test_a_figure_in_percent_has_one_sign(code: str, capsys: Any) -> None:
    told = run_main(capsys, "rules", code).out
    assert re.search(r"\d %", told)
    assert "% %" not in told
