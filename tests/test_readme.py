"""The tours of the README, run as they stand: each from an empty folder, with what is printed."""

import os
import re
import shutil
import sys
import tomllib
from pathlib import Path

import pytest

from tests.running import in_checkout, run_process
from tests.support import ROOT

README = (ROOT / "README.md").read_text("utf-8")
PART = README.split("## Four tours")[1].split("## Commands")[0]
TOURS = re.findall(r"(?m)^\*\*([^*\n]+)\*\*[^\n]*\n\n((?:    [^\n]*\n|\n(?=    ))+)", PART)


def test_the_commands_install_what_they_need() -> None:
    """The first one what writes the one file to send, that of the tests all that any extra brings."""
    extras = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["optional-dependencies"]
    assert re.findall(r"pip install .*'\.\[([\w,]+)\]'", README) == ["pdf,sheets", "dev"]
    assert {need for needs in extras.values() for need in needs} == set(extras["dev"])


def test_there_is_a_tour_for_each_user() -> None:
    users = ["A contractor", "A spec writer", "A project manager", "A project manager on site"]
    assert [title.split(":")[0] for title, _ in TOURS] == users


def type_in(file: Path, path: str, value: str) -> None:
    """Put a value behind the colon of a field, as a person does who goes down the file from section to section."""
    lines, at, depth = file.read_text("utf-8").split("\n"), 0, 0
    for name in path.split("."):
        sought = f"{' ' * depth}{name}:"
        at = next(n for n in range(at, len(lines)) if lines[n].startswith(sought))
        depth += 2
    lines[at] = f"{sought} {value}"
    file.write_text("\n".join(lines), "utf-8")


def run_tour(text: str, folder: Path) -> list[str]:
    """A tour as it is printed when it is run in a folder: commands, what is typed into files, and the answers."""
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    file, printed = "", list[str]()
    if " season/" in text:
        shutil.copytree(ROOT / "project_examples" / "season", folder / "season")
    for line in (line.removeprefix("    ") for line in text.strip("\n").split("\n")):
        if line.startswith("> "):
            field, _, value = line.removeprefix("> ").partition(": ")
            type_in(folder / file, field, value)
            printed.append(line)
        if line.startswith("$ "):
            file = next((word for word in line.split() if word.endswith(".yaml")), file)
            done = run_process(["sh", "-c", line.removeprefix("$ ")], **in_checkout({"PATH": path}) | {"cwd": folder})
            printed += [line, *(one.rstrip() for one in (done.out + done.err).splitlines())]
    return printed


@pytest.mark.parametrize(("title", "text"), TOURS, ids=[title.split(":")[0] for title, _ in TOURS])
def test_a_tour_prints_what_it_says(title: str, text: str, tmp_path: Path) -> None:
    assert run_tour(text, tmp_path) == [line.removeprefix("    ") for line in text.strip("\n").split("\n")]


def test_a_tour_needs_no_other_program() -> None:
    """Whoever sits at Windows takes it too."""
    commands = [line.split()[1] for _, text in TOURS for line in text.split("\n") if line.startswith("    $ ")]
    assert set(commands) == {"specgen"}
    assert not [text for _, text in TOURS if "|" in re.sub(r"(?m)^    [^$].*", "", text)]


def test_the_picture_is_what_the_command_draws(tmp_path: Path) -> None:
    example = ROOT / "project_examples" / "clean"
    arguments = ["layout", str(example / "project.yaml"), "--elevation", "E2", "--out", str(tmp_path / "out")]
    done = run_process([sys.executable, "-m", "specgen", *arguments], **in_checkout({}))
    assert done.code == 0, done.err
    assert (tmp_path / "out" / "E2.png").read_bytes() == (example / "west-face.png").read_bytes()
