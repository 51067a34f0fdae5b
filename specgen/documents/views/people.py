"""The people of the job by role."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each person that the project or the firm file names."""
    lines = []
    for mark in context.project.members.get(("people",), ()):
        person = ("people", mark)
        crew = context.display((*person, "crew")) if context.project.is_given((*person, "crew")) else "–"
        lines.append(
            (
                context.display((*person, "name")),
                context.display((*person, "role")),
                context.display((*person, "employer")),
                crew,
            )
        )
    return TableView(("Name", "Role", "Employer", "Crew"), tuple(lines), (30, 26, 30, 14))
