"""Builds that end in the middle, by a signal or a kill, at any step: nothing is lost. All of it is behavior of ours."""

import signal
from pathlib import Path

import pytest

from tests.output.interrupting import ASKED, end_builds_at_random
from tests.running import run_python, words_of_build
from tests.support import SMALL, written

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover


def test_a_package_stays_whole_whatever_step_its_writing_ends_at(tmp_path: Path) -> None:
    code = "import sys; from pathlib import Path; from tests.output.interrupting import end_at_every_step"
    done = run_python(f"{code}; print(*end_at_every_step(Path(sys.argv[1])), 'all steps', sep='\\n')", str(tmp_path))
    assert done == (0, "all steps\n", "")


def test_a_package_stays_whole_whenever_its_build_is_ended(tmp_path: Path) -> None:
    assert end_builds_at_random(tmp_path, seconds=4) == []


# Ends itself when a module is about to be loaded.
LOADING = """
import os, signal, sys
number, module = int(sys.argv.pop()), sys.argv.pop()
signal.signal(signal.SIGINT, signal.default_int_handler)
signal.signal(signal.SIGHUP, signal.SIG_DFL)
hook = lambda event, found: os.kill(os.getpid(), number) if event == "import" and found[0] == module else None
sys.addaudithook(hook)
from specgen.__main__ import run
run()
"""


@pytest.mark.parametrize("number", ASKED)
@pytest.mark.parametrize("module", ["specgen.cli", "specgen.pipeline", "jinja2", "specgen.formats.html"])
def test_a_signal_while_modules_load_ends_the_build_without_a_word(
    module: str, number: signal.Signals, tmp_path: Path
) -> None:
    (tmp_path / "at").mkdir()
    words = ["build", str(written(tmp_path, SMALL)), "--out", str(tmp_path / "at" / "out"), "--formats", "html"]
    assert run_python(LOADING, *words, module, str(int(number))) == (-number, "", "")
    assert list((tmp_path / "at").iterdir()) == []


def test_a_signal_that_a_run_ignores_from_its_start_is_ignored_to_its_end(tmp_path: Path) -> None:
    words = words_of_build(written(tmp_path, SMALL), tmp_path / "out")
    ignoring = LOADING.replace("signal.SIG_DFL", "signal.SIG_IGN")
    done = run_python(ignoring, *words, "specgen.output.signals", str(int(signal.SIGHUP)))
    assert (done.code, done.out) == (0, "")
    assert (tmp_path / "out" / "manifest.json").exists()
