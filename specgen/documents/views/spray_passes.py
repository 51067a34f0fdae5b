"""Beginning and end of each coat of the sheet."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import bracket, make_blank
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line for each coat of the material of the sheet."""
    lines = tuple(_line(context, coat) for coat in range(1, count_coats(context) + 1))
    header = ("Coat", "Target wet film", "Started at", "Ended at", "Before it", "Initials")
    return TableView(header, lines, (6, 36, 12, 12, 24, 10))


def count_coats(context: DocumentContext) -> int:
    """The most coats of one material, of primer or gloss."""
    return max(_count(context, name) for name in ("primer", "gloss"))


def _count(context: DocumentContext, name: str) -> int:
    """The coats of a material, those usual where the project gives none."""
    return int(context.project.get((name, "coats")) or context.limit(f"{name}.coats").raw)


def _line(context: DocumentContext, coat: int) -> tuple[Any, ...]:
    row = f"a{coat}"
    return (
        str(coat),
        _target_films(context, coat),
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


def _target_films(context: DocumentContext, coat: int) -> list[Any]:
    """The wet film that this coat of each material aims at, with the most water."""
    cell: list[Any] = []
    thinned = False
    for name in ("primer", "gloss"):
        if coat <= _count(context, name):
            film, water = context.computed("wet-film", (name,)), context.display((name, "max_water"))
            cell += ["; " if cell else "", f"{name} ", bracket(film, "wet film")]
            if not film.open and not water.open:
                cell += [" at ", water, " water"]
                thinned = True
    return [*cell, *(["; less film with less water"] if thinned else [])]
