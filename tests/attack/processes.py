"""Runs attempts: each in a process of its own, or many in one that is started anew when it fails."""

import base64
import json
import os
import resource
import select
import signal
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

from tests.attack.attempt import HANGS, MOST_MEGABYTES, Attempt, Ended
from tests.support import ROOT

MOST_ADDRESSED = 4 << 30  # bytes of memory, so that one attempt does not take the machine
MOST_BY_ONE = 200  # attempts by one worker


def run_alone(attempt: Attempt, job: Path) -> Ended:
    """Run an attempt in a process of its own."""
    out, err = job.parent / "stdout", job.parent / "stderr"
    given = Path(attempt.output) if attempt.output else out
    with given.open("wb") as into, err.open("wb") as second:
        # Where files may not grow, what it says goes through a pipe: one message never fills it.
        read, write = os.pipe() if attempt.file_size else (None, second.fileno())
        process = subprocess.Popen(
            [sys.executable, "-m", "specgen", *attempt.words],
            cwd=job,
            env=_environment() | dict(attempt.environment),
            stdin=subprocess.DEVNULL,
            stdout=into,
            stderr=write,
            preexec_fn=lambda: _bound(attempt),
        )
        code, used = _wait(process.pid, attempt)
    said = b"" if attempt.output else out.read_bytes()
    told = err.read_bytes() if read is None else _drain(read, write)
    out.unlink(missing_ok=True)
    err.unlink()
    return Ended(code, said, told, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024)


def _drain(read: int, write: int) -> bytes:
    """What stands in a pipe whose writer has ended."""
    os.close(write)
    with os.fdopen(read, "rb") as pipe:
        return pipe.read()


def _environment() -> dict[str, str]:
    return os.environ | {"PYTHONPATH": str(ROOT), "PYTHONDONTWRITEBYTECODE": "1"}


def _bound(attempt: Attempt) -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MOST_ADDRESSED, MOST_ADDRESSED))
    resource.setrlimit(resource.RLIMIT_CPU, (HANGS, HANGS + 5))
    if attempt.file_size:
        resource.setrlimit(resource.RLIMIT_FSIZE, (attempt.file_size, attempt.file_size))


def _wait(pid: int, attempt: Attempt) -> tuple[int | None, Any]:
    """The exit code of a process, None where it hung, and what it used; a signal is sent to it on the way."""
    start, sent = time.monotonic(), attempt.kill is None
    while True:
        ended, status, used = os.wait4(pid, os.WNOHANG)
        passed = time.monotonic() - start
        if ended:
            return os.waitstatus_to_exitcode(status), used
        if not sent and passed >= attempt.after and attempt.kill is not None:
            os.kill(pid, attempt.kill)
            sent = True
        if passed > HANGS:
            os.kill(pid, signal.SIGKILL)
            return None, os.wait4(pid, 0)[2]
        time.sleep(0.005)


class Worker:
    """A process that runs many attempts one after the other; a dead one is replaced."""

    def __init__(self) -> None:
        self._process: subprocess.Popen[str] | None = None
        self._done = 0

    def run(self, attempt: Attempt, job: Path) -> Ended:
        """Run an attempt."""
        process = self._ready()
        assert process.stdin is not None and process.stdout is not None
        process.stdin.write(
            json.dumps({"words": [os.fsencode(word).hex() for word in attempt.words], "job": str(job)}) + "\n"
        )
        process.stdin.flush()
        ready, _, _ = select.select([process.stdout], [], [], HANGS)
        line = process.stdout.readline() if ready else ""
        if not line:
            self.close()
            code = None if not ready else process.returncode
            return Ended(code, b"", b"the process died" if ready else b"", HANGS, 0)
        told = json.loads(line)
        if told["megabytes"] > MOST_MEGABYTES:
            self.close()
        out, err = (base64.b64decode(told[stream]) for stream in ("out", "err"))
        return Ended(told["code"], out, err, told["seconds"], told["megabytes"])

    def close(self) -> None:
        """End the process."""
        if self._process is not None:
            self._process.kill()
            self._process.wait()
        self._process = None

    def _ready(self) -> subprocess.Popen[str]:
        self._done += 1
        if self._done % MOST_BY_ONE == 0:
            self.close()
        if self._process is None:
            self._process = subprocess.Popen(
                [sys.executable, "-m", "tests.attack.worker"],
                cwd=ROOT,
                env=_environment(),
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL,
                text=True,
                preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_AS, (MOST_ADDRESSED, MOST_ADDRESSED)),
            )
        return self._process
