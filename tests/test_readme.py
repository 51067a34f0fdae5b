"""The tours of the README, run as they stand: each from an empty folder, with what is printed."""

import os
import re
import sys
import tomllib
from pathlib import Path

import pytest

from tests.running import in_checkout, run_process
from tests.support import ROOT

README = (ROOT / "README.md").read_text("utf-8")
PART = README.split("## Three tours")[1].split("## Commands")[0]
TOURS = re.findall(r"(?m)^\*\*([^*\n]+)\*\*[^\n]*\n\n((?:    [^\n]*\n|\n(?=    ))+)", PART)


def test_the_commands_install_what_they_need() -> None:
    """The first one what writes the one file to send, that of the tests all that any extra brings."""
    extras = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["optional-dependencies"]
    assert re.findall(r"pip install .*'\.\[([\w,]+)\]'", README) == ["pdf,sheets", "dev"]
    assert {need for needs in extras.values() for need in needs} == set(extras["dev"])


def test_there_is_a_tour_for_each_user() -> None:
    assert [title.split(":")[0] for title, _ in TOURS] == ["A contractor", "A spec writer", "A project manager"]


@pytest.mark.parametrize(("title", "text"), TOURS, ids=[title.split(":")[0] for title, _ in TOURS])
def test_a_tour_prints_what_it_says(title: str, text: str, tmp_path: Path) -> None:
    lines = [line.removeprefix("    ") for line in text.strip("\n").split("\n")]
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    printed = []
    for command in (line.removeprefix("$ ") for line in lines if line.startswith("$ ")):
        done = run_process(["sh", "-c", command], **in_checkout({"PATH": path}) | {"cwd": tmp_path})
        printed += [f"$ {command}", *(line.rstrip() for line in (done.out + done.err).splitlines())]
    assert printed == lines
