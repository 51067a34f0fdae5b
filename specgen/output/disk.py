"""Writes a whole package or nothing, and never destroys a file of the user."""

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
from specgen.output.exchange import exchange_folders, folder_lock, signals_deferred
from specgen.output.manifest import MANIFEST, index_files, is_spent, make_manifest, refuse_changed
from specgen.output.os_errors import refuse_write

_BESIDE = ".specgen-"  # prefix of temporary folders beside the package


def write_package(folder: Path, files: dict[str, bytes], about: dict[str, Any]) -> None:
    """Write all files and their manifest to `folder`, replacing a package written there before.

    Raises Refused where the folder holds anything else, or a file of the package was edited since.
    """
    whole = index_files(files.items()) | {MANIFEST: make_manifest(files, about)}
    place = Path(os.path.realpath(folder))
    try:
        with _ensure_parents(place.parent), folder_lock(place.parent) as alone:
            if alone:
                _tidy(place)
            _refuse_unfit(place, folder)
            _put(place, folder, whole)
    except OSError as error:
        raise refuse_write(folder, error) from None


def write_new(file: Path, content: str) -> None:
    """Write a file that must not exist yet; raises Refused."""
    try:
        opened = file.open("xb")
    except FileExistsError:
        raise Refused(Problem("the file exists and is not overwritten", "give another name", file=str(file))) from None
    except OSError as error:
        raise refuse_write(file, error) from None
    try:
        with opened:
            _flush(opened, content.encode())
    except BaseException as error:
        file.unlink(missing_ok=True)
        if isinstance(error, OSError):
            raise refuse_write(file, error) from None
        raise


def _put(place: Path, shown: Path, files: dict[str, bytes]) -> None:
    """Write the files to a temporary folder, then move it into place in one step; `shown` is its name in messages."""
    fresh = Path(tempfile.mkdtemp(prefix=_BESIDE, suffix="-new", dir=place.parent))
    try:
        for name, content in files.items():
            with (fresh / name).open("xb") as opened:
                _flush(opened, content)
        fresh.chmod(stat.S_IMODE(place.stat().st_mode) if place.exists() else 0o777 & ~_umask())
    except BaseException:
        _remove(fresh)
        raise
    with signals_deferred():
        _commit(fresh, place, shown)


def _commit(fresh: Path, place: Path, shown: Path) -> None:
    """Move the new package into place; afterwards `fresh` is gone, whichever package it held."""
    aside = _old_place(place)
    try:
        exchange_folders(fresh, place, aside) if place.exists() else fresh.rename(place)
    except BaseException:
        _remove(fresh)
        raise
    if not fresh.exists():
        return
    # Any change made up to this moment is in the folder just taken out, and is found there.
    try:
        refuse_changed(fresh, shown)
    except BaseException:
        exchange_folders(fresh, place, aside)
        _remove(fresh)
        raise
    _remove(fresh)


def _flush(opened: Any, content: bytes) -> None:
    """Write through to the disk, so that a full disk is noticed before the old package is replaced."""
    opened.write(content)
    opened.flush()
    os.fsync(opened.fileno())


def _old_place(place: Path) -> Path:
    """Temporary path of the old package on a system that exchanges folders in three renames."""
    return place.with_name(f"{_BESIDE}{hashlib.sha256(os.fsencode(place.name)).hexdigest()[:16]}-old")


def _tidy(place: Path) -> None:
    """Clean up after an interrupted build; a package that it had moved aside is moved back."""
    aside = _old_place(place)
    if aside.is_dir() and not place.exists():
        aside.rename(place)
    for left in (*place.parent.glob(f"{_BESIDE}*-new"), aside):
        if left.is_dir() and not left.is_symlink() and is_spent(left):
            _remove(left)


def _remove(folder: Path) -> None:
    shutil.rmtree(folder, ignore_errors=True)


@contextmanager
def _ensure_parents(folder: Path) -> Iterator[None]:
    """Create the folders above a package, and remove them again if the package could not be written."""
    missing = [above for above in (folder, *folder.parents) if not above.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
        yield
    except BaseException:
        for above in missing:
            with suppress(OSError):
                above.rmdir()
        raise


def _refuse_unfit(place: Path, shown: Path) -> None:
    """Raise Refused if the place is not a folder that a package may replace."""
    if place.is_symlink():
        raise Refused(Problem("the link leads back to itself", "give another folder", file=str(shown)))
    if not place.exists():
        return
    if not place.is_dir():
        raise Refused(Problem("a file stands where the package should go", "give another folder", file=str(shown)))
    if place == Path.cwd():
        message = "the package would take the place of the folder you are in"
        raise Refused(Problem(message, "go to the folder above it, or give a folder inside it", file=str(shown)))
    if place.is_mount():
        raise Refused(Problem("the folder is a drive of its own", "give a folder inside it", file=str(shown)))
    if not os.access(place, os.W_OK | os.X_OK):
        message = "nothing was written: the folder is write-protected"
        raise Refused(Problem(message, "give a folder you may write to", file=str(shown)))
    refuse_changed(place, shown)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
