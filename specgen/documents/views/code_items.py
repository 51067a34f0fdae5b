"""Code requirements for the walls: section of the adopted edition, whether due, and why."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.views import _fire_tests as fire_tests
from specgen.model.absence import Absent

CODES = {"ibc": "International Building Code", "irc": "International Residential Code", "other": "Local code"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """EIFS section, drainage of each wall, special inspection, local fasteners."""
    project = context.project
    model, year = project.get(("code", "model")), context.display(("code", "edition"))
    edition = context.standards.editions.get(str(project.get(("code", "edition"))), {}) if model == "ibc" else {}
    inspection, name = edition.get("inspection_section", ""), code_name(context)
    lines: list[tuple[Any, ...]] = [
        (
            "EIFS",
            [name, *([] if model == "other" and year.open else [", ", year]), _section(edition.get("eifs_section"))],
            "applies" if model else DisplayValue("[open]", open=True),
            "",
        )
    ]
    for mark in project.members[("walls",)]:
        lines.append((f"Drained wall, {mark}", name, *_answer(context, ("walls", mark), "drainage-due")))
    lines += fire_tests.rows(context)
    lines.append(("Special inspection", [name, _section(inspection)], *_answer(context, (), "special-inspection-due")))
    lines.append(
        (
            "Fasteners asked for by local code",
            context.display(("code", "jurisdiction")),
            context.display(("code", "local_fasteners_required")),
            "",
        )
    )
    return TableView(("Subject", "Code and section", "Due", "Why"), tuple(lines), (24, 30, 14, 32))


def code_name(context: DocumentContext) -> Any:
    """The adopted code in words, or an open value if the project does not name it."""
    return CODES.get(str(context.project.get(("code", "model")))) or context.display(("code", "model"))


def _section(number: str | None) -> str:
    return f", section {number}" if number else ""


def _answer(context: DocumentContext, path: tuple[str, ...], name: str) -> tuple[Any, Any]:
    """Yes or no with reason and source, or an open value if a field is missing."""
    try:
        lookup = context.resolve(path, name)
    except Absent as absent:
        return context.describe_absence(absent)
    why = DisplayValue(lookup.why, lookup.why, lookup.source[0] if lookup.source else None)
    if context.project.get(("code", "model")) == "other":
        return "not read here", "Ask the building official."
    return "yes" if lookup.result else "no", why
