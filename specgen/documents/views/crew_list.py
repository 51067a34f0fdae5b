"""The crews: who is in each, what it does, and whether it builds the mockup."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._cells import join_cells
from specgen.documents.views._training import tell_trained


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each crew."""
    marks = context.project.members.get(("crews",), ())
    header = ("Crew", "Size", "Named members", "Steps of the work, and who is trained for them", "Builds the mockup")
    return TableView(header, tuple(_set_crew(context, mark) for mark in marks), (8, 6, 20, 54, 12))


def _set_crew(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    named = join_cells([one] for one in _list_members(context, mark))
    return (
        mark,
        context.display(("crews", mark, "size")),
        named,
        _tell_steps(context, mark),
        _tell_mockup(context, mark),
    )


def _list_members(context: DocumentContext, mark: str) -> list[Any]:
    """The names of those whose crew it is, each once."""
    people = context.project.members.get(("people",), ())
    of_crew = [one for one in people if str(context.project.get(("people", one, "crew")) or "") == mark]
    return list(dict.fromkeys(context.display(("people", one, "name")) for one in of_crew))


def _tell_steps(context: DocumentContext, mark: str) -> Any:
    """The titles of its steps in the order of the work, behind those who are trained for them."""
    asked = context.project.get(("crews", mark, "steps"))
    if asked is None:
        return context.display(("crews", mark, "steps"))
    return tell_trained(context, mark, [name for name in context.standards.steps if name in asked])


def _tell_mockup(context: DocumentContext, mark: str) -> Any:
    """Yes or no; the open value where nobody says who builds the mockup."""
    crew = context.project.get(("mockup", "crew"))
    if crew is None:
        return context.display(("mockup", "crew"))
    return "yes" if mark in map(str, crew) else "no"
