"""Results on any terminal, on a full disk, to a reader that leaves: what is shown and how it ends. Behavior of ours."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from specgen.terminal.streams import write_plainly
from tests.running import Ended, in_checkout, run_process, run_specgen, start_process
from tests.support import SMALL, merged, written

# What is counted as run is run elsewhere too; see tests/conftest.py.
pytestmark = pytest.mark.no_cover
NAMED = merged(SMALL, {"project": {"name": "W\u00f6hler \u58c1 95 \u00b0F \U0001f600"}})
CUP = ("calc", "cup-viscosity", "cup=zahn 4", "seconds=25")


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("95 °F", "95 deg F"),
        ("2.32 m²", "2.32 m^2"),
        ("5.67·10⁻⁸ W/m²K⁴", "5.67*10^-8 W/m^2K^4"),
        ("s¹⁰", "s^10"),
        ("25 µm, 25 μm", "25 um, 25 um"),
        ("1½ in, ¾ in", "1 1/2 in,  3/4 in"),
        ("3 × 4 − 2", "3 x 4 - 2"),
        ("“5’ – 6″”", '"5\' - 6""'),
        ("Wöhler 壁 😀", "W\\xf6hler \\u58c1 \\U0001f600"),
        ("no sign at all", "no sign at all"),
    ],
)
def test_what_a_terminal_lacks_is_written_in_plain_letters(text: str, plain: str) -> None:
    assert write_plainly(text) == plain


def run_in(encoding: str, *words: str) -> tuple[int, str, str]:
    done = subprocess.run(
        [sys.executable, "-m", "specgen", *words],
        capture_output=True,
        check=False,
        **in_checkout({"PYTHONIOENCODING": encoding}),
    )
    return done.returncode, done.stdout.decode(encoding), done.stderr.decode(encoding)


@pytest.mark.parametrize(
    ("encoding", "shown"),
    [
        ("ascii", "14.8 mm^2/s^2"),
        ("cp1252", "14.8 mm²/s²"),
        ("latin-1", "14.8 mm²/s²"),
        ("cp037", "14.8 mm²/s²"),
        ("cp1251", "14.8 mm^2/s^2"),
        ("utf-16", "14.8 mm²/s²"),
        ("utf-8", "14.8 mm²/s²"),
    ],
)
def test_a_sum_is_shown_in_any_encoding(encoding: str, shown: str) -> None:
    code, out, err = run_in(encoding, *CUP)
    assert (code, err) == (0, "")
    assert shown in out


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-16", "utf-8"])
def test_a_check_in_any_encoding_ends_as_it_would(encoding: str, tmp_path: Path) -> None:
    file = str(written(tmp_path, merged(NAMED, {"walls": {"W1": {"attachment": {"method": "mechanical"}}}})))
    code, out, err = run_in(encoding, "check", file)
    assert (code, err) == (1, "")
    assert ("W\u00f6hler" in out) != ("W\\xf6hler" in out)
    code, out, err = run_in(encoding, "check", file, "--format", "json")
    assert (code, err) == (1, "")
    assert json.loads(out)["project"] == NAMED["project"]["name"]


def test_a_refusal_names_a_file_that_the_terminal_cannot_show() -> None:
    code, out, err = run_in("ascii", "check", "W\u00f6hler.yaml")
    assert (code, out) == (2, "")
    assert err.startswith("specgen: W\\xf6hler.yaml: the file cannot be read")


def test_a_message_is_one_line_whatever_a_file_is_called() -> None:
    done = run_specgen("check", "a\nspecgen: W1 yes\x1b[2J\u2028.yaml")
    assert (done.code, done.out, len(done.err.splitlines())) == (2, "", 1)
    assert done.err.startswith("specgen: a\\nspecgen: W1 yes\\u001b[2J\\u2028.yaml: ")


def test_a_system_of_plain_letters_reads_judges_and_builds(tmp_path: Path) -> None:
    plain = in_checkout({"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"})
    file, out = str(written(tmp_path, NAMED)), str(tmp_path / "out")
    assert run_specgen("check", file, **plain).code == 0
    done = run_specgen("build", file, "--out", out, "--only", "D10", "--formats", "txt", **plain)
    assert (done.code, done.out, len(done.err.splitlines())) == (0, "", 2)
    assert "W\u00f6hler" in next((tmp_path / "out").glob("*.txt")).read_text("utf-8")


def run_shell(words: str) -> Ended:
    return run_process(["sh", "-c", f'"{sys.executable}" -m specgen {words}'])


FULL = "specgen: the output cannot be written: No space left on device (make room on the disk, or send it elsewhere)\n"


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device here is always full")
@pytest.mark.parametrize("words", ["calc", "rules ATT-01", "schema", "--help", "calc --help", "--version"])
def test_a_full_device_is_told(words: str) -> None:
    assert run_shell(f"{words} > /dev/full") == (2, "", FULL)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device here is always full")
@pytest.mark.parametrize(("words", "code"), [("calc", 0), ("check none.yaml", 2), ("nonsense", 2), ("calc x", 2)])
def test_messages_that_cannot_be_written_change_no_exit_code(words: str, code: int) -> None:
    for nowhere in ("2> /dev/full", "2>&-", "2>&- < /dev/null", "> /dev/null 2>&-"):
        done = run_shell(f"{words} {nowhere}")
        assert done.code == code
        assert done.err == ""
        assert (done.out == "") == (code != 0 or nowhere.startswith(">"))


def test_a_closed_output_changes_no_exit_code(tmp_path: Path) -> None:
    file = written(tmp_path, SMALL)
    assert run_shell("calc >&-") == (0, "", "")
    assert run_shell(f"check '{file}' >&- 2>&- <&-") == (0, "", "")
    done = run_shell(f"build '{file}' --out '{tmp_path / 'out'}' --only D10 --formats txt >&- 2>&- <&-")
    assert done == (0, "", "")
    # No file of the package has taken the number of a stream that was closed.
    assert all("specgen:" not in path.read_text("utf-8") for path in (tmp_path / "out").iterdir())


LONG = [
    ("schema",),
    ("calc",),
    ("calc", "joint-width", "--help"),
    ("calc", "joint-width", "--from", "project_examples/clean/project.yaml"),
    ("check", "project_examples/clean/project.yaml"),
    ("check", "project_examples/clean/project.yaml", "--format", "json"),
    ("check", "project_examples/clean", "project_examples/first-look/project.yaml", "--quiet"),
    ("compare", "project_examples/clean/project.yaml", "project_examples/clean/project.yaml"),
    ("completion", "bash"),
    ("fields",),
    ("fields", "--format", "json"),
    ("matrix",),
    ("rules",),
    ("rules", "--format", "json"),
    ("--help",),
    ("check", "--help"),
]


@pytest.mark.parametrize("words", LONG, ids=" ".join)
def test_a_reader_that_leaves_is_no_fault(words: tuple[str, ...]) -> None:
    running = start_process([sys.executable, "-m", "specgen", *words])
    assert running.stdout is not None and running.stderr is not None
    running.stdout.close()  # before the first letter is written
    assert running.stderr.read() == ""
    assert running.wait() == 0


def test_a_reader_that_takes_a_line_leaves_the_verdict_as_it_was(tmp_path: Path) -> None:
    file = written(tmp_path, merged(SMALL, {"walls": {"W1": {"attachment": {"method": "mechanical"}}}}))
    done = run_process(
        ["bash", "-c", f"'{sys.executable}' -m specgen check '{file}' | head -1; echo ${{PIPESTATUS[0]}}"]
    )
    assert (done.out.splitlines()[-1], done.err) == ("1", "")


@pytest.mark.parametrize("words", ["schema", "rules --format json", "fields --format json", "completion bash"])
def test_a_reader_of_one_line_gets_it_and_no_more_is_said(words: str) -> None:
    done = run_process(["bash", "-c", f"'{sys.executable}' -m specgen {words} | head -1; echo ${{PIPESTATUS[0]}}"])
    line, code = done.out.splitlines()
    assert line
    assert (code, done.err) == ("0", "")


def test_a_reader_of_messages_that_leaves_changes_no_package(tmp_path: Path) -> None:
    file, out = written(tmp_path, SMALL), tmp_path / "out"
    build = f"'{sys.executable}' -m specgen build '{file}' --out '{out}' --only D05 --formats txt"
    done = run_process(["bash", "-c", f"{build} 2>&1 >/dev/null | true; echo ${{PIPESTATUS[0]}}"])
    assert (done.out, done.err) == ("0\n", "")
    assert (out / "manifest.json").is_file()


def test_a_name_of_bytes_that_are_no_letters_is_told() -> None:
    done = subprocess.run(
        [sys.executable.encode(), b"-m", b"specgen", b"check", b"\xff.yaml"], capture_output=True, **in_checkout()
    )
    assert (done.returncode, done.stdout) == (2, b"")
    assert b"Traceback" not in done.stderr
    assert done.stderr.startswith(b"specgen: \\udcff.yaml: ")
    assert os.linesep.encode() not in done.stderr.rstrip()
