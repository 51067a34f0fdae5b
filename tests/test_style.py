"""Linter, formatter and type checker, so that one command runs all checks."""

import subprocess
import sys

import pytest

from tests.support import ROOT


@pytest.mark.parametrize(
    "command", [("ruff", "check", "."), ("ruff", "format", "--check", "."), ("mypy",)], ids=" ".join
)
def test_the_code_passes(command: tuple[str, ...]) -> None:
    done = subprocess.run([sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_ci_runs_the_test_command_of_the_readme() -> None:
    command = (ROOT / ".ci" / "run").read_text("utf-8").strip().splitlines()[-1]
    assert f"    {command}\n" in (ROOT / "README.md").read_text("utf-8")
