"""Writes what a site record comes to into a folder of its own, never in place of a package or of other sheets."""

from pathlib import Path

from specgen.model.problem import Problem, Refused
from specgen.output.disk import write_package
from specgen.output.manifest import FORMAT, list_written, read_manifest
from specgen.output.removal import tell_removed

# What the manifest of such a folder has, and that of a package has not.
_MARK = "record"


def write_record(folder: Path, files: dict[str, bytes], project: str, digests: dict[str, str]) -> list[str]:
    """Write all files or none; tells what of an earlier record is replaced. `digests` are those of the files judged.

    Raises Refused where the folder holds anything else, and where a file in it was edited since.
    """
    if list_written(folder) and _MARK not in read_manifest(folder).data:
        raise Refused(Problem("the folder holds a package", "give a folder of its own", file=str(folder)))
    removed = tell_removed(folder, files)
    write_package(folder, files, {"format": FORMAT, _MARK: digests, "project": project})
    return removed
