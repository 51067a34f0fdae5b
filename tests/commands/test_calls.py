"""Calls of the command line one after another, right and wrong, and exactly what each prints: `calls.txt`."""

import re
from pathlib import Path

from tests.commands.support import transcript

CALLS = (Path(__file__).parent / "calls.txt").read_text("utf-8")


def test_each_call_prints_what_it_printed(tmp_path: Path) -> None:
    commands = re.findall(r"(?m)^\$ (.*)$", CALLS)
    assert len(commands) > 40
    assert transcript(commands, tmp_path) == CALLS
