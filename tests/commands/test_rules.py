"""`rules`, and `check --rule`."""

import json
from pathlib import Path
from typing import Any

from tests.running import run_main
from tests.support import EXAMPLES, SMALL, merged, written


def test_a_rule_is_told_in_general_and_with_the_numbers_of_a_project(tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "rules", "slt-03").out
    assert "Why:" in out
    assert "SLT-03e" in out
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "3 in"}}}))
    out = run_main(capsys, "check", str(file), "--rule", "SLT-03c").out
    assert "SLT-03c stop, J1: fires" in out
    assert "joints.J1.width = 3 in (76.2 mm)" in out
    assert "limit: at most 2 in" in out


def test_a_clause_tells_the_answer_of_the_code_it_rests_on(tmp_path: Path, capsys: Any) -> None:
    code = {"model": "ibc", "edition": 2021, "construction_type": "IIB", "occupancy_groups": ["B"]}
    file = written(tmp_path, merged(SMALL, {"code": code, "walls": {"W1": {"framing": {"kind": "wood"}}}}))
    out = run_main(capsys, "check", str(file), "--rule", "COD-02").out
    assert "COD-02a stop, W1: does not fire\n" in out
    assert "    walls.W1.drainage.kind = absent\n" in out
    # IBC 1407 asks for drainage on framed walls of type V only.
    assert "    calc.drainage_due = no, construction type IIB is not type V\n" in out


def test_a_clause_that_waits_tells_for_what_and_what_it_could_read(tmp_path: Path, capsys: Any) -> None:
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "3 in"}}}))
    out = run_main(capsys, "check", str(file), "--rule", "SLT-03d").out
    assert "SLT-03d stop, J1: waits for joints.J1.rod_kind\n    joints.J1.rod_kind = absent\n" in out
    out = run_main(capsys, "check", str(file), "--rule", "SLT-02").out
    assert "SLT-02a stop, J1: waits for " in out
    assert "    calc.joint_width = absent\n" in out
    # Of members that are not there no one can be named.
    assert "colors.*.lrv = any\n" in run_main(capsys, "check", str(file), "--rule", "HEA-03e").out


def test_a_clause_tells_a_computed_value_in_its_unit(capsys: Any) -> None:
    file = EXAMPLES / "clean" / "project.yaml"
    out = run_main(capsys, "check", str(file), "--rule", "SLT-02a").out
    widths = json.loads(run_main(capsys, "calc", "joint-width", "--from", str(file), "--format", "json").out)
    wanted = [f"    calc.joint_width = {one['result']:.4g} {one['unit']}" for one in widths["instances"]]
    assert wanted and [line for line in out.splitlines() if "calc.joint_width" in line] == wanted
