"""A command on a terminal of its own, as a person has it: keys go in, what is shown comes out."""

import contextlib
import fcntl
import os
import pty
import select
import struct
import subprocess
import sys
import termios
from collections.abc import Iterator
from pathlib import Path

from tests.running import in_checkout

# The terminal becomes that of the process, so that Ctrl-C reaches it as a signal.
_BEGIN = (
    "import fcntl, os, sys, termios; fcntl.ioctl(0, termios.TIOCSCTTY, 0);"
    "os.execv(sys.executable, [sys.executable, '-m', 'specgen', *sys.argv[1:]])"
)
_PATIENCE = 60  # seconds, for a machine with much else to do


class Terminal:
    """A running command and the side of the terminal where the person sits."""

    def __init__(self, running: subprocess.Popen[bytes], side: int) -> None:
        self.running, self.side = running, side
        self.shown = ""  # all that was shown so far
        self._read = 0

    def expect(self, text: str) -> str:
        """Wait until a text is shown; returns what was shown up to its end since the last one."""
        while (at := self.shown.find(text, self._read)) < 0:
            assert self._take(), f"{text!r} was never shown:\n{self.shown}"
        start, self._read = self._read, at + len(text)
        return self.shown[start : self._read]

    def type(self, keys: str) -> None:
        """Press keys; `\\n` is Enter."""
        os.write(self.side, keys.encode())

    def end(self) -> int:
        """Wait until the command has ended; returns its exit code, negative for a signal."""
        while self._take():
            pass
        return self.running.wait(_PATIENCE)

    def _take(self) -> bool:
        """Take what is shown; False when the command has left the terminal, or shows nothing any more."""
        if not select.select([self.side], [], [], _PATIENCE)[0]:
            return False
        with contextlib.suppress(OSError):  # what the other side leaves behind on closing
            more = os.read(self.side, 65536)
            self.shown += more.decode().replace("\r\n", "\n")
            return bool(more)
        return False


@contextlib.contextmanager
def on_terminal(*words: str, folder: Path, columns: int = 80) -> Iterator[Terminal]:
    """Run a command of specgen on a terminal of so many columns, from a folder."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 40, columns, 0, 0))
    running = subprocess.Popen(
        [sys.executable, "-c", _BEGIN, *words],
        stdin=theirs,
        stdout=theirs,
        stderr=theirs,
        start_new_session=True,
        **(in_checkout() | {"cwd": folder}),
    )
    os.close(theirs)
    try:
        yield Terminal(running, ours)
    finally:
        running.kill()
        running.wait()
        os.close(ours)
