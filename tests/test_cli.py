"""What all commands share: messages and results, near misses, the version, the call as a module."""

import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

from specgen import __version__
from specgen.cli import main
from tests.running import run_main, run_python, run_specgen
from tests.support import ROOT, SMALL, written


def test_quiet_leaves_the_messages_out_before_and_after_the_command(tmp_path: Path, capsys: Any) -> None:
    assert run_main(capsys, "new", str(tmp_path / "a.yaml")).err
    assert run_main(capsys, "--quiet", "new", str(tmp_path / "b.yaml")).err == ""
    assert run_main(capsys, "new", str(tmp_path / "c.yaml"), "--quiet").err == ""
    file, out = str(written(tmp_path, SMALL)), str(tmp_path / "out")
    assert "wrote" in run_main(capsys, "build", file, "--out", out, "--only", "D05").err
    assert run_main(capsys, "build", file, "--out", out, "--only", "D05", "--quiet") == (0, "", "")


def test_quiet_leaves_results_and_refusals_as_they_are(tmp_path: Path, capsys: Any) -> None:
    file = str(written(tmp_path, SMALL))
    assert run_main(capsys, "check", file, "--quiet") == run_main(capsys, "check", file)
    done = run_main(capsys, "--quiet", "check", str(tmp_path / "none.yaml"))
    assert done.code == 2
    assert done.out == ""
    assert "cannot be read" in done.err


RESULTS = [
    ("check", "{file}"),
    ("check", "{file}", "--rule", "ATT-01"),
    ("check", "{file}", "--severity", "stop", "--format", "json"),
    ("rules",),
    ("rules", "ATT-01"),
    ("fields",),
    ("fields", "walls.*.substrate"),
    ("fields", "climate.hot_air"),
    ("matrix",),
    ("schema",),
    ("schema", "--file", "firm"),
    ("calc",),
    ("calc", "drainage-due", "--from", "{file}"),
    ("calc", "face-heat", "hot_air=95F", "solar_reflectance=0.4", "emittance=0.3", "irradiance=800W/m2"),
]


@pytest.mark.parametrize("words", RESULTS, ids=" ".join)
def test_results_go_out_alone_and_without_colour(words: tuple[str, ...], tmp_path: Path, capsys: Any) -> None:
    file = str(written(tmp_path, SMALL))
    done = run_main(capsys, *(word.format(file=file) for word in words))
    assert done.code == 0
    assert done.err == ""
    assert done.out.endswith("\n")
    assert "\x1b" not in done.out


def test_the_version_is_that_of_the_package(capsys: Any) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["--version"])
    assert ended.value.code == 0
    assert capsys.readouterr().out == f"specgen {__version__}\n"


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (("rules", "ATT-1"), "did you mean ATT-01?"),
        (("rules", "att_01"), "did you mean ATT-01?"),
        (("calc", "face_heta"), "did you mean face-heat?"),
        (("calc", "joint-widht"), "did you mean joint-width?"),
        (("calc", "joint-width", "lenght=3ft"), "did you mean length?"),
        (("calc", "hose-loss", "flow=12", "scfm"), "'scfm' is not a key with a value"),
        (("calc", "dew-point", "air=70F", "air=80F", "rh=50"), "air is given twice (air=70F or air=80F)"),
        (("fields", "walls.W1.wrb.knid"), "did you mean walls.*.wrb.kind?"),
        (("go", "--surfac", "70F"), "there is no option '--surfac' (did you mean --surface?)"),
        (("go", "--temp", "70F"), "there is no option '--temp' (known: --help, --step, "),
        (("status", "a.yaml", "--elevation", "E2", "log.csv"), "'log.csv' belongs to no argument (write files before"),
    ],
)
def test_a_mistyped_word_gets_its_near_miss(words: tuple[str, ...], hint: str, capsys: Any) -> None:
    done = run_main(capsys, *words)
    assert done.code == 2
    assert done.out == ""
    assert hint in done.err


def test_the_command_runs_as_a_module_and_tells_its_usage(tmp_path: Path) -> None:
    done = run_specgen("nonsense", cwd=tmp_path)
    assert done.code == 2
    assert "Traceback" not in done.err


def test_the_installed_command_is_what_runs_as_a_module() -> None:
    script = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["scripts"]["specgen"]
    module, name = script.split(":")
    assert module == "specgen.__main__"
    assert run_python(f"from {module} import {name}; {name}()", "--version") == (0, f"specgen {__version__}\n", "")


def test_the_readme_names_every_command() -> None:
    text = (ROOT / "README.md").read_text("utf-8")
    commands = re.findall(r"(?m)^    (\w+) ", run_specgen("--help").out)
    assert {"new", "check", "build"} <= set(commands)
    assert [c for c in commands if f"`specgen {c}" not in text] == []


@pytest.mark.parametrize(
    "words",
    [
        ("calc", "{}"),
        ("calc", "spreading-rate", "{}=1"),
        ("check", "{}.yaml"),
        ("check", "--format", "json", "{}.yaml"),
        ("check", "a", "{}"),
        ("{}",),
        ("fields", "{}"),
        ("rules", "{}"),
        ("check", "--severity", "{}", "a"),
        ("new", "no-folder/{}"),
    ],
    ids=" ".join,
)
@pytest.mark.parametrize(
    "sign", ["\x1b[2J", "\x9b2J", "\x1b]0;x\a", "\nspecgen: done", "\r", "\u202e", "x" * 9_999, "\ue001"]
)
def test_no_word_of_the_user_steers_the_terminal(words: tuple[str, ...], sign: str, capsys: Any) -> None:
    try:
        main([word.format(f"a{sign}b") for word in words])
    except SystemExit as ended:
        assert ended.code == 2
    said = capsys.readouterr()
    lines = [line for line in (said.out + said.err).splitlines() if not line.startswith((" ", "usage:"))]
    assert all(line.isprintable() and len(line) < 1_100 for line in lines)
    assert "\nspecgen: done" not in said.err
