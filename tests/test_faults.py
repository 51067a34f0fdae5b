"""A fault in any room ends in one line and exit code 2, and nothing is half written. All of it is behavior of ours."""

import gc
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from specgen.cli import run
from specgen.output import disk
from tests.documents.support import ONE, standing
from tests.running import in_checkout, run_process, run_python, run_specgen
from tests.support import EXAMPLES, SMALL, written

# A step in each room that a build goes through.
STEPS = {
    "quantities": "specgen.reading.conversion.parse_quantity",
    "model": "specgen.building.BuiltPackage",
    "standards": "specgen.pipeline.load_standards",
    "resolving": "specgen.pipeline.Resolver",
    "reading": "specgen.pipeline.read_project",
    "computing": "specgen.pipeline.computing.names",
    "judging": "specgen.pipeline.judge",
    "documents": "specgen.documents.document.compose_document",
    "formats, Word": "specgen.formats.docx.word_file.write_docx",
    "formats, HTML": "specgen.formats.html.write_html",
    "formats, text": "specgen.formats.text.write_text",
    "output, manifest": "specgen.output.disk.make_manifest",
    "output, folder": "specgen.output.disk.make_workplace",
    "output, files": "specgen.output.disk.write_bytes",
    "output, exchange": "specgen.output.disk.exchange_folders",
    "output, old package": "specgen.output.disk.refuse_changed",
    "commands": "specgen.commands.build.build",
}
ERRORS = [KeyError("walls"), MemoryError(), BrokenPipeError(32, "Broken pipe")]
BROKEN = """
from specgen import cli
def fail(*arguments):
    raise KeyError("x")
cli.{} = fail
cli.run()
"""


@pytest.fixture(autouse=True)
def collector() -> Iterator[None]:
    """The command sets the collector for a process that ends with it."""
    before = gc.get_threshold()
    yield
    gc.set_threshold(*before)


def run_command(capsys: Any, monkeypatch: pytest.MonkeyPatch, *words: str) -> tuple[object, str, str]:
    """The command as its entry point runs it, in this process."""
    monkeypatch.setattr(sys, "argv", ["specgen", *words])
    with pytest.raises(SystemExit) as ended:
        run()
    return ended.value.code, *capsys.readouterr()


@pytest.fixture
def words(tmp_path: Path) -> list[str]:
    """A build that takes the place of a package."""
    (tmp_path / "at").mkdir()
    disk.write_package(tmp_path / "at" / "out", ONE, {})
    file = written(tmp_path, SMALL | {"panel_limits": {"max_width": "5 ft"}})
    return ["build", str(file), "--out", str(tmp_path / "at" / "out"), "--only", "D10", "--formats", "docx,html,txt"]


@pytest.mark.parametrize("error", ERRORS, ids=lambda error: type(error).__name__)
@pytest.mark.parametrize("room", STEPS)
def test_a_fault_in_a_room_is_told_in_one_line(
    room: str, error: Exception, words: list[str], tmp_path: Path, capsys: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*arguments: object, **named: object) -> None:
        raise error

    monkeypatch.setattr(STEPS[room], fail)
    before = standing(tmp_path)
    code, out, err = run_command(capsys, monkeypatch, *words)
    assert (code, out) == (2, "")
    assert len(err.splitlines()) == 1
    assert err.startswith("specgen: ")
    assert "nothing was written" in err
    assert type(error).__name__ not in err
    assert standing(tmp_path) == before
    monkeypatch.undo()
    assert run_command(capsys, monkeypatch, *words)[:2] == (0, "")
    assert [p.name for p in (tmp_path / "at").iterdir()] == ["out"]


def test_a_fault_says_what_failed_where_and_what_to_do(
    words: list[str], capsys: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("specgen.pipeline.judge", {}.__getitem__)
    _, _, err = run_command(capsys, monkeypatch, *words)
    place = err.partition(" at ")[2].partition(";")[0]
    assert err == (
        f"specgen: `specgen build` failed at {place}; nothing was written (report this with the command and the file)\n"
    )
    assert place.startswith("pipeline.py:")


@pytest.mark.parametrize(
    ("error", "said"),
    [
        (MemoryError(), "there is not enough memory; nothing was written (close other programs, or split the file)"),
        (ModuleNotFoundError(name="yaml"), "the library yaml is missing; nothing was written (install specgen again)"),
    ],
)
def test_what_the_user_can_mend_is_told_as_that(
    error: Exception, said: str, words: list[str], capsys: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*arguments: object) -> None:
        raise error

    monkeypatch.setattr("specgen.pipeline.judge", fail)
    assert run_command(capsys, monkeypatch, *words) == (2, "", f"specgen: {said}\n")


@pytest.mark.parametrize("argument", ["calc", "rules", "fields", "matrix", "schema", "new", "check", "--help", ""])
def test_a_command_that_cannot_be_loaded_is_no_stop(argument: str) -> None:
    done = run_python(BROKEN.format("load_command = cli.load_commands"), *([argument] if argument else []))
    assert (done.code, done.out, len(done.err.splitlines())) == (2, "", 1)


def test_python_without_docstrings_is_told_as_that() -> None:
    file = EXAMPLES / "first-look" / "project.yaml"
    done = run_specgen("check", str(file), **in_checkout({"PYTHONOPTIMIZE": "2"}))
    assert (done.code, done.out) == (2, "")
    assert done.err == (
        "specgen: Python runs without docstrings; nothing was written (unset PYTHONOPTIMIZE, and leave -OO out)\n"
    )


def test_a_developer_sees_the_whole_way_of_a_fault() -> None:
    done = run_process([sys.executable, "-X", "dev", "-c", BROKEN.format("load_command"), "calc"])
    assert done.code == 2
    assert "Traceback" in done.err
    assert done.err.splitlines()[-1].startswith("specgen: `specgen calc` failed at cli.py:")
