"""`rules`, and `check --rule`."""

from pathlib import Path
from typing import Any

from tests.running import run_main
from tests.support import SMALL, merged, written


def test_a_rule_is_told_in_general_and_with_the_numbers_of_a_project(tmp_path: Path, capsys: Any) -> None:
    out = run_main(capsys, "rules", "slt-03").out
    assert "Why:" in out
    assert "SLT-03e" in out
    file = written(tmp_path, merged(SMALL, {"joints": {"J1": {"width": "3 in"}}}))
    out = run_main(capsys, "check", str(file), "--rule", "SLT-03c").out
    assert "SLT-03c stop, J1: fires" in out
    assert "joints.J1.width = 3 in (76.2 mm)" in out
    assert "limit: at most 2 in" in out
