"""Finds the file of an attachment: inside the project folder, and beside the file that names it or the project file."""

from collections.abc import Iterator
from pathlib import Path as FilePath

from specgen.model.digest import digest
from specgen.model.field import Path, dotted_path
from specgen.model.finding import Place
from specgen.model.problem import Problem, Refused
from specgen.model.project import InputFile, Project
from specgen.reading.given_file import FileUse, read_given_file

# No attachment that is larger is read.
MOST_BYTES = 200_000_000
ATTACHMENT = FileUse(
    "the attachment", "name a PDF, JPEG, or PNG file", MOST_BYTES, "split it, or make its pictures smaller"
)
# How the use of an attachment begins: it is the dotted path of the field that names its file.
USE_OF_ATTACHMENT = "attachments."


def find_attached_file(home: FilePath, place: Place, name: str) -> FilePath:
    """The file named at a place of a project in the folder `home`; raises Refused where there is none inside it.

    A name is looked up beside the file that gives it, then beside the project file. Links are followed first.
    """
    try:
        folder = home.resolve()
        found = [(beside / name).resolve() for beside in dict.fromkeys(((folder / place.file).parent, folder))]
        outside = not all(path.is_relative_to(folder) for path in found)
        file = next((path for path in found if path.exists()), None)
    except (OSError, ValueError, RuntimeError):
        raise refuse_attachment(
            place, f"{name!r} cannot be followed", "check the name, and the links on its way"
        ) from None
    if outside:
        raise refuse_attachment(
            place, f"{name!r} leads out of the project folder", "put the file itself into the folder"
        )
    if file is None:
        hint = "put the file there, or submit it separately"
        raise refuse_attachment(place, f"{name!r} is not in the project folder", hint)
    return file


def refuse_attachment(place: Place, message: str, hint: str) -> Refused:
    """A refusal of the attachment named at a place."""
    return Refused(Problem(message, hint, place.path, place.file, place.line, place.column))


def list_unfound(project: Project, home: FilePath) -> frozenset[Path]:
    """The paths of the attachments of a project in the folder `home` whose file is not there; none is opened."""
    given = _list_given(project)
    return frozenset(path for path in given if not _is_found(home, project.place(path), project.values[path]))


def list_attached(project: Project, home: FilePath | None) -> tuple[InputFile, ...]:
    """The attachments of a project in the folder `home` that can be read, each with its name within that folder."""
    return () if home is None else tuple(_read_attached(project, home))


def _read_attached(project: Project, home: FilePath) -> Iterator[InputFile]:
    folder = home.resolve()
    for path in _list_given(project):
        try:
            file = find_attached_file(folder, project.place(path), project.values[path])
            content = read_given_file(file, ATTACHMENT)
        except Refused:
            continue  # who binds it in tells why it cannot be read
        yield InputFile(dotted_path(path), file.relative_to(folder).as_posix(), digest(content))


def _list_given(project: Project) -> list[Path]:
    """The paths of the attachments that name a file."""
    named = (("attachments", mark, "file") for mark in project.members.get(("attachments",), ()))
    return [path for path in named if path in project.values]


def _is_found(home: FilePath, place: Place, name: str) -> bool:
    try:
        find_attached_file(home, place, name)
    except Refused:
        return False
    return True
