"""Reads a file that the user gives: only a regular one, and never more of it than its bound, whatever it claims.

Every file from outside the package is read here, so that nothing waits on a pipe, drains a device or fills the memory.
"""

import os
import stat
import sys
from dataclasses import dataclass
from pathlib import Path

from specgen.model.problem import Problem, Refused

# Stands for a file that is sent to standard input; one that is called so is given with its folder.
STANDARD_INPUT = Path("-")
# What may stand where a file should; the order is of no account.
_KINDS = (
    (stat.S_ISDIR, "a folder"),
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISCHR, "a device"),
    (stat.S_ISBLK, "a device"),
    (stat.S_ISSOCK, "a socket"),
)
# A pipe put in the place of the file at the last moment is opened without waiting for who fills it.
_FLAGS = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOCTTY", 0) | getattr(os, "O_BINARY", 0)


@dataclass(frozen=True, slots=True)
class FileUse:
    """What a file is given for: its name in messages, what is to be done in its place, and its most bytes."""

    noun: str
    wanted: str
    most: int
    smaller: str = "give a smaller one"


def read_given_file(path: Path, use: FileUse, shown: str = "") -> bytes:
    """The bytes of a file, named `shown` in messages; raises Refused where it is no file of that use.

    A file of no length is not opened: those of the system have none, and some of them never end.
    """
    if path == STANDARD_INPUT:
        return _read_standard_input(use, shown or name_file(path))
    shown = shown or str(path)
    try:
        found = path.stat()
        _check(found, use, shown)
        return _read(path, use, shown) if found.st_size else b""
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is not allowed"
        hint = "check its rights" if isinstance(error, PermissionError) else "check name and folder"
        raise Refused(Problem(f"{use.noun} cannot be read: {reason}", hint, file=shown)) from None


def name_file(path: Path) -> str:
    """The name of a file without its folder, as messages and manifests have it."""
    return "standard input" if path == STANDARD_INPUT else path.name or str(path)


def _read_standard_input(use: FileUse, shown: str) -> bytes:
    """What is sent to standard input, to its end; raises Refused where that is a terminal, which has none."""
    if sys.stdin.isatty():
        raise Refused(Problem("- reads what is sent to this command", "write ... | specgen, or < FILE", file=shown))
    try:
        content = sys.stdin.buffer.read(use.most + 1)
    except OSError as error:
        raise Refused(Problem(f"{use.noun} cannot be read: {error.strerror}", "name a file", file=shown)) from None
    if len(content) > use.most:
        raise _refuse_large(use, shown)
    return content


def _check(found: os.stat_result, use: FileUse, shown: str) -> None:
    """Raise Refused for what is no regular file, and for one that is too large."""
    if not stat.S_ISREG(found.st_mode):
        kind = next((words for is_kind, words in _KINDS if is_kind(found.st_mode)), "no regular file")
        raise Refused(Problem(f"{use.noun} cannot be read: it is {kind}", use.wanted, file=shown))
    if found.st_size > use.most:
        raise _refuse_large(use, shown)


def _read(path: Path, use: FileUse, shown: str) -> bytes:
    opened = os.open(path, _FLAGS)
    with os.fdopen(opened, "rb") as file:
        _check(os.fstat(opened), use, shown)  # another may stand there by now
        content = file.read(use.most + 1)
    if len(content) > use.most:
        raise _refuse_large(use, shown)
    return content


def _refuse_large(use: FileUse, shown: str) -> Refused:
    return Refused(Problem(f"{use.noun} is larger than {use.most // 10**6} MB", use.smaller, file=shown))
