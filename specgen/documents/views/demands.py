"""The compliance list: each demand of the contract, what this project has, and whether it is met."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.model.absence import Absent
from specgen.model.field import Field, Path, bound
from specgen.model.project import Project
from specgen.model.value_text import long_date, value_text
from specgen.reading.demand import demanded, meets

_SAID = {"=": "", "<=": "at most ", ">=": "at least ", "in": "one of "}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each demand, in the order of the contract."""
    project = context.project
    marks = project.members.get(("contract", "demands"), ())
    made = tuple(_row(context, ("contract", "demands", mark)) for mark in marks)
    return TableView(("Paragraph", "Subject", "Demanded", "This project", "Outcome"), made, (14, 24, 18, 22, 22))


def _row(context: DocumentContext, at: Path) -> tuple[Any, ...]:
    project = context.project

    def given(name: str) -> Any:
        return project.get((*at, name))

    pattern = tuple(str(given("field") or "").split("."))
    field = project.schema.field_at(pattern)
    paragraph = [context.display((*at, "section")), " ", context.display((*at, "paragraph"))]
    if field is None or given("relation") is None or given("value") is None:
        return paragraph, field.label if field else "", context.display((*at, "value")), "", "open"
    asked = demanded(field, given("relation"), given("value"))
    wanted = _SAID[given("relation")] + _text(context, asked, field)
    found = _found(project, pattern, set(given("for") or ()))
    return (
        paragraph,
        field.label,
        wanted,
        _has(context, field, found),
        _outcome(context, at, given("relation"), asked, found),
    )


def _found(project: Project, pattern: Path, marks: set[str]) -> dict[Path, Any]:
    """The value at each place the demand speaks of; None where it is absent."""
    try:
        places = project.each(pattern)
    except Absent:
        return {bound(".".join(pattern), ()): None}
    return {place: project.get(place) for place in places if not marks or "*" not in pattern or marks & set(place)}


def _has(context: DocumentContext, field: Field, found: dict[Path, Any]) -> Any:
    texts = {
        ".".join(place[:2]): "open" if value is None else _text(context, value, field) for place, value in found.items()
    }
    if len(set(texts.values())) == 1:
        text = next(iter(texts.values()))
        return DisplayValue("[open]", open=True) if text == "open" else text
    return "; ".join(f"{place.split('.')[-1]}: {text}" for place, text in texts.items())


def _text(context: DocumentContext, value: Any, field: Field) -> str:
    """A value with its unit; several of them with commas."""
    many = isinstance(value, tuple)
    return value_text(value, field, context.first) if many else context.text(value, field)


def _outcome(context: DocumentContext, at: Path, relation: str, asked: Any, found: dict[Path, Any]) -> str:
    failing = [value for value in found.values() if value is not None and not meets(value, relation, asked)]
    deviations = _deviations(context.project, at)
    if failing:
        return ", ".join(_answered(context.project, mark) for mark in deviations) or "not met"
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
