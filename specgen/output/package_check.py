"""Holds a package against its manifest, and the files it was made from against those that stand there now."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from specgen.model.digest import digest
from specgen.model.problem import Problem, Refused
from specgen.output.manifest import MANIFEST, PackageChanges, list_changes, read_manifest
from specgen.reading.attached_file import MOST_BYTES as MOST_OF_ATTACHMENT
from specgen.reading.attached_file import USE_OF_ATTACHMENT
from specgen.reading.file_text import MOST_BYTES
from specgen.reading.given_file import FileUse, name_file, read_given_file

_USE = FileUse("the file", "give the project file", MOST_BYTES)
_SIDE = FileUse("the file", "give the files the package was made from", MOST_OF_ATTACHMENT)
# What a file is that a package was made from.
PROJECT_FILE, ATTACHMENT = "project file", "attachment"


class InputState(NamedTuple):
    """A file that a package was made from: its name, `same`, `changed` or `missing`, and what it is."""

    name: str
    state: str
    kind: str = PROJECT_FILE


class PackageState(NamedTuple):
    """A package as it stands: by which version it was made, how many files it has, and what differs."""

    version: str  # empty where the manifest does not tell it
    files: int  # listed in the manifest
    changes: PackageChanges
    inputs: tuple[InputState, ...] | None  # None where no project file was given

    @property
    def is_as_written(self) -> bool:
        """Whether nothing differs."""
        return not any(self.changes) and all(one.state == "same" for one in self.inputs or ())


def check_package(folder: Path, project: Path | None) -> PackageState:
    """The state of a package, and that of the files it was made from; raises Refused where one cannot be read."""
    data = read_manifest(folder).data
    version = data.get("specgen")
    inputs = None if project is None else tuple(_check_inputs(data, folder, project))
    return PackageState(version if isinstance(version, str) else "", len(data["files"]), list_changes(folder), inputs)


def _check_inputs(data: dict[str, Any], folder: Path, project: Path) -> list[InputState]:
    """The project file as given, and its side files beside it by the names that the manifest has for them."""
    known = list(_list_inputs(data.get("input")))
    if not known:
        message = "the package does not tell what it was made from"
        raise Refused(Problem(message, "leave out the project file", file=str(folder / MANIFEST)))
    (_, was, _), *sides = known
    content = read_given_file(project, _USE)
    return [
        InputState(name_file(project), "same" if digest(content) == was else "changed"),
        *(InputState(name, _check_side(project, name, was), kind) for name, was, kind in sides),
    ]


def _list_inputs(listed: Any) -> Iterator[tuple[str, str, str]]:
    """Name, digest and kind of each file that a manifest says the package was made from."""
    for row in listed if isinstance(listed, list) else ():
        name, was = (row.get("file"), row.get("sha256")) if isinstance(row, dict) else (None, None)
        if isinstance(name, str) and isinstance(was, str):
            yield name, was, ATTACHMENT if str(row.get("use")).startswith(USE_OF_ATTACHMENT) else PROJECT_FILE


def _check_side(project: Path, name: str, was: str) -> str:
    """Whether a side file is the one that was read; nothing outside the folder of the project is looked at."""
    home = project.resolve().parent
    try:
        path = (home / name).resolve()
        if not path.is_relative_to(home) or not path.is_file():
            return "missing"
        return "same" if digest(read_given_file(path, _SIDE)) == was else "changed"
    except (OSError, ValueError, RuntimeError):  # a name that no file can have
        return "missing"
