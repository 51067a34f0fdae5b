"""The sealant schedule by joint: place, length, sealant, width by depth, backer rod, bond face and face tested."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks, name_linked
from specgen.documents.views._areas import name_missing
from specgen.model.absence import Absent
from specgen.model.value_text import words
from specgen.model.working import Working
from specgen.quantities.comparison import Outcome, Sense, compare

_OUTCOMES = {Outcome.WITHIN: "OK", Outcome.OUTSIDE: "not met"}
Path = tuple[str, ...]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each joint of the project."""
    lines = tuple(_line(context, mark) for mark in list_marks(context, "joints"))
    header = ("Joint", "Place", "Length", "Sealant", "Width x depth", "Minimum width", "Backer rod", "Bond face")
    return TableView(header, lines, (7, 21, 10, 11, 14, 13, 12, 12))


def _line(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    at = ("joints", mark)

    def display(name: str) -> DisplayValue:
        return context.display((*at, name))

    return (
        mark,
        _place(context, at),
        display("length") if context.project.is_given((*at, "length")) else "–",
        name_linked(context, (*at, "sealant"), "sealants"),
        [display("width"), " x ", display("depth")],
        _needed(context, at),
        _rod(context, at),
        _bond_face(context, at),
    )


def _place(context: DocumentContext, at: Path) -> list[Any]:
    """`E1 South face: floor line at 12 ft`, `E1 South face: opening perimeter at A, B`."""
    parts: list[Any] = [name_linked(context, (*at, "elevation"), "elevations"), ": ", context.display((*at, "kind"))]
    if context.project.get((*at, "runs")) != "around_opening":
        return [*parts, " at ", context.display((*at, "at"))] if context.project.is_given((*at, "at")) else parts
    return [*parts, " at ", context.display((*at, "serves"))] if context.project.get((*at, "serves")) else parts


def _needed(context: DocumentContext, at: Path) -> Any:
    """The computed width and whether it is met, or the missing field."""
    try:
        working = context.resolve(at, "joint-width")
    except Absent as absent:
        return name_missing(context, absent)
    assert isinstance(working, Working)
    needed = working.quantity
    field = context.project.schema.field_at((*at, "width"))
    text = context.text(needed, field)
    outcome = compare(context.project.get((*at, "width")), Sense.AT_LEAST, needed)
    answer = _OUTCOMES.get(outcome, "width pending")
    return [DisplayValue(text, needed, OF_A_SUM, about="Joint width needed"), f", {answer}"]


def _rod(context: DocumentContext, at: Path) -> list[Any]:
    if context.project.get((*at, "rod_kind")) == "none":
        return ["bond-break tape"] if context.project.get((*at, "bond_break_tape")) else ["none"]
    kind = context.display((*at, "rod_kind"))
    return [kind] if kind.open else [context.display((*at, "rod_diameter")), ", ", kind]


def _bond_face(context: DocumentContext, at: Path) -> list[Any]:
    """`primer, tested (A10)`; the face of the report where it is another one."""
    face = context.display((*at, "bond_face"))
    sealant = context.project.get((*at, "sealant"))
    tested = sealant.get("reported_face") if sealant is not None else None
    if tested is None:
        return [face]
    said = "tested" if face == tested else f"tested on {words(tested)}"
    report = sealant.get("adhesion_report")
    return [face, f", {said} ({report.mark})" if report is not None else f", {said}"]
