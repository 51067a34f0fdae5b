"""What `specgen check --watch` does: checks again whenever the project or a file that it names was saved."""

import os
import signal
import time
from argparse import Namespace
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from functools import partial
from pathlib import Path
from typing import NamedTuple

from specgen.commands import DONE, Outcome
from specgen.commands._project_file import find_project_file
from specgen.model.problem import refuse
from specgen.reading.given_file import STANDARD_INPUT
from specgen.reading.named_files import list_named_files


class FileState(NamedTuple):
    """What tells one saved state of a file from another; zero for a file that is not there."""

    changed: int = 0  # nanoseconds
    size: int = 0


Wait = Callable[[], None]
_WAIT = partial(time.sleep, 0.5)  # seconds between two looks
_RULE = "-" * 72  # between the report of one run and the next
_WATCHES_ONE = "--watch tells of one project"


def watch_project(args: Namespace, check: Callable[[Namespace], Outcome], wait: Wait = _WAIT) -> Outcome:
    """Check and show, and again after each change, until Ctrl-C; ends with the exit code of the last check.

    Raises Refused for what cannot be watched.
    """
    if args.package is not None or len(args.files) > 1 or any(map(os.path.isdir, args.files)):
        raise refuse(_WATCHES_ONE, "name one project file, and no package")
    file = find_project_file(*(args.files or [None]))
    if file == STANDARD_INPUT:
        raise refuse("standard input is read once", "give --watch the name of a file")
    code = DONE
    with suppress(KeyboardInterrupt), _ended_by_interrupt():
        for paths, changed in _find_changes(file, wait):
            outcome = check(args)
            code = outcome.code
            told = f"{_list(changed)} changed, checked again" if changed else "checked"
            messages = (*outcome.messages, f"{told}; watching {_list(paths)} until Ctrl-C")
            text = f"{_RULE}\n{outcome.text}" if changed and args.format == "text" else outcome.text
            args.show(outcome._replace(text=text, messages=messages))
    return Outcome(code)


def _list(paths: Iterable[Path]) -> str:
    return ", ".join(map(str, paths))


def _find_changes(file: Path, wait: Wait) -> Iterator[tuple[Sequence[Path], Sequence[Path]]]:
    """The files watched, and those of them that changed: none at first, then at each save."""
    changed: list[Path] = []
    while True:
        paths = list_named_files(file)
        before = now = list(map(_take_state, paths))
        yield paths, changed
        while now == before:
            wait()
            now = list(map(_take_state, paths))
        while True:  # a file is often emptied before it is written
            wait()
            later = list(map(_take_state, paths))
            if later == now:
                break
            now = later
        changed = [path for path, new, old in zip(paths, now, before, strict=True) if new != old]


def _take_state(path: Path) -> FileState:
    try:
        found = os.stat(path)  # noqa: PTH116 (a name too long is no error here)
    except (OSError, ValueError):
        return FileState()
    return FileState(found.st_mtime_ns, found.st_size)


@contextmanager
def _ended_by_interrupt() -> Iterator[None]:
    """Ctrl-C raises KeyboardInterrupt here, save where whoever started this process has it ignored."""
    before = signal.getsignal(signal.SIGINT)
    if before is signal.SIG_DFL:
        signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
