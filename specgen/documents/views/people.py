"""The people of the job, each once with all roles."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each person that the project or the firm file names: `foreman, competent person`."""
    found: dict[str, tuple[Any, Any, list[Any], list[Any]]] = {}
    for mark in context.project.members.get(("people",), ()):
        name, employer, role = (context.display(("people", mark, key)) for key in ("name", "employer", "role"))
        # Two entries without a name may be two people.
        person = f"{mark if name.open else name}, {employer}"
        *_, roles, crews = found.setdefault(person, (name, employer, [], []))
        _add(roles, role)
        if context.project.is_given(("people", mark, "crew")):
            _add(crews, context.display(("people", mark, "crew")))
    lines = tuple((name, roles, employer, crews or "–") for name, employer, roles, crews in found.values())
    return TableView(("Name", "Role", "Employer", "Crew"), lines, (24, 36, 28, 12))


def _add(cell: list[Any], value: Any) -> None:
    if value not in cell:
        cell += [", ", value] if cell else [value]
