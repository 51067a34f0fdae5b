"""Linter, formatter and type checker, so that one command runs all checks."""

import sys

import pytest

from tests.running import run_process
from tests.support import ROOT


@pytest.mark.parametrize(
    "command", [("ruff", "check", "."), ("ruff", "format", "--check", "."), ("mypy",)], ids=" ".join
)
def test_the_code_passes(command: tuple[str, ...]) -> None:
    assert run_process([sys.executable, "-m", *command]).code == 0


def test_ci_runs_the_test_command_of_the_readme() -> None:
    command = (ROOT / ".ci" / "run").read_text("utf-8").strip().splitlines()[-1]
    assert f"    {command}\n" in (ROOT / "README.md").read_text("utf-8")
