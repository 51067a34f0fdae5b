"""Code requirements for the walls: section of the adopted edition, whether due, and why."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.views import _fire_tests as fire_tests
from specgen.documents.views.workings import join_cells
from specgen.model.absence import Absent

CODES = {"ibc": "International Building Code", "irc": "International Residential Code", "other": "Local code"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """EIFS section, drainage of each wall, special inspection, local fasteners."""
    project = context.project
    model, year = project.get(("code", "model")), context.display(("code", "edition"))
    edition = context.standards.editions.get(str(project.get(("code", "edition"))), {}) if model == "ibc" else {}
    name = code_name(context)
    lines: list[tuple[Any, ...]] = [
        (
            "EIFS",
            [name, *([] if model == "other" and year.open else [", ", year]), *_section(edition, "eifs")],
            "yes" if model else DisplayValue("[open]", open=True),
            "EIFS on all walls" if model else "",
        )
    ]
    walls = project.members[("walls",)]
    drained = [("Drained wall", mark, (name, *_answer(context, ("walls", mark), "drainage-due"))) for mark in walls]
    lines += fire_tests.join_walls(drained) + fire_tests.rows(context)
    inspected = _answer(context, (), "special-inspection-due")
    lines.append(("Special inspection", [name, *_section(edition, "inspection")], *inspected))
    lines.append(("Fasteners required by local code", context.display(("code", "jurisdiction")), *_fasteners(context)))
    return TableView(("Subject", "Code and section", "Required", "Reason"), tuple(lines), (24, 30, 14, 32))


def code_name(context: DocumentContext) -> Any:
    """The adopted code in words, or an open value if the project does not name it."""
    return CODES.get(str(context.project.get(("code", "model")))) or context.display(("code", "model"))


def _section(edition: dict[str, Any], part: str) -> list[Any]:
    """The section of an edition on EIFS or on its inspection, with the mark of its source; nothing if it has none."""
    number = edition.get(f"{part}_section")
    return (
        [", section ", DisplayValue(number, number, edition[f"{part}_source"], about=f"Section, {part}")]
        if number
        else []
    )


def _fasteners(context: DocumentContext) -> tuple[Any, Any]:
    """Whether local code wants fasteners and above which height, and the answers for single elevations."""
    project, above = context.project, ("code", "local_fasteners_above")
    due: list[Any] = [context.display(("code", "local_fasteners_required"))]
    if project.get(above) is not None:
        due += [", above ", context.display(above)]
    paths = [("elevations", mark, "local_fasteners_required") for mark in project.members.get(("elevations",), ())]
    given = [[f"{path[1]}: ", context.display(path)] for path in paths if project.get(path) is not None]
    return due, join_cells(given)


def _answer(context: DocumentContext, path: tuple[str, ...], name: str) -> tuple[Any, Any]:
    """Yes or no with reason and source, or an open value if a field is missing."""
    try:
        lookup = context.resolve(path, name)
    except Absent as absent:
        return context.describe_absence(absent)
    source = lookup.source[0] if lookup.source else None
    why = DisplayValue(lookup.why, lookup.why, source, about=context.resolve.find(name).title)
    if context.project.get(("code", "model")) == "other":
        return "not evaluated", "Confirm with the building official."
    return "yes" if lookup.result else "no", why
