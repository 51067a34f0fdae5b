"""The temporary folder of a build beside its package: marked as ours, and cleared away only by that mark.

Its name begins with the digest of the package's name. It holds the mark, the package in the making (`new`) and, on a
system that exchanges folders in three steps, for a moment the old one (`old`).
"""

import hashlib
import os
import shutil
import tempfile
from contextlib import suppress
from pathlib import Path

from specgen.output.manifest import MANIFEST, is_spent

_BESIDE, _MARK, NEW, OLD = ".specgen-", "mark", "new", "old"
_OURS = {_MARK, NEW, OLD, MANIFEST}


def make_workplace(place: Path) -> Path:
    """A marked temporary folder for the package that is to stand at `place`."""
    made = Path(tempfile.mkdtemp(prefix=_prefix(place), suffix="-new", dir=place.parent))
    try:
        with (made / _MARK).open("xb") as mark:
            mark.write(_digest(place))
    except BaseException:
        _remove(made)
        raise
    return made


def clear_workplace(made: Path, place: Path) -> None:
    """Remove a temporary folder, save where it holds work of the user; an old package without a new one goes back."""
    with suppress(OSError):  # the next build tries again
        if (made / OLD).is_dir() and not os.path.lexists(place):
            (made / OLD).rename(place)
        # A package that was edited just before it was taken out stays.
        if all(is_spent(made / name) for name in (NEW, OLD) if (made / name).exists()):
            _remove(made)


def tidy_leftovers(place: Path) -> None:
    """Clear what interrupted builds of this package left; to be called only by the one build that may write here."""
    for left in sorted(place.parent.glob(f"{_prefix(place)}*-new")):
        with suppress(OSError):  # what cannot be read is not known to be ours
            if _is_ours(left, place):
                clear_workplace(left, place)


def _remove(made: Path) -> None:
    """Remove all of a temporary folder, its mark last: what an interrupted removal leaves is still marked."""
    for name in (NEW, OLD):
        shutil.rmtree(made / name, ignore_errors=True)
    with suppress(OSError):
        (made / MANIFEST).unlink(missing_ok=True)
        if {entry.name for entry in made.iterdir()} <= {_MARK}:
            (made / _MARK).unlink(missing_ok=True)
            made.rmdir()


def _is_ours(left: Path, place: Path) -> bool:
    """Whether a build of this package made the folder; it may have ended before the mark was whole."""
    mark = left / _MARK
    if not _is_plain_folder(left) or not {entry.name for entry in left.iterdir()} <= _OURS:
        return False
    if not all(_is_plain_folder(left / name) for name in (NEW, OLD) if os.path.lexists(left / name)):
        return False
    if mark.is_symlink() or not mark.is_file():
        return not os.path.lexists(mark) and not any(left.iterdir())
    whole = _digest(place)
    with mark.open("rb") as opened:
        written = opened.read(len(whole) + 1)
    return written == whole or (whole.startswith(written) and {entry.name for entry in left.iterdir()} == {_MARK})


def _is_plain_folder(path: Path) -> bool:
    return path.is_dir() and not path.is_symlink()


def _prefix(place: Path) -> str:
    return f"{_BESIDE}{_digest(place)[:12].decode()}-"


def _digest(place: Path) -> bytes:
    """The digest of the package's name."""
    return hashlib.sha256(os.fsencode(place.name)).hexdigest().encode()
