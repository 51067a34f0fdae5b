"""One attempt on the command, and how the command ended."""

import signal
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

# Seconds after which a command is taken to hang, processor seconds that it may use, and megabytes that it may hold.
HANGS, MOST_SECONDS, MOST_MEGABYTES = 20, 10, 600


@dataclass(frozen=True)
class Attempt:
    """The words of a command, and the folder it is run in."""

    about: str  # in a few words
    words: tuple[str, ...]  # behind `specgen`
    files: Mapping[str, bytes] = field(default_factory=dict)  # by name below the folder
    links: Mapping[str, str] = field(default_factory=dict)  # target by name
    pipes: tuple[str, ...] = ()  # names of pipes that nobody writes to
    sparse: Mapping[str, int] = field(default_factory=dict)  # sizes of files that hold nothing
    alone: bool = False  # whether it needs a process of its own
    environment: Mapping[str, str] = field(default_factory=dict)
    output: str = ""  # file that standard output goes to
    kill: signal.Signals | None = None  # sent to it
    after: float = 0  # seconds before that
    file_size: int = 0  # most bytes that a file may have; 0 for any
    expect: str = ""  # `refused` or `taken`, where only that is right
    walls: int = 0  # verdicts that `check` prints; 0 where that is not known


class Ended(NamedTuple):
    """How a command ended: exit code, what it wrote, processor seconds and megabytes; None as code where it hung."""

    code: int | None
    out: bytes
    err: bytes
    seconds: float
    megabytes: float
