"""The project files among the names that are given: files as they stand, and those in folders."""

import os
import re
from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

from specgen.model.problem import Problem, Refused
from specgen.reading.file_text import MOST_BYTES
from specgen.reading.given_file import FileUse, read_given_file

_USE = FileUse("the file", "name a YAML file", MOST_BYTES, "split it")
_ENDINGS = (".yaml", ".yml")
# What each project file holds at its left edge, and no file beside one does.
_SECTIONS = tuple(
    re.compile(rb"(?:^|\n|\r)(?:\xef\xbb\xbf)?[\"']?" + name + rb"[\"']?[ \t]*:") for name in (b"project", b"package")
)
# A line that names a side file, or a list of record files that holds it.
_NAMING = rb"(?:^|\n|\r)(?:firm|coating_system|records)[ \t]*:[^\n\r#]*(?<![\w./-])%s(?![\w./-])"
_MOST_LOOKED_INTO = 100


class FoundFiles(NamedTuple):
    """Project files in the order in which they were named, and what was not taken for one.

    `faults` are folders without a project file, or that cannot be read, at the places of `files` behind which they were
    named. `left_out` are YAML files of folders that hold no project, `repeated` names of files named before.
    """

    files: tuple[str, ...]
    faults: tuple[tuple[int, Problem], ...]
    left_out: tuple[str, ...]
    repeated: tuple[str, ...]


def find_project_files(names: Iterable[str]) -> FoundFiles:
    """Each file once, those of a folder by their names; folders below it are looked into, save hidden ones."""
    files: dict[str, str] = {}
    faults: list[tuple[int, Problem]] = []
    left_out: list[str] = []
    repeated: list[str] = []
    for name in names:
        inside = [name]
        if os.path.isdir(name):  # noqa: PTH112 (no error without rights)
            every, unread = _list_files(name)
            faults += [(len(files), problem) for problem in unread]
            inside = [file for file in every if _is_project(file)]
            left_out += [file for file in every if file not in inside]
            if not inside and not unread:
                faults.append((len(files), Problem("the folder holds no project file", _WANTED, file=name)))
        for file in inside:
            real = os.path.realpath(file)
            if real in files:
                repeated.append(file)
            else:
                files[real] = file
    return FoundFiles(tuple(files.values()), tuple(faults), tuple(left_out), tuple(dict.fromkeys(repeated)))


def list_naming(folder: Path, name: str) -> list[str]:
    """The names of the project files of a folder that name the side file `name` beside them."""
    naming = re.compile(_NAMING % re.escape(name.encode()))
    try:
        files = sorted(file for file in os.listdir(folder or ".") if file.lower().endswith(_ENDINGS))  # noqa: PTH208
    except OSError:
        return []
    return [file for file in files[:_MOST_LOOKED_INTO] if _holds(folder / file, naming)]


def _holds(file: Path, sign: re.Pattern[bytes]) -> bool:
    try:
        return sign.search(read_given_file(file, _USE)) is not None
    except Refused:
        return False


_WANTED = "a project file has package and project"


def _list_files(folder: str) -> tuple[list[str], list[Problem]]:
    """The YAML files in a folder and below it, in order, and the folders that cannot be read."""
    unread: list[OSError] = []
    files = []
    for where, below, names in os.walk(folder, onerror=unread.append):
        below[:] = sorted(name for name in below if not name.startswith("."))
        files += [os.path.join(where, name) for name in sorted(names) if name.lower().endswith(_ENDINGS)]  # noqa: PTH118
    return files, [_describe(error) for error in unread]


def _describe(error: OSError) -> Problem:
    message = f"the folder cannot be read: {error.strerror}"
    return Problem(message, "check its rights", file=str(error.filename))


def _is_project(file: str) -> bool:
    """Whether a file is a project, or cannot be read, which is then told in its place."""
    try:
        content = read_given_file(Path(file), _USE)
    except Refused:
        return True
    return all(section.search(content) for section in _SECTIONS)
