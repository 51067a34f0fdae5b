"""Presence is registration: a file in the folder of commands is a command, and a malformed one is named."""

import importlib
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from specgen import commands
from specgen.cli import main
from tests.running import run_main
from tests.support import SMALL, written

GREET = '''
"""`specgen greet`."""

from specgen.commands import AGAINST, Outcome

HELP = "a word to somebody"
ORDER = 25


def arguments(parser):
    """Declare whom."""
    parser.add_argument("name", metavar="NAME")


def run(args):
    """Greet."""
    return Outcome(AGAINST, f"hello {args.name}\\n", messages=("greeted",))
'''


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A second folder of commands, whose modules are forgotten after the test."""
    monkeypatch.setattr(commands, "__path__", [*commands.__path__, str(tmp_path)])
    importlib.invalidate_caches()
    yield tmp_path
    for file in tmp_path.glob("*.py"):
        sys.modules.pop(f"specgen.commands.{file.stem}", None)


def listed(capsys: Any) -> list[str]:
    """The verbs of `specgen --help`, in its order."""
    with pytest.raises(SystemExit):
        main(["--help"])
    return re.findall(r"(?m)^    (\w+) ", capsys.readouterr().out)


def test_a_file_put_into_the_folder_is_a_command_in_help_at_its_place(folder: Path, capsys: Any) -> None:
    before = listed(capsys)
    (folder / "greet.py").write_text(GREET, "utf-8")
    importlib.invalidate_caches()
    assert listed(capsys) == [*before[:5], "greet", *before[5:]]
    assert run_main(capsys, "greet", "wall") == (1, "hello wall\n", "specgen: greeted\n")
    assert run_main(capsys, "greet", "wall", "--quiet") == (1, "hello wall\n", "")


def test_a_file_with_an_underscore_is_no_command(folder: Path, capsys: Any) -> None:
    (folder / "_shared.py").write_text("", "utf-8")
    assert "_shared" not in commands.list_verbs()


@pytest.mark.parametrize("part", ["HELP", "ORDER", "arguments", "run"])
def test_a_command_file_that_lacks_a_part_is_named_with_it(part: str, folder: Path, capsys: Any) -> None:
    file = folder / "greet.py"
    file.write_text(re.sub(rf"(?m)^((def )?){part}\b", r"\1other", GREET), "utf-8")
    for words in (("greet", "wall"), ("--help",)):
        done = run_main(capsys, *words)
        assert (done.code, done.out) == (2, "")
        assert done.err.startswith(f"specgen: {file}: there is no {part} (a command file has ")


def test_a_command_file_that_is_no_python_is_named_and_stops_no_other_command(folder: Path, capsys: Any) -> None:
    file = folder / "greet.py"
    file.write_text("def run(:\n", "utf-8")
    with pytest.raises(SyntaxError) as broken:
        main(["greet"])
    assert (broken.value.filename, broken.value.lineno) == (str(file), 1)
    assert run_main(capsys, "check", str(written(folder, SMALL))).code == 0
