"""Makes writing a folder atomic: a lock for each build, and an exchange of folders."""

import ctypes
import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from specgen.model.problem import Problem, Refused

try:
    import fcntl
except ImportError:  # a system without locks of this kind
    fcntl = None  # type: ignore[assignment]

PATIENCE = 20.0  # seconds that a build waits for another one beside it
_HERE, _EXCHANGE = -100, 2  # AT_FDCWD of fcntl.h and RENAME_EXCHANGE of linux/fs.h


@contextmanager
def folder_lock(folder: Path, answer_signal: Callable[[], None]) -> Iterator[bool]:
    """Lock `folder` while one build writes in it; yields False if the system has no lock for folders.

    The lock is on the folder itself and ends with the process: an interrupted build leaves none behind.
    `answer_signal` is called while it waits.
    """
    try:
        descriptor = os.open(folder, os.O_RDONLY)
    except OSError:
        yield False
        return
    try:
        yield _lock(descriptor, folder, answer_signal)
    finally:
        os.close(descriptor)


def _lock(descriptor: int, folder: Path, answer_signal: Callable[[], None]) -> bool:
    end = time.monotonic() + PATIENCE
    while fcntl:
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if time.monotonic() > end:
                message = "nothing was written: another build is writing in this folder"
                raise Refused(Problem(message, "wait until it has ended", file=str(folder))) from None
            answer_signal()
            time.sleep(0.02)
        except OSError:
            return False
        else:
            return True
    return False


def exchange_folders(first: Path, other: Path, aside: Path) -> None:
    """Exchange two folders: in one step if the system can, else by way of `aside`. On OSError nothing has moved."""
    if _exchange_at_once(first, other):
        return
    moved: list[tuple[Path, Path]] = []
    try:
        for start, end in ((other, aside), (first, other), (aside, first)):
            start.rename(end)
            moved.append((start, end))
    except BaseException:
        for start, end in reversed(moved):
            end.rename(start)
        raise


def _exchange_at_once(first: Path, other: Path) -> bool:
    """Whether the kernel exchanged the folders; if not, plain renames give the reason."""
    if not sys.platform.startswith("linux"):
        return False
    call = getattr(ctypes.CDLL(None), "renameat2", None)
    return call is not None and call(_HERE, os.fsencode(first), _HERE, os.fsencode(other), _EXCHANGE) == 0
