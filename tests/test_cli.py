"""What all commands share: messages and results, near misses, the version, the call as a module."""

import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from specgen import __version__
from specgen.cli import main
from tests.commands.support import run
from tests.support import ROOT, SMALL, written


def test_quiet_leaves_the_messages_out_before_and_after_the_command(tmp_path: Path, capsys: Any) -> None:
    assert run(capsys, "new", str(tmp_path / "a.yaml"))[2]
    assert run(capsys, "--quiet", "new", str(tmp_path / "b.yaml"))[2] == ""
    assert run(capsys, "new", str(tmp_path / "c.yaml"), "--quiet")[2] == ""
    file, out = str(written(tmp_path, SMALL)), str(tmp_path / "out")
    assert "wrote" in run(capsys, "build", file, "--out", out, "--only", "D05")[2]
    assert run(capsys, "build", file, "--out", out, "--only", "D05", "--quiet") == (0, "", "")


def test_quiet_leaves_results_and_refusals_as_they_are(tmp_path: Path, capsys: Any) -> None:
    file = str(written(tmp_path, SMALL))
    assert run(capsys, "check", file, "--quiet") == run(capsys, "check", file)
    code, out, err = run(capsys, "--quiet", "check", str(tmp_path / "none.yaml"))
    assert (code, out) == (2, "")
    assert "cannot be read" in err


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
    code, out, err = run(capsys, *(word.format(file=file) for word in words))
    assert (code, err) == (0, "")
    assert out.endswith("\n")
    assert "\x1b" not in out


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
        (("calc", "hose-loss", "flow=12", "scfm"), "'scfm' is no key with a value"),
        (("calc", "dew-point", "air=70F", "air=80F", "rh=50"), "air is given twice (air=70F or air=80F)"),
        (("fields", "walls.W1.wrb.knid"), "did you mean walls.*.wrb.kind?"),
    ],
)
def test_a_mistyped_word_gets_its_near_miss(words: tuple[str, ...], hint: str, capsys: Any) -> None:
    code, out, err = run(capsys, *words)
    assert (code, out) == (2, "")
    assert hint in err


def test_the_command_runs_as_a_module_and_tells_its_usage(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "specgen", "nonsense"], capture_output=True, text=True, check=False, cwd=tmp_path
    )
    assert done.returncode == 2
    assert "Traceback" not in done.stderr


def test_the_readme_names_every_command() -> None:
    text = (ROOT / "README.md").read_text("utf-8")
    done = subprocess.run([sys.executable, "-m", "specgen", "--help"], capture_output=True, text=True, check=True)
    commands = re.findall(r"(?m)^    (\w+) ", done.stdout)
    assert {"new", "check", "build"} <= set(commands)
    assert [c for c in commands if f"`specgen {c}" not in text] == []
