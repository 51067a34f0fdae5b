"""The elevation that a command asks about, by its mark in any case, and the panels of elevations."""

from collections.abc import Callable, Sequence

from specgen.model.absence import Absent
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.pipeline import make_resolver


def find_elevation(project: Project, asked: str | None) -> str:
    """The mark of the elevation asked about; empty where none is told. Raises Refused with the marks most like it."""
    marks = project.members.get(("elevations",), ())
    if asked is None or asked in marks:
        return asked or ""
    alike = [mark for mark in marks if mark.casefold() == asked.strip().casefold()]
    if len(alike) != 1:
        raise refuse(f"there is no elevation {asked!r}", suggest(asked, marks) or "the project has no elevations")
    return alike[0]


def list_panels_of(project: Project) -> Callable[[str], Sequence[str]]:
    """The marks of the panels of an elevation, none where it cannot be laid out."""
    resolve = make_resolver(project)

    def list_marks(elevation: str) -> Sequence[str]:
        try:
            return [panel.mark for panel in resolve(("elevations", elevation), "layout").panels]
        except Absent:
            return ()

    return list_marks
