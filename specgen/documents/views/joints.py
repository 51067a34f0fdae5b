"""The sealant joints: width given against width needed, depth, rod, sealant, bond face."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView
from specgen.documents.display_values import Shown
from specgen.model.absence import Absent
from specgen.model.working import Working
from specgen.quantities.comparison import Outcome, Sense, compare


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each joint of the project."""
    made = []
    for mark in desk.sight.project.members.get(("joints",), ()):
        at = ("joints", mark)

        def shown(name: str, at: tuple[str, ...] = at) -> Shown:
            return desk.sight.shown((*at, name))

        made.append(
            (
                mark,
                shown("kind"),
                shown("width"),
                _needed(desk, at),
                shown("depth"),
                [shown("rod_kind"), " ", shown("rod_diameter")],
                shown("bond_face"),
            )
        )
    header = ("Joint", "Kind", "Width", "Width needed", "Depth", "Backer rod", "Bond face")
    return TableView(header, tuple(made), (8, 17, 13, 17, 12, 18, 15))


def _needed(desk: Desk, at: tuple[str, ...]) -> Any:
    """The computed width with its outcome, or what it waits for."""
    try:
        working = desk.resolve(at, "joint-width")
    except Absent as absent:
        return Shown(f"[{desk.sight.waiting(absent)[1]}]", open=True)
    assert isinstance(working, Working)
    needed = working.quantity
    field = desk.sight.project.schema.field_at((*at, "width"))
    text = desk.sight.text(needed, field)
    outcome = compare(desk.sight.project.get((*at, "width")), Sense.AT_LEAST, needed)
    said = {Outcome.WITHIN: "met", Outcome.OUTSIDE: "not met"}.get(outcome, "width still open")
    return [Shown(text, needed, working.source[0], about="Joint width needed"), f", {said}"]
