"""One line for each pail: cup times and water, below the limits of primer and gloss."""

from dataclasses import replace
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.form_units import UNITS
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import MOST_BOXES, bracket, make_blank
from specgen.model.block import CheckBox

_PAILS = 12
_RECORDED = "record"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """The limits of each coat, then a line for each pail."""
    unit = UNITS[context.first]
    header = (
        "Pail",
        "Batch",
        "Cup",
        f"Size, {unit['pail']}",
        f"Material, {unit['temperature']}",
        "Before water, s",
        "Again, s",
        f"Water, {unit['volume']}",
        "Water, %",
        "After water, s",
        f"After water, {unit['temperature']}",
        "Strained",
        "Initials",
    )
    lines = (*(_limits(context, coat) for coat in ("primer", "gloss")), *map(_pail, range(1, _PAILS + 1)))
    return TableView(header, lines, (7, 9, 8, 6, 8, 7, 9, 8, 8, 8, 8, 8, 6))


def _limits(context: DocumentContext, coat: str) -> tuple[Any, ...]:
    """What holds for the pails of a coat."""
    display = context.display
    window = [bracket(display((coat, "cup_least")), "minimum"), " to ", bracket(display((coat, "cup_most")), "maximum")]
    mesh = display(("spray", "strainer_mesh"))
    read_at = "cup.iso_temperature" if "iso" in str(context.project.get((coat, "cup"))) else "cup.temperature"
    return (
        f"Limit, {coat}",
        "one for each face, or boxed",
        _name_cups(context, coat),
        _RECORDED,
        ["bring to ", context.limit(read_at)],
        _RECORDED,
        ["within ", context.limit("cup.one_operator"), ", else repeat"],
        "same in each pail",
        ["maximum ", bracket(display((coat, "max_water")), "water")],
        window,
        ["bring to ", context.limit(read_at)],
        [mesh, " mesh"] if not mesh.open else "through the strainer",
        "–",
    )


def _name_cups(context: DocumentContext, coat: str) -> list[Any]:
    """The marks of the cups on the list of instruments, else the kind of cup that the times are for."""
    kinds = {
        mark: str(context.project.get(("instruments", mark, "kind"))) for mark in list_marks(context, "instruments")
    }
    marks = [mark for mark, kind in kinds.items() if kind.endswith("_cup")]
    if marks:
        return [", ".join(marks[:MOST_BOXES])]
    kind = context.display((coat, "cup"))
    if kind.open:
        return ["one cup throughout"]
    given = context.project.is_given((coat, "cup"))
    return [kind if given else replace(kind, source=context.limit(f"{coat}.cup").source)]


def _pail(number: int) -> tuple[Any, ...]:
    row = f"b{number}"
    asked = (
        ("Pail", "log.pail"),
        ("Batch", "log.batch"),
        ("Cup", "log.cup"),
        ("Material in the pail", "form.material"),
        ("Material temperature", "log.material_temperature"),
        ("Cup time before water", "log.cup_time_before_water"),
        ("Second cup time before water", "form.cup_time_again"),
        ("Water added", "log.water_added"),
        ("Water, percent", "log.water"),
        ("Cup time after water", "log.cup_time"),
        ("Material temperature after water", "form.material_temperature"),
    )
    blanks = [make_blank(f"{label}, line {number}", field, row) for label, field in asked]
    initials = make_blank(f"Initials, line {number}", "form.initials", row)
    return (*blanks, [CheckBox("yes", f"log.strained.{row}", "yes")], initials)
