"""Help: what a command does, its arguments, examples that run, exit codes, where to read on; and slips of options."""

import re
import shlex
from contextlib import chdir
from pathlib import Path
from typing import Any

import pytest

from specgen.cli import main
from specgen.commands import list_verbs, load_command, load_commands, make_parser
from tests.running import run_main
from tests.support import ROOT

VERBS = list_verbs()


def read_help(capsys: Any, *words: str) -> str:
    try:
        assert main([*words, "--help"]) == 0
    except SystemExit as ended:
        assert ended.code == 0
    said = capsys.readouterr()
    assert said.err == ""
    return said.out


@pytest.mark.parametrize("verb", VERBS)
def test_help_says_what_it_does_with_examples_exit_codes_and_where_to_read_on(verb: str, capsys: Any) -> None:
    out = read_help(capsys, verb)
    parts = re.split(r"\n\n(?=[a-z ]+:\n)", out)
    heads = [part.split("\n")[0] for part in parts[1:]]
    assert heads[-3:] == ["examples:", "exit codes:", "read on:"]
    # The sentence below the usage is the line of `specgen --help`, as a sentence.
    said = load_command(verb).HELP
    assert f"{said[0].upper()}{said[1:]}." in parts[0].splitlines()
    examples, exits, _ = parts[-3:]
    assert re.search(rf"^  specgen {verb}\b.*\n      \S", examples, re.M)
    assert re.findall(r"^  (\d)  \S", exits, re.M) in (["0", "2"], ["0", "1", "2"])


@pytest.mark.parametrize("verb", VERBS)
def test_every_argument_says_what_it_is_for(verb: str) -> None:
    parser = make_parser({verb: load_command(verb)})
    (verbs,) = (action for action in parser._actions if action.metavar == "COMMAND")
    own = verbs.choices[verb]  # type: ignore[index]
    assert [action.dest for action in own._actions if not action.help] == []


@pytest.mark.parametrize("verb", VERBS)
def test_the_examples_are_understood(verb: str, capsys: Any) -> None:
    parser = make_parser(load_commands())
    examples = load_command(verb).EXAMPLES  # type: ignore[attr-defined]
    for call, about in examples:
        words = shlex.split(re.split(r" [>|;]", call)[0])
        assert words[0] == verb and about
        if "--help" not in words:
            assert parser.parse_args(words).command == verb


def test_the_examples_of_the_manual_run(capsys: Any) -> None:
    for verb in ("fields", "rules", "matrix", "schema"):
        for call, _ in load_command(verb).EXAMPLES:  # type: ignore[attr-defined]
            done = run_main(capsys, *shlex.split(call.split(" >")[0]))
            assert (call, done.code, done.err) == (call, 0, "")
            assert done.out


def test_the_examples_of_a_project_run_in_a_folder_with_one(tmp_path: Path, capsys: Any) -> None:
    with chdir(tmp_path):
        (tmp_path / "project.yaml").write_bytes((ROOT / "project_examples/first-look/project.yaml").read_bytes())
        for words in (("check", "project.yaml"), ("check", "project.yaml", "--rule", "ATT-01")):
            assert run_main(capsys, *words).code in (0, 1)


@pytest.mark.parametrize("verb", ["", *VERBS])
@pytest.mark.parametrize("columns", [60, 80, 120])
def test_help_is_no_wider_than_the_terminal(
    verb: str, columns: int, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    lines = read_help(capsys, *([verb] if verb else [])).splitlines()
    # A call is never broken, as it is there to be copied.
    calls = [line for line in lines if line.startswith("  specgen ") and len(line) > columns]
    assert [line for line in lines if len(line) > columns and line not in calls] == []


SLIPS = [
    (("check", "a.yaml", "--formt", "json"), "there is no option '--formt' (did you mean --format?)"),
    (("check", "--sevrity=stop", "a.yaml"), "there is no option '--sevrity' (did you mean --severity?)"),
    # A part of a name is no name: a script that relies on it would break with the next option.
    (("check", "a.yaml", "--rul", "ATT-01"), "there is no option '--rul' (did you mean --rule?)"),
    (("build", "a.yaml", "--ou", "out"), "there is no option '--ou' (did you mean --out?)"),
    (("build", "a.yaml", "--out", "o", "--drft"), "there is no option '--drft' (did you mean --draft?)"),
    (("--quite", "check", "a.yaml"), "there is no option '--quite' (did you mean --quiet?)"),
    (("--versoin",), "there is no option '--versoin' (did you mean --version?)"),
    (("check", "a.yaml", "-x"), "'-x' belongs to no argument (specgen check --help tells what there is)"),
    (("matrix", "all"), "'all' belongs to no argument (specgen matrix --help tells what there is)"),
    (("chek", "a.yaml"), "there is no command 'chek' (did you mean check?)"),
    (
        ("build", "a.yaml", "-o"),
        "--out stands without a value (write for example specgen build project.yaml --out package)",
    ),
    (("build", "a.yaml"), "--out must be given (write for example specgen build project.yaml --out package)"),
    (
        ("take", "a.yaml"),
        "ANSWERS.xlsx must be given (write for example specgen take project.yaml sheets/architect.xlsx)",
    ),
    ((), "COMMAND must be given (specgen --help tells what there is)"),
]


@pytest.mark.parametrize(("words", "told"), SLIPS)
def test_a_slip_is_told_with_the_nearest_option(words: tuple[str, ...], told: str, capsys: Any) -> None:
    assert run_main(capsys, *words) == (2, "", f"specgen: {told}\n")


def test_short_options_do_as_their_long_ones(tmp_path: Path, capsys: Any) -> None:
    project = str(ROOT / "project_examples/first-look/project.yaml")
    how = ("--draft", "--only", "D05", "--formats", "txt")
    assert run_main(capsys, "build", project, "-q", "-o", str(tmp_path / "a"), *how) == (0, "", "")
    assert run_main(capsys, "-q", "build", project, "--out", str(tmp_path / "b"), *how) == (0, "", "")
    names = [sorted(one.name for one in (tmp_path / name).iterdir()) for name in "ab"]
    assert names[0] == names[1] and len(names[0]) == 2
    assert read_help(capsys, "check") == capture(capsys, "check", "-h")


def capture(capsys: Any, *words: str) -> str:
    with pytest.raises(SystemExit):
        main(words)
    return capsys.readouterr().out
