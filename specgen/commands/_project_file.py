"""The project file that a command reads: as it is named, standard input for `-`, or that of the current folder."""

import errno
import os
from difflib import get_close_matches
from pathlib import Path

from specgen.commands import read_file_name
from specgen.model.problem import Problem, Refused, refuse
from specgen.reading.given_file import STANDARD_INPUT

USUAL = "project.yaml"  # the file that is meant where none is named
FILE_HELP = f"the project file; - reads standard input; without it, {USUAL} of the current folder"
_ENDINGS = (".yaml", ".yml")
_MOST_NAMED = 3
_BEGIN = f"specgen new {USUAL} writes one to begin with"


def find_project_file(name: str | None) -> Path:
    """The project file of a command line; raises Refused for one that is not there, with the names most like it."""
    if name == str(STANDARD_INPUT):
        return STANDARD_INPUT
    if name is not None:
        path = read_file_name(name)
        if not os.path.lexists(path):  # noqa: PTH110 (no error for a name too long)
            _refuse_missing(path, name)
        return path
    if not os.path.lexists(USUAL):  # noqa: PTH110
        raise refuse(
            f"FILE must be given: there is no {USUAL} in this folder", _name_like(Path(USUAL), Path()) or _BEGIN
        )
    return Path(USUAL)


def find_two(first: str, second: str) -> tuple[Path, Path]:
    """Two projects, of which one may be standard input; raises Refused where both are."""
    if first == second == str(STANDARD_INPUT):
        raise refuse("standard input is read once", "name a file for one of the two")
    return find_project_file(first), find_project_file(second)


def _refuse_missing(path: Path, name: str) -> None:
    """Raise Refused with names like that of a missing file; where the folder has none, its reader tells of it."""
    hint = _name_like(path, path.parent)
    if hint:
        raise Refused(Problem(f"the file cannot be read: {os.strerror(errno.ENOENT)}", hint, file=name))


def _name_like(wanted: Path, folder: Path) -> str:
    """`did you mean project.yaml?`, else the first YAML files of the folder; empty where it holds none."""
    there = _list_yaml(folder)
    # Two names are not alike because they end alike.
    stems = {one.stem.casefold(): one for one in reversed(there)}
    near = get_close_matches(wanted.stem.casefold(), stems, 1, 0.6)
    if near:
        return f"did you mean {stems[near[0]]}?"
    more = ", ..." if len(there) > _MOST_NAMED else ""
    return f"the folder holds {', '.join(map(str, there[:_MOST_NAMED]))}{more}" if there else ""


def _list_yaml(folder: Path) -> list[Path]:
    """The YAML files in a folder, in order; none where it cannot be read."""
    try:
        return sorted(one for one in folder.iterdir() if one.suffix.lower() in _ENDINGS)
    except (OSError, ValueError):
        return []
