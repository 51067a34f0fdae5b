"""`check` on a terminal of its own: its width, its color, and the line of the file with a mark below the value."""

import os
import re
import sys
from pathlib import Path

import pytest

from tests.commands.support import STOPPED
from tests.running import in_checkout
from tests.support import written

pty = pytest.importorskip("pty")
COLOR = re.compile(r"\x1b\[[\d;]*m")


def on_terminal(file: Path, *words: str, columns: int = 80, **environment: str) -> str:
    """What the command writes to a terminal of so many columns."""
    import fcntl
    import struct
    import subprocess
    import termios

    master, slave = pty.openpty()
    fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 40, columns, 0, 0))
    plain = {name: value for name, value in os.environ.items() if name not in ("NO_COLOR", "COLUMNS")}
    how = in_checkout() | {"env": plain | {"TERM": "xterm"} | in_checkout_path() | environment}
    command = [sys.executable, "-m", "specgen", "check", str(file), *words]
    running = subprocess.Popen(command, stdin=slave, stdout=slave, stderr=slave, **how)
    os.close(slave)
    written_to = b""
    while True:
        try:
            piece = os.read(master, 65_536)
        except OSError:  # Linux says so where the other end is closed
            break
        if not piece:
            break
        written_to += piece
    os.close(master)
    running.wait()
    return written_to.decode().replace("\r\n", "\n")


def in_checkout_path() -> dict[str, str]:
    return {"PYTHONPATH": in_checkout()["env"]["PYTHONPATH"]}


def piped(file: Path, *words: str) -> str:
    from tests.running import run_specgen

    return run_specgen("check", str(file), *words).out


@pytest.mark.no_cover
def test_a_terminal_has_color_that_carries_no_meaning(tmp_path: Path) -> None:
    file = written(tmp_path, STOPPED)
    painted = on_terminal(file, columns=200)
    assert painted.startswith("\x1b[1;31mPackage: stopped by 1 stop\x1b[0m\n")
    assert "\x1b[1;31mSTOP\x1b[0m ATT-01a  W1\n" in painted
    # Without its color it says the same.
    assert COLOR.sub("", painted) == on_terminal(file, columns=200, NO_COLOR="1")
    assert COLOR.sub("", painted) == on_terminal(file, "--color", "never", columns=200)
    assert "\x1b" not in on_terminal(file, TERM="dumb")


@pytest.mark.no_cover
def test_the_line_of_the_file_stands_with_a_mark_below_the_value(tmp_path: Path) -> None:
    text = "format: 1\npackage: {purpose: design_draft}\nproject: {name: Trial}\nwalls:\n  W1:\n"
    text += "    substrate: {kind: concrete}\n    attachment: {method: mechanical}  # screws\n"
    file = written(tmp_path, text)
    shown = on_terminal(file, NO_COLOR="1")
    assert (
        "     at project.yaml:7:18 walls.W1.attachment.method\n"
        "        7 |     attachment: {method: mechanical}  # screws\n"
        "          |                          ^^^^^^^^^^\n"
    ) in shown
    assert "^" not in piped(file)
    # Color that is asked for in a pipe brings no mark.
    assert "\x1b[1;31mSTOP\x1b[0m" in piped(file, "--color", "always") and "^" not in piped(file, "--color", "always")


@pytest.mark.no_cover
@pytest.mark.parametrize("columns", [50, 100, 0])
def test_lines_wrap_at_the_width_of_the_terminal(columns: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    shown = on_terminal(written(tmp_path, STOPPED), columns=columns, NO_COLOR="1").splitlines()
    most = columns or 80
    wide = [line for line in shown if len(line) > most and ": specgen " not in line and " " in line.strip()]
    assert wide == []
    assert max(len(line) for line in shown if ": specgen " not in line) > most - 15


@pytest.mark.no_cover
def test_no_word_of_the_file_steers_the_terminal(tmp_path: Path) -> None:
    name = "a\u200b\x1b[2Jb.yaml"
    file = written(tmp_path, STOPPED, name)
    shown = on_terminal(file)
    assert "\x1b[2J" not in shown
    assert set(COLOR.findall(shown)) <= {"\x1b[0m", "\x1b[1m", "\x1b[1;31m", "\x1b[33m", "\x1b[36m", "\x1b[32m"}
