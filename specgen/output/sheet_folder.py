"""Writes question sheets and tables to a folder of their own, never in place of a package."""

from pathlib import Path

from specgen.model.problem import Problem, Refused
from specgen.output.disk import write_package
from specgen.output.manifest import FORMAT, list_written, read_manifest
from specgen.output.removal import tell_removed
from specgen.reading.given_file import FileUse, read_given_file

# What the manifest of such a folder has, and that of a package has not.
_MARK = "sheets"
_EARLIER = FileUse(
    "nothing was written: the file", "move it out of the folder", 500_000_000, "move it out of the folder"
)


def write_sheets(folder: Path, files: dict[str, bytes], project: str, holds: str, *, add: bool) -> list[str]:
    """Write all files or none; those written there earlier stay where these are to `add` to them, else they are told.

    Raises Refused where the folder holds anything else, and where a sheet in it was filled in.
    """
    earlier = list_written(folder)
    if earlier and _MARK not in read_manifest(folder).data:
        raise Refused(Problem("the folder holds a package", "give a folder of its own", file=str(folder)))
    # One that was filled in is noticed below, before anything is replaced.
    kept = {name: read_given_file(folder / name, _EARLIER) for name in earlier if add and name not in files}
    removed = tell_removed(folder, files, kept)
    write_package(folder, kept | files, {"format": FORMAT, _MARK: holds, "project": project})
    return removed
