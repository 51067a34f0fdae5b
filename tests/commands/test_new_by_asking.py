"""`new --ask`: on a terminal, on a pipe, ended early and interrupted; what it writes is what `check` judges."""

import json
import re
import signal
import subprocess
import sys
from pathlib import Path

import pytest
import yaml

from tests.commands.terminals import on_terminal
from tests.running import Ended, in_checkout, run_specgen

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover

SOUND = ["Harbor: Clinic #2", "7", "none", "EPS", "2 in", "2", "1", "ibc", "2021", "n", "vb", "R-2, B", "2", "2", "1"]
REST = ["31 ft", "94", "3", "I", "y", "y", "1/2 in", "1/16 in"]
NOTHING = "specgen: stopped; nothing was written"


def ask(folder: Path, *lines: str, words: tuple[str, ...] = (), end: str = "\n") -> Ended:
    """The command on a pipe of these lines."""
    return run_specgen("new", str(folder / "wall.yaml"), "--ask", *words, input="".join(line + end for line in lines))


def read(folder: Path) -> dict[str, object]:
    """The values of the file that was written, read by another reader; empty ones are left out."""
    found: dict[str, object] = {}

    def walk(node: object, path: str) -> None:
        if isinstance(node, dict):
            for name, below in node.items():
                walk(below, f"{path}.{name}".strip("."))
        elif node is not None:
            found[path] = node

    walk(yaml.safe_load((folder / "wall.yaml").read_text("utf-8")), "")
    return found


ALL = {
    "format": 1,
    "package.purpose": "design_draft",
    "project.name": "Harbor: Clinic #2",
    "walls.W1.substrate.kind": "glass_mat_gypsum",
    "walls.W1.substrate.condition": [],
    "walls.W1.insulation.kind": "eps",
    "walls.W1.insulation.thickness": "2 in",
    "walls.W1.insulation.c578_type": "I",
    "walls.W1.insulation.e2430": True,
    "walls.W1.insulation.aged": True,
    "walls.W1.insulation.rasp_allowance": "1/16 in",
    "walls.W1.attachment.method": "adhesive_notched_trowel",
    "walls.W1.attachment.ribbon_direction": "vertical",
    "walls.W1.drainage.kind": "adhesive_ribbons",
    "walls.W1.drainage.efficiency": 94,
    "walls.W1.wrb.kind": "fluid_applied",
    "walls.W1.framing.kind": "cold_formed_steel",
    "code.model": "ibc",
    "code.edition": 2021,
    "code.local_fasteners_required": False,
    "code.construction_type": "VB",
    "code.occupancy_groups": ["R-2", "B"],
    "contract.inspection_level": "full_time",
    "aesthetic_joint.depth": "1/2 in",
    "building.eifs_top": "31 ft",
}


def verdict_of(folder: Path) -> str:
    """The verdict of the wall in the file that was written, as `check` tells it."""
    return json.loads(run_specgen("check", str(folder / "wall.yaml"), "--format", "json").out)["walls"][0]["verdict"]


def test_answers_on_a_pipe_are_written_and_judged_as_the_file_is(tmp_path: Path) -> None:
    done = ask(tmp_path, *SOUND, *REST)
    assert done.code == 0
    assert read(tmp_path) == ALL
    assert done.err.splitlines()[-1] == (
        f"specgen: wrote {tmp_path / 'wall.yaml'} with 23 answers; next: specgen check {tmp_path / 'wall.yaml'}"
    )
    assert done.out.startswith("W1: not yet known; nothing known so far speaks against it; still to be shown:")
    assert verdict_of(tmp_path) == "not_yet_known"


def test_a_wall_that_cannot_be_is_told_at_once_and_by_check(tmp_path: Path) -> None:
    done = ask(tmp_path, *SOUND[:5], "mechanical", *SOUND[7:])
    assert done.code == 0
    assert done.out.startswith("W1: no (ATT-01a): ")
    place = done.err.index("W1: no (ATT-01a): ")
    assert done.err.index("6. Board attachment method") < place < done.err.index("Model code")
    assert verdict_of(tmp_path) == "no"


def test_a_bad_answer_on_a_pipe_is_told_and_the_next_line_is_taken_for_it(tmp_path: Path) -> None:
    done = ask(tmp_path, *SOUND[:4], "2", "two inches", *SOUND[4:])
    assert "\n'2' has no unit (write 2 in or 2 mm)" in done.err
    assert read(tmp_path)["walls.W1.insulation.thickness"] == "2 in"
    assert read(tmp_path)["walls.W1.attachment.method"] == "adhesive_notched_trowel"


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_lines_of_any_system_are_taken(end: str, tmp_path: Path) -> None:
    assert ask(tmp_path, "\ufeffClinic", "concrete", end=end).code == 0
    assert read(tmp_path) == {
        "format": 1,
        "package.purpose": "design_draft",
        "project.name": "Clinic",
        "walls.W1.substrate.kind": "concrete",
    }


def test_the_end_of_the_input_writes_what_was_answered_and_says_so(tmp_path: Path) -> None:
    done = ask(tmp_path, "Clinic", "", "none")
    assert done.code == 0
    assert done.err.splitlines()[-2:] == [
        "specgen: the input ended at question 4; what was answered is written",
        f"specgen: wrote {tmp_path / 'wall.yaml'} with 2 answers; next: specgen check {tmp_path / 'wall.yaml'}",
    ]
    assert read(tmp_path)["walls.W1.substrate.condition"] == []
    assert "walls.W1.substrate.kind" not in read(tmp_path)


def test_no_answer_at_all_writes_the_starter_of_new(tmp_path: Path) -> None:
    assert ask(tmp_path).code == 0
    assert run_specgen("new", str(tmp_path / "plain.yaml")).code == 0
    assert (tmp_path / "wall.yaml").read_bytes() == (tmp_path / "plain.yaml").read_bytes()


def test_the_starter_of_a_later_stage_takes_the_answers_too(tmp_path: Path) -> None:
    assert ask(tmp_path, *SOUND, words=("--for", "mockup", "--units", "si")).code == 0
    found = read(tmp_path)
    assert (found["package.purpose"], found["package.units"]) == ("mockup_submittal", "si")
    assert found["walls.W1.wrb.kind"] == "fluid_applied"


def test_one_who_says_yes_to_everything_comes_to_an_end(tmp_path: Path) -> None:
    done = ask(tmp_path, *["yes"] * 500)
    assert done.code == 0
    assert "Substrate: left open after 5 answers" in done.err
    assert read(tmp_path)["project.name"] == "yes"


def test_quiet_on_a_pipe_shows_what_is_wrong_alone(tmp_path: Path) -> None:
    done = ask(tmp_path, "Clinic", "cheese", "concrete", words=("--quiet",))
    assert done.code == 0
    assert "".join(done.err.splitlines()[:1]).startswith(
        "'cheese' is not one of the choices; type a number 1 to 14 or a word of the list"
    )
    assert not {"Why", "wrote", "About"} & set(re.findall(r"\w+", done.err))
    assert done.out.startswith("W1: not yet known")


def test_a_file_that_is_there_is_told_before_the_first_question_and_kept(tmp_path: Path) -> None:
    (tmp_path / "wall.yaml").write_text("mine", "utf-8")
    done = ask(tmp_path, "Clinic")
    assert (done.code, done.out, len(done.err.splitlines())) == (2, "", 1)
    assert "is not overwritten" in done.err
    assert (tmp_path / "wall.yaml").read_text("utf-8") == "mine"


def test_a_folder_that_is_not_there_is_told_before_the_first_question(tmp_path: Path) -> None:
    done = run_specgen("new", str(tmp_path / "none" / "wall.yaml"), "--ask", input="Clinic\n")
    assert (done.code, len(done.err.splitlines())) == (2, 1)
    assert "nothing was written" in done.err


def test_a_side_file_is_not_asked_for(tmp_path: Path) -> None:
    done = ask(tmp_path, words=("--file", "firm"))
    assert (done.code, list(tmp_path.iterdir())) == (2, [])
    assert "--ask is for a project file" in done.err


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        (b"\xff\xfe\n", "is not allowed"),
        (b"\0\0\n", "character U+0000 is not allowed"),
        (b"Cl\xefnic\n", "is not allowed"),
    ],
)
def test_bytes_that_are_no_letters_are_told(sent: bytes, said: str, tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "specgen", "new", str(tmp_path / "wall.yaml"), "--ask"],
        input=sent + b"Clinic\n",
        capture_output=True,
        check=False,
        **in_checkout(),
    )
    assert done.returncode == 0
    assert said in done.stderr.decode()
    assert read(tmp_path)["project.name"] == "Clinic"


def test_a_line_without_an_end_is_refused_and_nothing_written(tmp_path: Path) -> None:
    done = run_specgen("new", str(tmp_path / "wall.yaml"), "--ask", input="x" * 50_000)
    assert (done.code, list(tmp_path.iterdir())) == (2, [])
    assert "a line of the input has 10,000 characters or more; nothing was written" in done.err


def test_a_person_at_a_terminal_is_asked_goes_back_and_reads_on(tmp_path: Path) -> None:
    with on_terminal("new", "wall.yaml", "--ask", folder=tmp_path) as terminal:
        assert "1. Project name" in terminal.expect("> ")
        terminal.type("Clinic\n")
        assert "2. Substrate\n   Why: " in terminal.expect("> ")
        terminal.type("conctere\n")
        terminal.expect("is not one of the choices")
        terminal.expect("> ")
        terminal.type("concrete\n")
        assert "3. Substrate faults" in terminal.expect("> ")
        terminal.type("?\n")
        assert "walls.*.substrate.condition  Substrate faults" in terminal.expect("> ")
        terminal.type("<\n")
        assert "Back; the answer was: concrete" in terminal.expect("2. Substrate")
        terminal.expect("> ")
        for line in ("1", "none", "eps", "2 in"):
            terminal.type(f"{line}\n")
            terminal.expect("> ")
        terminal.type("4\n")
        assert "W1: no (ATT-01a): " in terminal.expect("> ")
        terminal.type("\x04")
        assert terminal.end() == 0
    assert "the input ended at question 7" in terminal.shown
    assert read(tmp_path)["walls.W1.attachment.method"] == "mechanical"


def test_a_narrow_terminal_is_filled_to_its_width(tmp_path: Path) -> None:
    with on_terminal("new", "wall.yaml", "--ask", folder=tmp_path, columns=40) as terminal:
        for line in ("Clinic", "concrete", "damp"):
            terminal.expect("> ")
            terminal.type(f"{line}\n")
        terminal.expect("> ")
        assert [line for line in terminal.shown.splitlines() if len(line) > 40] == []
        terminal.type("\x04")
        assert terminal.end() == 0


def test_a_quiet_dialogue_with_a_person_still_asks(tmp_path: Path) -> None:
    with on_terminal("new", "wall.yaml", "--ask", "--quiet", folder=tmp_path) as terminal:
        shown = terminal.expect("> ")
        assert shown.startswith("1. Project name")
        terminal.type("Clinic\n")
        assert "2. Substrate" in terminal.expect("> ")
        terminal.type("\x04")
        assert terminal.end() == 0
    assert read(tmp_path)["project.name"] == "Clinic"


@pytest.mark.parametrize(
    ("answers", "said"), [([], ""), (["Clinic", "concrete"], "n\n"), (["Clinic", "concrete"], "\x03")]
)
def test_an_interrupt_without_a_yes_writes_nothing_and_ends_by_its_signal(
    answers: list[str], said: str, tmp_path: Path
) -> None:
    with on_terminal("new", "wall.yaml", "--ask", folder=tmp_path) as terminal:
        terminal.expect("> ")
        for line in answers:
            terminal.type(f"{line}\n")
            terminal.expect("> ")
        terminal.type("\x03")
        if answers:
            terminal.expect("Write what was answered? y/n ")
            terminal.type(said)
        assert terminal.end() == -signal.SIGINT
    assert NOTHING in terminal.shown
    assert "Traceback" not in terminal.shown
    assert list(tmp_path.iterdir()) == []


def test_an_interrupt_with_a_yes_writes_what_was_answered(tmp_path: Path) -> None:
    with on_terminal("new", "wall.yaml", "--ask", folder=tmp_path) as terminal:
        for line in ("Clinic", "concrete"):
            terminal.expect("> ")
            terminal.type(f"{line}\n")
        terminal.expect("> ")
        terminal.type("\x03")
        terminal.expect("Write what was answered? y/n ")
        terminal.type("y\n")
        assert terminal.end() == 0
    assert read(tmp_path)["walls.W1.substrate.kind"] == "concrete"


def test_answers_are_told_where_the_file_came_to_be_there_in_the_meantime(tmp_path: Path) -> None:
    with on_terminal("new", "wall.yaml", "--ask", folder=tmp_path) as terminal:
        for line in ("Clinic", "concrete"):
            terminal.expect("> ")
            terminal.type(f"{line}\n")
        terminal.expect("> ")
        (tmp_path / "wall.yaml").write_text("mine", "utf-8")
        terminal.type("\x04")
        assert terminal.end() == 2
    assert "specgen: wall.yaml: the file exists and is not overwritten (give another name)" in terminal.shown
    assert "specgen: walls.W1.substrate.kind: the answer was concrete" in terminal.shown
    assert (tmp_path / "wall.yaml").read_text("utf-8") == "mine"


def test_a_word_of_the_trade_is_taken_for_the_choice_it_means(tmp_path: Path) -> None:
    assert ask(tmp_path, "Clinic", "CMU").code == 0
    assert read(tmp_path)["walls.W1.substrate.kind"] == "concrete_masonry"
