"""What a document is about: the walls, by themselves or by their colors."""

from specgen.documents.context import DocumentContext
from specgen.documents.owed_sheets import RequiredDocument


def concerns(context: DocumentContext, entry: RequiredDocument, mark: str) -> bool:
    """Whether a document is about a wall: the wall itself, one of its colors, or the project."""
    return not {mark, "project", *list_colors(context, mark)}.isdisjoint(entry.subjects)


def list_colors(context: DocumentContext, mark: str) -> tuple[str, ...]:
    """The colors of a wall: those of its elevations, the only one where an elevation names none."""
    return context.remember(_group_colors).get(mark, ())


def _group_colors(context: DocumentContext) -> dict[str, tuple[str, ...]]:
    """The colors of each wall, an entry for each of its elevations."""
    project = context.project
    found: dict[str, tuple[str, ...]] = {}
    for elevation in project.members.get(("elevations",), ()):
        path = ("elevations", elevation)
        wall, color = str(project.get((*path, "wall")) or ""), project.get((*path, "color"))
        found[wall] = found.get(wall, ()) + ((str(color),) if color else project.members.get(("colors",), ()))
    return found
