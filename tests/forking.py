"""The command in a process of its own that begins with all modules loaded, where the way it starts proves nothing.

Such a process is a copy of this one: it has a tenth of the work of one that starts anew.
"""

import io
import os
import signal
import sys
import tempfile
import traceback
from collections.abc import Callable, Sequence
from functools import cache
from pathlib import Path
from typing import IO

from specgen.__main__ import run
from specgen.cli import main
from tests.running import Ended, words_of_build
from tests.support import ROOT, SMALL, written


class Forked:
    """A command that runs beside this process."""

    def __init__(self, pid: int, out: IO[bytes], err: IO[bytes]) -> None:
        self.pid, self.code = pid, None
        self._said = out, err

    def poll(self) -> int | None:
        """What it ended with; none while it runs."""
        return self._look(os.WNOHANG)

    def send_signal(self, number: int) -> None:
        """Send it a signal."""
        os.kill(self.pid, number)

    def wait(self) -> Ended:
        """Wait until it has ended."""
        code = self._look(0)
        assert code is not None
        out, err = (_read_whole(said) for said in self._said)
        return Ended(code, out, err)

    def _look(self, how: int) -> int | None:
        if self.code is None:
            ended, status = os.waitpid(self.pid, how)
            self.code: int | None = os.waitstatus_to_exitcode(status) if ended else None
        return self.code


def fork_specgen(words: Sequence[str], first: Callable[[], object] = tuple) -> Forked:
    """Start a command of specgen in a copy of this process, which does `first` before anything else."""
    _load_all()
    out, err = tempfile.TemporaryFile(), tempfile.TemporaryFile()  # noqa: SIM115
    pid = os.fork()
    if pid == 0:
        code = 70
        try:
            code = _run_here(words, out, err, first)
        finally:
            os._exit(code)
    return Forked(pid, out, err)


@cache
def _load_all() -> None:
    """Load what a build loads."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        assert main(["--quiet", *words_of_build(written(folder, SMALL), folder / "out", "docx,html,txt")]) == 0


def _run_here(words: Sequence[str], out: IO[bytes], err: IO[bytes], first: Callable[[], object]) -> int:
    """In the copy: the exit code of a command, with streams and signals as a process has them that starts."""
    signal.signal(signal.SIGINT, signal.default_int_handler)
    for number, said in enumerate((out, err), 1):
        os.dup2(said.fileno(), number)
    sys.stdout, sys.stderr = (io.TextIOWrapper(os.fdopen(number, "wb"), encoding="utf-8") for number in (1, 2))
    os.chdir(ROOT)
    sys.argv = ["specgen", *words]
    try:
        first()
        run()
    except SystemExit as ended:
        return int(ended.code or 0)
    except BaseException:
        traceback.print_exc()
        return 1
    finally:
        sys.stdout.flush()
        sys.stderr.flush()
    return 0


def _read_whole(file: IO[bytes]) -> str:
    with file:
        file.seek(0)
        return file.read().decode()
