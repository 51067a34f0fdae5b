"""Writes question sheets and tables to a folder of their own, never in place of a package."""

from pathlib import Path

from specgen.model.problem import Problem, Refused
from specgen.output.disk import write_package
from specgen.output.manifest import FORMAT, list_written, read_manifest
from specgen.output.removal import tell_removed

# What the manifest of such a folder has, and that of a package has not.
_MARK = "sheets"


def write_sheets(folder: Path, files: dict[str, bytes], project: str, holds: str) -> list[str]:
    """Write all files or none; what `folder` held of earlier ones and these lack is told.

    Raises Refused where the folder holds anything else, and where a sheet in it was filled in.
    """
    if list_written(folder) and _MARK not in read_manifest(folder).data:
        raise Refused(Problem("the folder holds a package", "give a folder of its own", file=str(folder)))
    removed = tell_removed(folder, files)
    write_package(folder, files, {"format": FORMAT, _MARK: holds, "project": project})
    return removed
