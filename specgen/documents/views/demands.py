"""The compliance list: each requirement of the contract, the project's value, and whether it is met."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deviations import find_deviations, say_approval
from specgen.documents.display_values import DisplayValue
from specgen.documents.evidence import find_evidence
from specgen.model.absence import Absent
from specgen.model.field import Field, Path, bind_path
from specgen.model.project import Project
from specgen.model.value_text import value_text
from specgen.reading.demand import convert_demand, meets

_SAID = {"=": "", "<=": "maximum ", ">=": "minimum ", "in": ""}
# The documents that show a value that no attachment proves, by its section; all others stand in the procedure.
_SHOWN = {
    "mockup": "D09, D10",
    "colors": "D08, D10",
    "gloss_target": "D08, D10",
    "finish": "D08, D10",
    "joints": "D06, D08",
}
_PROCEDURE = "D08"
# Gloss units mean nothing without the angle they are read at.
_GLOSS: Path = ("gloss_target", "units")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each requirement, in the order of the contract."""
    project = context.project
    marks = project.members.get(("contract", "demands"), ())
    lines = tuple(_row(context, ("contract", "demands", mark)) for mark in marks)
    header = ("Paragraph", "Subject", "Required", "Provided", "Status", "Shown in")
    return TableView(header, lines, (14, 23, 18, 18, 16, 11))


def _row(context: DocumentContext, at: Path) -> tuple[Any, ...]:
    project = context.project

    def read(name: str) -> Any:
        return project.get((*at, name))

    pattern = tuple(str(read("field") or "").split("."))
    field = project.schema.field_at(pattern)
    paragraph = [context.display((*at, "section")), " ", context.display((*at, "paragraph"))]
    if field is None or read("relation") is None or read("value") is None:
        return paragraph, field.label if field else "", context.display((*at, "value")), "", "open item", ""
    asked = convert_demand(field, read("relation"), read("value"))
    marks = tuple(map(str, read("for") or ()))
    values = _find_values(project, pattern, set(marks))
    return (
        paragraph,
        ", ".join((field.label, *marks)),
        _say_required(context, read("relation"), asked, field),
        _describe_values(context, field, values),
        _outcome(context, at, read("relation"), asked, values),
        ", ".join(find_evidence(context, [*filter(values.get, values)])) or _SHOWN.get(pattern[0], _PROCEDURE),
    )


def _say_required(context: DocumentContext, relation: str, asked: Any, field: Field) -> str:
    """`minimum 3/32 in`, `I or II`, `including full panel, opening`."""
    if relation == "in":
        return " or ".join(_text(context, value, field) for value in asked)
    if relation == ">=" and isinstance(asked, tuple):
        return f"including {_text(context, asked, field)}"
    return _SAID[relation] + _text(context, asked, field)


def _find_values(project: Project, pattern: Path, marks: set[str]) -> dict[Path, Any]:
    """The value at each path that the requirement covers, None where it is absent."""
    try:
        places = project.each(pattern)
    except Absent:
        return {bind_path(".".join(pattern), ()): None}
    return {place: project.get(place) for place in places if not marks or "*" not in pattern or marks & set(place)}


def _describe_values(context: DocumentContext, field: Field, values: dict[Path, Any]) -> Any:
    texts = {
        ".".join(place[:2]): "open" if value is None else _text(context, value, field, provided=True)
        for place, value in values.items()
    }
    if len(set(texts.values())) == 1:
        text = next(iter(texts.values()))
        return DisplayValue("[open]", open=True) if text == "open" else text
    return "; ".join(f"{place.split('.')[-1]}: {text}" for place, text in texts.items())


def _text(context: DocumentContext, value: Any, field: Field, provided: bool = False) -> str:
    """A value with its unit, or several separated by commas; the gloss that is provided with its tolerance."""
    if isinstance(value, tuple):
        return value_text(value, field, context.first, context.project.both_units)
    angle = context.project.get((*_GLOSS[:1], "angle")) if field.path == _GLOSS else None
    within = context.display((*_GLOSS[:1], "tolerance")) if provided and field.path == _GLOSS else None
    tolerance = f" ± {within}" if within is not None and not within.open else ""
    return context.text(value, field) + tolerance + (f" gloss units at {angle} degrees" if angle else "")


def _outcome(context: DocumentContext, at: Path, relation: str, asked: Any, values: dict[Path, Any]) -> str:
    failing = [value for value in values.values() if value is not None and not meets(value, relation, asked)]
    deviations = find_deviations(context.project, at)
    if failing:
        return ", ".join(_describe_deviation(context.project, mark) for mark in deviations) or "not met"
    return "open item" if None in values.values() else "met"


def _describe_deviation(project: Project, mark: str) -> str:
    """`deviation DV1, not approved`; a substitution is named as such."""
    return f"{project.get(('deviations', mark, 'kind')) or 'deviation'} {mark}, {say_approval(project, mark)}"
