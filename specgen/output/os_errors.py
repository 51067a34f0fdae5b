"""Errors of the operating system as refusals, each with a remedy."""

import errno
from pathlib import Path

from specgen.model.problem import Problem, Refused

_ROOM = "make room on the disk, or give a folder on another one"
_RIGHTS = "close documents that are open from it, or give a folder you may write to"
_AGAIN = "see that the folder above it stands, then build again"
_HINTS = {
    errno.ENOSPC: _ROOM,
    errno.EDQUOT: _ROOM,
    errno.EFBIG: _ROOM,
    errno.EACCES: _RIGHTS,
    errno.EPERM: _RIGHTS,
    errno.EROFS: _RIGHTS,
    errno.EBUSY: _RIGHTS,
    errno.ENAMETOOLONG: "give a shorter path",
    errno.ENOENT: _AGAIN,
    errno.ENOTDIR: "a file stands where a folder should be; give another folder",
    errno.EEXIST: "a file stands where a folder should be; give another folder",
    errno.ENOTEMPTY: "another program writes to this folder; give another one",
}


def refuse_write(path: Path, error: OSError) -> Refused:
    """The refusal for a file or folder that could not be written, to be raised."""
    hint = _HINTS.get(error.errno or 0, "check the folder, its rights and the space on its disk")
    return Refused(Problem(f"nothing was written: {error.strerror or error}", hint, file=str(path)))
