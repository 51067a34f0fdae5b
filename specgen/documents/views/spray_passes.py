"""Beginning and end of each coat of the sheet."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import make_blank
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line for each coat of the material of the sheet."""
    lines = tuple(_line(context, coat) for coat in range(1, count_coats(context) + 1))
    header = ("Coat", "Started at", "Ended at", "Before it", "Initials")
    return TableView(header, lines, (8, 20, 20, 38, 14))


def count_coats(context: DocumentContext) -> int:
    """The most coats of one material, of primer or gloss."""
    given = [context.project.get((coat, "coats")) for coat in ("primer", "gloss")]
    usual = (context.limit(f"{coat}.coats").raw for coat in ("primer", "gloss"))
    return max(int(coats or least) for coats, least in zip(given, usual, strict=True))


def _line(context: DocumentContext, coat: int) -> tuple[Any, ...]:
    row = f"a{coat}"
    return (
        str(coat),
        make_blank(f"Coat {coat} started at", "log.started_at", row),
        make_blank(f"Coat {coat} ended at", "log.ended_at", row),
        _dry(context, row)
        if coat > 1
        else [CheckBox("Area released on Form D12d", f"form.released_before.{row}", "yes")],
        make_blank(f"Initials, coat {coat}", "form.initials", row),
    )


def _dry(context: DocumentContext, row: str) -> list[Any]:
    """That the coat below is dry to touch, and the least hours where they are given."""
    least = context.display(("gloss", "touch_dry_hours"))
    box = CheckBox("Dry to touch", f"form.touch_dry.{row}", "yes")
    return [box, *([", minimum ", least] if not least.open else [])]
