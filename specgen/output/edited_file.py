"""Writes a file of the user that was edited, in one step, and keeps it as it was beside it."""

import itertools
import os
import stat
from pathlib import Path

from specgen.model.problem import Problem, Refused
from specgen.output.disk import write_bytes
from specgen.output.os_errors import refuse_write
from specgen.output.signals import signals_held
from specgen.reading.file_text import read_content

_NEW = ".specgen-new"


def write_edited(path: Path, before: bytes, after: bytes) -> str:
    """Write the edited file; the name of the copy of it as it was, which stands beside it.

    `before` is what was read and edited. Raises Refused where the file has changed since, or cannot be written; then
    nothing is changed.
    """
    place = Path(os.path.realpath(path))
    try:
        with signals_held():
            _check_writable(place, path)
            kept, is_new = _keep(place, before)
            try:
                _replace(place, path, before, after)
            except BaseException:
                if is_new:
                    kept.unlink(missing_ok=True)
                raise
    except OSError as error:
        raise refuse_write(path, error) from None
    return kept.name


def _check_writable(place: Path, shown: Path) -> None:
    """Raise Refused for a file that its owner has protected; a new file in its place would not heed that."""
    if place.exists() and not os.access(place, os.W_OK):
        raise Refused(
            Problem("nothing was written: the file is write-protected", "allow writing to it", "", str(shown))
        )


def _keep(place: Path, content: bytes) -> tuple[Path, bool]:
    """The copy, and whether it is new: a copy of the same content that stands already is not written again.

    Its name, the next free one, does not end in .yaml, so that no one takes it for a project.
    """
    for number in itertools.count(1):
        kept = place.with_name(f"{place.name}.before{f'-{number}' if number > 1 else ''}")
        try:
            write_bytes(kept, content)
        except FileExistsError:
            if kept.is_file() and read_content(kept, kept.name) == content:
                return kept, False
            continue
        return kept, True
    raise AssertionError("numbers do not end")


def _replace(place: Path, shown: Path, before: bytes, after: bytes) -> None:
    """Put a new file in the place of the old one, if that is still the one that was read."""
    made = place.with_name(f"{place.name}{_NEW}")
    write_bytes(made, after)
    try:
        made.chmod(stat.S_IMODE(place.stat().st_mode))
        if read_content(place, str(shown)) != before:
            message = "nothing was written: the file has changed since it was read"
            raise Refused(Problem(message, "save it in your editor, then run the command again", "", str(shown)))
        made.replace(place)
    except BaseException:
        made.unlink(missing_ok=True)
        raise
