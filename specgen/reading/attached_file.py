"""Finds the file of an attachment: inside the project folder, and beside the file that names it or the project file."""

from pathlib import Path as FilePath

from specgen.model.field import Path
from specgen.model.finding import Place
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project


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
    named = (("attachments", mark, "file") for mark in project.members.get(("attachments",), ()))
    given = [path for path in named if path in project.values]
    return frozenset(path for path in given if not _is_found(home, project.place(path), project.values[path]))


def _is_found(home: FilePath, place: Place, name: str) -> bool:
    try:
        find_attached_file(home, place, name)
    except Refused:
        return False
    return True
