"""`completion`: the script of a shell, read by that shell and asked for what stands at the cursor."""

import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import shtab

from specgen.commands import list_verbs
from tests.running import run_main, run_python

# A shell of its own is asked as it asks at the Tab key: the words, the place of the cursor, the answers.
ASK = """
source "$1"; shift
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMP_LINE="$*"; COMP_POINT=${#COMP_LINE}
function_of() { complete -p specgen | sed -E 's/.*-F ([^ ]+).*/\\1/'; }
"$(function_of)" specgen "${COMP_WORDS[COMP_CWORD]}" "${COMP_WORDS[COMP_CWORD - 1]}"
printf '%s\\n' "${COMPREPLY[@]}"
"""


@pytest.mark.skipif(shutil.which("bash") is None, reason="no bash here")
@pytest.mark.parametrize(
    ("words", "offered"),
    [
        (("ch",), {"check"}),
        (("check", "--sev"), {"--severity"}),
        (("check", "--severity", ""), {"stop", "caution", "note"}),
        (("calc", "dew"), {"dew-point"}),
        (("schema", "--file", "f"), {"firm"}),
    ],
)
def test_bash_offers_what_may_stand_at_the_cursor(
    words: tuple[str, ...], offered: set[str], tmp_path: Path, capsys: Any
) -> None:
    script = tmp_path / "script.bash"
    script.write_text(run_main(capsys, "completion", "bash").out, "utf-8")
    done = subprocess.run(
        ["bash", "-c", ASK, "bash", str(script), "specgen", *words], capture_output=True, text=True, check=True
    )
    assert (set(done.stdout.split()), done.stderr) == (offered, "")


@pytest.mark.skipif(shutil.which("bash") is None, reason="no bash here")
def test_bash_offers_the_files_of_the_folder(tmp_path: Path, capsys: Any) -> None:
    (tmp_path / "project.yaml").touch()
    (tmp_path / "script.bash").write_text(run_main(capsys, "completion", "bash").out, "utf-8")
    words = ["bash", "-c", ASK, "bash", "script.bash", "specgen", "check", "pro"]
    done = subprocess.run(words, capture_output=True, text=True, check=True, cwd=tmp_path)
    assert done.stdout.split() == ["project.yaml"]


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_script_of_each_shell_names_every_command(shell: str, capsys: Any) -> None:
    assert shell in shtab.SUPPORTED_SHELLS
    out = run_main(capsys, "completion", shell).out
    assert [verb for verb in list_verbs() if verb not in out] == []


def test_another_shell_is_told_which_there_are(capsys: Any) -> None:
    done = run_main(capsys, "completion", "bsh")
    assert (done.code, done.out, done.err) == (2, "", "specgen: SHELL cannot be 'bsh' (did you mean bash?)\n")


def test_without_the_library_the_extra_is_named(monkeypatch: pytest.MonkeyPatch, capsys: Any) -> None:
    monkeypatch.setitem(sys.modules, "shtab", None)
    assert run_main(capsys, "completion", "bash") == (
        2,
        "",
        "specgen: completion needs a library that is not installed (install specgen with its extra completion)\n",
    )


def test_no_other_command_loads_the_library() -> None:
    code = "import sys; from specgen.cli import main; main(['rules']); print('shtab' in sys.modules)"
    assert run_python(code).out.endswith("\nFalse\n")
