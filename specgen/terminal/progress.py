"""What is being done, in one line of a terminal from the second second on; gone when it is done."""

import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from threading import Event, Lock, Thread
from typing import TextIO

from specgen.terminal.streams import show_as_line

Tell = Callable[[str], None]  # takes what is being done now
AFTER = 1.0  # seconds that nobody needs to be told of
_TICK = 1.0  # seconds between two lines of a long step
_WIDTH = 80  # of a terminal that does not tell its own


def tell_nobody(what: str) -> None:
    """Tell of no progress."""


@contextmanager
def show_progress(quiet: bool, ticking: bool = True) -> Iterator[Tell]:
    """Hands out what is told of progress: to the terminal that standard error is, else to nobody.

    `ticking` counts the seconds of a long step too, by a thread of its own: not beside processes that are copied.
    """
    if quiet or not sys.stderr.isatty():
        yield tell_nobody
        return
    line = ProgressLine(sys.stderr)
    ended, ticker = Event(), None
    if ticking:
        ticker = Thread(target=_tick, args=(line, ended), daemon=True)
        ticker.start()
    try:
        yield line.tell
    finally:
        ended.set()
        if ticker is not None:
            ticker.join()
        line.erase()


def _tick(line: "ProgressLine", ended: Event) -> None:
    while not ended.wait(_TICK):
        line.draw()


class ProgressLine:
    """The line on a terminal: what is being done, and for how many seconds."""

    def __init__(self, terminal: TextIO, clock: Callable[[], float] = time.monotonic) -> None:
        self._terminal, self._clock, self._lock = terminal, clock, Lock()
        self._began, self._what, self._shown = clock(), "", 0

    def tell(self, what: str) -> None:
        """Take what is being done now, and show it where it has lasted long enough."""
        self._what = what
        self.draw()

    def draw(self) -> None:
        """Show the line anew, in place of the one before it."""
        seconds = self._clock() - self._began
        if self._what and seconds >= AFTER:
            line = show_as_line(f"specgen: {self._what}, {seconds:.0f} s")[: self._width() - 1]
            with self._lock:
                self._write(f"\r{line:<{self._shown}}")
                self._shown = len(line)

    def erase(self) -> None:
        """Leave the line as if nothing had been shown."""
        with self._lock:
            if self._shown:
                self._write(f"\r{'':<{self._shown}}\r")
                self._shown = 0

    def _write(self, text: str) -> None:
        with suppress(OSError):  # a terminal that is gone needs no progress
            self._terminal.write(text)
            self._terminal.flush()

    def _width(self) -> int:
        try:
            return os.get_terminal_size(self._terminal.fileno()).columns or _WIDTH
        except (OSError, ValueError):
            return _WIDTH
