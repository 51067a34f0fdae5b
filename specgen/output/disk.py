"""The only writer of files: a whole package or nothing, and nothing of the user's lost."""

import hashlib
import os
import shutil
import stat
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from specgen.model.problem import Problem, Refused
from specgen.output.exchange import swap, turn, undisturbed
from specgen.output.manifest import MANIFEST, manifest, named, refuse_changed, spent
from specgen.output.os_errors import failed

_BESIDE = ".specgen-"  # what a build that was cut off may leave beside the package begins with this


def write_package(folder: Path, files: dict[str, bytes], about: dict[str, Any]) -> None:
    """Write all files and their manifest to `folder`, in place of a package that was written there before.

    Raises Refused where the folder holds anything else, or a file of the package was edited since.
    """
    whole = named(files.items()) | {MANIFEST: manifest(files, about)}
    place = Path(os.path.realpath(folder))
    try:
        with _parents(place.parent), turn(place.parent) as alone:
            if alone:
                _tidy(place)
            _refuse_unfit(place, folder)
            _put(place, folder, whole)
    except OSError as error:
        raise failed(folder, error) from None


def write_new(file: Path, content: str) -> None:
    """Write a file that must not exist yet; raises Refused."""
    try:
        opened = file.open("xb")
    except FileExistsError:
        raise Refused(Problem("the file exists and is not overwritten", "give another name", file=str(file))) from None
    except OSError as error:
        raise failed(file, error) from None
    try:
        with opened:
            _flushed(opened, content.encode())
    except BaseException as error:
        file.unlink(missing_ok=True)
        if isinstance(error, OSError):
            raise failed(file, error) from None
        raise


def _put(place: Path, told: Path, files: dict[str, bytes]) -> None:
    """Write the files beside the place and put them there in one step; the old package stands until then."""
    made = Path(tempfile.mkdtemp(prefix=_BESIDE, suffix="-new", dir=place.parent))
    try:
        for name, content in files.items():
            with (made / name).open("xb") as opened:
                _flushed(opened, content)
        made.chmod(stat.S_IMODE(place.stat().st_mode) if place.exists() else 0o777 & ~_umask())
    except BaseException:
        _remove(made)
        raise
    with undisturbed():
        _commit(made, place, told)


def _commit(made: Path, place: Path, told: Path) -> None:
    """Put the new package in its place; afterwards `made` is gone, whichever of the two it held."""
    aside = _aside(place)
    try:
        swap(made, place, aside) if place.exists() else made.rename(place)
    except BaseException:
        _remove(made)
        raise
    if not made.exists():
        return
    # What was changed up to this moment stands in the folder that was taken out, and is found there.
    try:
        refuse_changed(made, told)
    except BaseException:
        swap(made, place, aside)
        _remove(made)
        raise
    _remove(made)


def _flushed(opened: Any, content: bytes) -> None:
    """Write down to the disk, so that a full disk tells before the package takes its place."""
    opened.write(content)
    opened.flush()
    os.fsync(opened.fileno())


def _aside(place: Path) -> Path:
    """Where the old package waits on a system that exchanges folders in three steps."""
    return place.with_name(f"{_BESIDE}{hashlib.sha256(os.fsencode(place.name)).hexdigest()[:16]}-old")


def _tidy(place: Path) -> None:
    """Put right what a build that was cut off left behind; a package that it had moved aside comes back."""
    aside = _aside(place)
    if aside.is_dir() and not place.exists():
        aside.rename(place)
    for left in (*place.parent.glob(f"{_BESIDE}*-new"), aside):
        if left.is_dir() and not left.is_symlink() and spent(left):
            _remove(left)


def _remove(folder: Path) -> None:
    shutil.rmtree(folder, ignore_errors=True)


@contextmanager
def _parents(folder: Path) -> Iterator[None]:
    """Makes the folders above a package; those that were made go again where the package was not written."""
    missing = [above for above in (folder, *folder.parents) if not above.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
        yield
    except BaseException:
        for above in missing:
            with suppress(OSError):
                above.rmdir()
        raise


def _refuse_unfit(place: Path, told: Path) -> None:
    """Raise Refused where the place is not a folder that a package may take."""
    if place.is_symlink():
        raise Refused(Problem("the link leads back to itself", "give another folder", file=str(told)))
    if not place.exists():
        return
    if not place.is_dir():
        raise Refused(Problem("a file stands where the package should go", "give another folder", file=str(told)))
    if place == Path.cwd():
        message = "the package would take the place of the folder you are in"
        raise Refused(Problem(message, "go to the folder above it, or give a folder inside it", file=str(told)))
    if place.is_mount():
        raise Refused(Problem("the folder is a drive of its own", "give a folder inside it", file=str(told)))
    if not os.access(place, os.W_OK | os.X_OK):
        message = "nothing was written: the folder is write-protected"
        raise Refused(Problem(message, "give a folder you may write to", file=str(told)))
    refuse_changed(place, told)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
