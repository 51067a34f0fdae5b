"""Builds that end in the middle, by a signal or a kill, at any step: nothing is lost. All of it is behavior of ours."""

from pathlib import Path

import pytest

from tests.output.interrupting import end_builds_at_random
from tests.running import run_python

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover


def test_a_package_stays_whole_whatever_step_its_writing_ends_at(tmp_path: Path) -> None:
    code = "import sys; from pathlib import Path; from tests.output.interrupting import end_at_every_step"
    done = run_python(f"{code}; print(*end_at_every_step(Path(sys.argv[1])), 'all steps', sep='\\n')", str(tmp_path))
    assert done == (0, "all steps\n", "")


def test_a_package_stays_whole_whenever_its_build_is_ended(tmp_path: Path) -> None:
    assert end_builds_at_random(tmp_path, seconds=4) == []
