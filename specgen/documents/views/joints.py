"""The sealant joints: width given and width needed, depth, backer rod, sealant, bond face."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.model.absence import Absent
from specgen.model.working import Working
from specgen.quantities.comparison import Outcome, Sense, compare


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each joint of the project."""
    lines = []
    for mark in context.project.members.get(("joints",), ()):
        at = ("joints", mark)

        def display(name: str, at: tuple[str, ...] = at) -> DisplayValue:
            return context.display((*at, name))

        lines.append(
            (
                mark,
                display("kind"),
                display("width"),
                _needed(context, at),
                display("depth"),
                [display("rod_kind"), " ", display("rod_diameter")],
                display("bond_face"),
            )
        )
    header = ("Joint", "Kind", "Width", "Width needed", "Depth", "Backer rod", "Bond face")
    return TableView(header, tuple(lines), (8, 17, 13, 17, 12, 18, 15))


def _needed(context: DocumentContext, at: tuple[str, ...]) -> Any:
    """The computed width and whether it is met, or the missing field."""
    try:
        working = context.resolve(at, "joint-width")
    except Absent as absent:
        return DisplayValue(f"[{context.describe_absence(absent)[1]}]", open=True)
    assert isinstance(working, Working)
    needed = working.quantity
    field = context.project.schema.field_at((*at, "width"))
    text = context.text(needed, field)
    outcome = compare(context.project.get((*at, "width")), Sense.AT_LEAST, needed)
    answer = {Outcome.WITHIN: "met", Outcome.OUTSIDE: "not met"}.get(outcome, "width still open")
    return [DisplayValue(text, needed, working.source[0], about="Joint width needed"), f", {answer}"]
