"""Writes a whole package or nothing, and never destroys a file of the user."""

import errno
import os
import stat
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from specgen.model.problem import Problem, Refused
from specgen.output.exchange import exchange_folders, folder_lock
from specgen.output.manifest import MANIFEST, index_files, make_manifest, refuse_changed
from specgen.output.os_errors import refuse_write
from specgen.output.signals import signals_held
from specgen.output.workplace import NEW, OLD, clear_workplace, make_workplace, tidy_leftovers


def write_package(folder: Path, files: dict[str, bytes], about: dict[str, Any]) -> None:
    """Write all files and their manifest to `folder`, replacing a package written there before.

    Raises Refused where the folder holds anything else, or a file of the package was edited since.
    """
    whole = index_files(files.items()) | {MANIFEST: make_manifest(files, about)}
    place = Path(os.path.realpath(folder))
    _refuse_root(place, folder)
    try:
        with (
            signals_held() as answer_signal,
            _ensure_parents(place.parent),
            folder_lock(place.parent, answer_signal) as alone,
        ):
            if alone:
                tidy_leftovers(place)
            _refuse_unfit(place, folder)
            _put(place, folder, whole, answer_signal)
    except UnicodeEncodeError:
        message = "nothing was written: a name has letters that this system does not take"
        raise Refused(Problem(message, "set its language to one in UTF-8", file=str(folder))) from None
    except OSError as error:
        raise refuse_write(folder, error) from None


def refuse_unfit_folder(folder: Path) -> None:
    """Raise Refused where a look tells that no package can be put there; the writer looks again, and closer."""
    try:
        place = Path(os.path.realpath(folder))
        _refuse_root(place, folder)
        _refuse_no_place(place, folder)
        above = next(one for one in place.parents if os.path.lexists(one))
        if not above.is_dir():
            raise refuse_write(folder, NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR)))
        names = os.listdir(place) if place.is_dir() else ()  # noqa: PTH208 (one look, as another may write there now)
    except (OSError, ValueError):  # told where it keeps us from writing
        return
    if names and MANIFEST not in names:
        refuse_changed(place, folder)


def write_new(file: Path, content: str | bytes) -> None:
    """Write a file that must not exist yet; raises Refused."""
    try:
        with signals_held():
            write_bytes(file, content if isinstance(content, bytes) else content.encode())
    except FileExistsError:
        raise _refuse_existing(file) from None
    except OSError as error:
        raise refuse_write(file, error) from None


def refuse_unfit_new(file: Path) -> None:
    """Raise Refused where a new file cannot be written, before anybody is asked for what is to stand in it."""
    if os.path.lexists(file):
        raise _refuse_existing(file)
    if not file.parent.is_dir():
        raise refuse_write(file, FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT)))
    if not os.access(file.parent, os.W_OK | os.X_OK):
        raise refuse_write(file, PermissionError(errno.EACCES, os.strerror(errno.EACCES)))


def _refuse_existing(file: Path) -> Refused:
    return Refused(Problem("the file exists and is not overwritten", "give another name", file=str(file)))


def write_bytes(file: Path, content: bytes) -> None:
    """Write a file that must not exist yet, through to the disk: a full one is noticed before anything is replaced."""
    opened = file.open("xb")
    try:
        with opened:
            opened.write(content)
            opened.flush()
            os.fsync(opened.fileno())
    except BaseException:
        file.unlink(missing_ok=True)
        raise


def _put(place: Path, shown: Path, files: dict[str, bytes], answer_signal: Callable[[], None]) -> None:
    """Write the files to a temporary folder, then move it into place in one step; `shown` is its name in messages."""
    work = make_workplace(place)
    try:
        _fill(work, files, answer_signal)
        if place.exists():
            (work / NEW).chmod(stat.S_IMODE(place.stat().st_mode))
        answer_signal()
        _commit(work, place, shown)
    finally:
        clear_workplace(work, place)


def _fill(work: Path, files: dict[str, bytes], answer_signal: Callable[[], None]) -> None:
    """Write the files of the new package; its manifest comes last and in one step, so that one with it is whole."""
    (work / NEW).mkdir()
    for name, content in files.items():
        answer_signal()
        write_bytes((work if name == MANIFEST else work / NEW) / name, content)
    (work / MANIFEST).rename(work / NEW / MANIFEST)


def _commit(work: Path, place: Path, shown: Path) -> None:
    """Move the new package into place; afterwards the temporary folder holds the old one, if there was one."""
    if not place.exists():
        (work / NEW).rename(place)
        return
    exchange_folders(work / NEW, place, work / OLD)
    # Any change made up to this moment is in the folder just taken out, and is found there.
    try:
        refuse_changed(work / NEW, shown)
    except BaseException:
        exchange_folders(work / NEW, place, work / OLD)
        raise


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


def _refuse_root(place: Path, shown: Path) -> None:
    """Raise Refused if the place has no folder above it to write beside it."""
    if place == place.parent:
        raise Refused(Problem("the folder is a drive of its own", "give a folder inside it", file=str(shown)))


def _refuse_unfit(place: Path, shown: Path) -> None:
    """Raise Refused if the place is not a folder that a package may replace."""
    _refuse_no_place(place, shown)
    if place.exists():
        refuse_changed(place, shown)


def _refuse_no_place(place: Path, shown: Path) -> None:
    """Raise Refused if the place is none for a package, whatever stands in it."""
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
