"""The people of the job by role."""

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each person that the project or the firm file names."""
    sight = desk.sight
    made = []
    for mark in sight.project.members.get(("people",), ()):
        person = ("people", mark)
        crew = sight.shown((*person, "crew")) if sight.project.given((*person, "crew")) else ""
        made.append(
            (sight.shown((*person, "name")), sight.shown((*person, "role")), sight.shown((*person, "employer")), crew)
        )
    return TableView(("Name", "Role", "Employer", "Crew"), tuple(made), (30, 26, 30, 14))
