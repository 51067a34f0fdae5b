"""The same input gives the same bytes, wherever and by whomever it is built. Behavior of ours."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.support import EXAMPLES, ROOT

NAMES = sorted(file.parent.name for file in EXAMPLES.glob("*/project.yaml"))
HERE = {"TZ": "UTC", "LC_ALL": "C", "PYTHONHASHSEED": "0"}
# The Turkish locale is known for its own rules of upper and lower case; a machine without it falls back to plain C.
ELSEWHERE = {"TZ": "Pacific/Kiritimati", "LC_ALL": "tr_TR.UTF-8", "PYTHONHASHSEED": "4711", "PYTHONUTF8": "1"}


def started(example: str, out: Path, setting: dict[str, str], mask: Callable[[], int]) -> subprocess.Popen[str]:
    file = EXAMPLES / example / "project.yaml"
    command = [sys.executable, "-m", "specgen", "build", str(file), "--out", str(out), "--draft"]
    return subprocess.Popen(
        [*command, "--formats", "docx,html,txt"],
        cwd=ROOT,
        env=os.environ | setting,
        preexec_fn=mask,
        stderr=subprocess.PIPE,
        text=True,
    )


@pytest.mark.parametrize("example", NAMES)
def test_two_builds_of_an_example_give_the_same_bytes(example: str, tmp_path: Path) -> None:
    one, other = tmp_path / "one", tmp_path / "some other" / "place \u00e4"
    runs = [
        started(example, one, HERE, lambda: os.umask(0o022)),
        started(example, other, ELSEWHERE, lambda: os.umask(0o077)),
    ]
    for run in runs:
        told = run.communicate()[1]
        assert run.returncode in (0, 1), told
    made = [{file.name: file.read_bytes() for file in out.iterdir()} for out in (one, other)]
    assert len(made[0]) > 3
    assert made[0] == made[1]
