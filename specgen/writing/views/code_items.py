"""What the code says of these walls: section of the adopted edition, due or not, and why."""

from typing import Any

from ...vocabulary.project import Absent
from ..compose import Composer
from ..desk import Desk, TableView
from ..values import Shown


def rows(desk: Desk, composer: Composer) -> TableView:
    """EIFS section, drainage of each wall, special inspection, wind standard, local fasteners."""
    sight, project = desk.sight, desk.sight.project
    edition = desk.standards.editions.get(str(project.get(("code", "edition"))), {})
    model = project.get(("code", "model"))
    of_edition = edition if model == "ibc" else {}
    code = [sight.shown(("code", "model")), ", ", sight.shown(("code", "edition"))]
    made: list[tuple[Any, ...]] = [("EIFS", [*code, _section(of_edition.get("eifs_section"))], "applies", "")]
    made += [
        (f"Drained wall, {mark}", "", *_answer(desk, ("walls", mark), "drainage-due"))
        for mark in project.members[("walls",)]
    ]
    inspection = _section(of_edition.get("inspection_section"))
    made.append(("Special inspection", inspection.lstrip(", "), *_answer(desk, (), "special-inspection-due")))
    made.append(
        (
            "Fasteners by local code",
            sight.shown(("code", "jurisdiction")),
            sight.shown(("code", "local_fasteners_required")),
            "",
        )
    )
    return TableView(("Subject", "Code and section", "Due", "Why"), tuple(made), (24, 28, 14, 34))


def _section(number: str | None) -> str:
    return f", section {number}" if number else ""


def _answer(desk: Desk, path: tuple[str, ...], name: str) -> tuple[Any, Any]:
    """Yes or no with its reason and source; open where a field is missing."""
    try:
        found = desk.resolve(path, name)
    except Absent as absent:
        field = desk.sight.project.schema.field_at(absent.path)
        return Shown(f"[{field.label if field else absent.path[-1]}]", open=True), ""
    why = Shown(found.why, found.why, found.source[0] if found.source else None)
    return "yes" if found.result else "no", why
