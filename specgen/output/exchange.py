"""What makes the writing of a folder one step: a turn for each build, an exchange of folders, no interrupt between."""

import ctypes
import os
import signal
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from specgen.model.problem import Problem, Refused

try:
    import fcntl
except ImportError:  # a system without locks of this kind
    fcntl = None  # type: ignore[assignment]

PATIENCE = 20.0  # seconds that a build waits for another one beside it
_HERE, _EXCHANGE = -100, 2  # AT_FDCWD of fcntl.h and RENAME_EXCHANGE of linux/fs.h


@contextmanager
def turn(folder: Path) -> Iterator[bool]:
    """Holds `folder` while one build writes in it; False where the system has no lock for folders.

    The lock lies on the folder itself and ends with the process: a build that was cut off leaves none behind.
    """
    try:
        held = os.open(folder, os.O_RDONLY)
    except OSError:
        yield False
        return
    try:
        yield _locked(held, folder)
    finally:
        os.close(held)


def _locked(held: int, folder: Path) -> bool:
    end = time.monotonic() + PATIENCE
    while fcntl:
        try:
            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if time.monotonic() > end:
                message = "nothing was written: another build is writing in this folder"
                raise Refused(Problem(message, "wait until it has ended", file=str(folder))) from None
            time.sleep(0.02)
        except OSError:
            return False
        else:
            return True
    return False


def swap(one: Path, other: Path, aside: Path) -> None:
    """Exchange two folders: in one step where the system can, else by way of `aside`. Raises OSError, nothing moved."""
    if _at_once(one, other):
        return
    moved: list[tuple[Path, Path]] = []
    try:
        for start, end in ((other, aside), (one, other), (aside, one)):
            start.rename(end)
            moved.append((start, end))
    except BaseException:
        for start, end in reversed(moved):
            end.rename(start)
        raise


def _at_once(one: Path, other: Path) -> bool:
    """Whether the kernel has exchanged them; where it has not, plain renames tell why."""
    if not sys.platform.startswith("linux"):
        return False
    call = getattr(ctypes.CDLL(None), "renameat2", None)
    return call is not None and call(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE) == 0


@contextmanager
def undisturbed() -> Iterator[None]:
    """Drops requests to stop, for the moment in which stopping would be neither before nor after."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    names = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]
    before: dict[Any, Any] = {name: signal.signal(name, lambda *_: None) for name in names}
    try:
        yield
    finally:
        for name, handler in before.items():
            signal.signal(name, signal.SIG_DFL if handler is None else handler)
