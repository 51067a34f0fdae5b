"""The compliance list: each demand of the contract, what this project has, and whether it is met."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView
from specgen.documents.display_values import Shown
from specgen.model.absence import Absent
from specgen.model.field import Field, Path, bound
from specgen.model.project import Project
from specgen.model.value_text import long_date, value_text
from specgen.reading.demand import demanded, meets

_SAID = {"=": "", "<=": "at most ", ">=": "at least ", "in": "one of "}


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each demand, in the order of the contract."""
    project = desk.sight.project
    marks = project.members.get(("contract", "demands"), ())
    made = tuple(_row(desk, ("contract", "demands", mark)) for mark in marks)
    return TableView(("Paragraph", "Subject", "Demanded", "This project", "Outcome"), made, (14, 24, 18, 22, 22))


def _row(desk: Desk, at: Path) -> tuple[Any, ...]:
    project = desk.sight.project

    def given(name: str) -> Any:
        return project.get((*at, name))

    pattern = tuple(str(given("field") or "").split("."))
    field = project.schema.field_at(pattern)
    paragraph = [desk.sight.shown((*at, "section")), " ", desk.sight.shown((*at, "paragraph"))]
    if field is None or given("relation") is None or given("value") is None:
        return paragraph, field.label if field else "", desk.sight.shown((*at, "value")), "", "open"
    asked = demanded(field, given("relation"), given("value"))
    wanted = _SAID[given("relation")] + _text(desk, asked, field)
    found = _found(project, pattern, set(given("for") or ()))
    return paragraph, field.label, wanted, _has(desk, field, found), _outcome(desk, at, given("relation"), asked, found)


def _found(project: Project, pattern: Path, marks: set[str]) -> dict[Path, Any]:
    """The value at each place the demand speaks of; None where it is absent."""
    try:
        places = project.each(pattern)
    except Absent:
        return {bound(".".join(pattern), ()): None}
    return {place: project.get(place) for place in places if not marks or "*" not in pattern or marks & set(place)}


def _has(desk: Desk, field: Field, found: dict[Path, Any]) -> Any:
    texts = {
        ".".join(place[:2]): "open" if value is None else _text(desk, value, field) for place, value in found.items()
    }
    if len(set(texts.values())) == 1:
        text = next(iter(texts.values()))
        return Shown("[open]", open=True) if text == "open" else text
    return "; ".join(f"{place.split('.')[-1]}: {text}" for place, text in texts.items())


def _text(desk: Desk, value: Any, field: Field) -> str:
    """A value with its unit; several of them with commas."""
    many = isinstance(value, tuple)
    return value_text(value, field, desk.sight.first) if many else desk.sight.text(value, field)


def _outcome(desk: Desk, at: Path, relation: str, asked: Any, found: dict[Path, Any]) -> str:
    failing = [value for value in found.values() if value is not None and not meets(value, relation, asked)]
    deviations = _deviations(desk.sight.project, at)
    if failing:
        return ", ".join(_answered(desk.sight.project, mark) for mark in deviations) or "not met"
    return "open" if None in found.values() else "met"


def _answered(project: Project, mark: str) -> str:
    """`by deviation DV1, not approved yet`; a substitution is called one."""
    kind, day = (project.get(("deviations", mark, name)) for name in ("kind", "approved_on"))
    return f"by {kind or 'deviation'} {mark}, {f'approved on {long_date(day)}' if day else 'not approved yet'}"


def _deviations(project: Project, at: Path) -> list[str]:
    """The deviations that name the paragraph of a demand, alone or behind its section."""
    paragraph, section = (project.get((*at, name)) for name in ("paragraph", "section"))
    names = {str(paragraph), f"{section} {paragraph}"}
    return [
        mark
        for mark in project.members.get(("deviations",), ())
        if names & set(project.get(("deviations", mark, "answers")) or ())
    ]
