"""The check list of the third-party inspector, with the figures of the project and a box for each."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.sentences import Sentences
from specgen.model.block import CheckBox

_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two checks in a line, read from left to right, each with its letter."""
    sentences, walls = Sentences(context, composer), list(context.project.members[("walls",)])
    cells: list[tuple[Any, ...]] = []
    for letter, (name, row) in zip(_LETTERS, context.standards.third_party_checks.items(), strict=False):
        said = sentences.lines(f"third_party_checks.yaml: {name}", row.check, walls)
        box = CheckBox(letter, f"form.third_party.{letter}", "yes")
        cells.append((box, composer.inlines(" ".join(said))))
    pairs = [cells[place : place + 2] for place in range(0, len(cells), 2)]
    lines = tuple(tuple(part for one in pair for part in one) + ("", "") * (2 - len(pair)) for pair in pairs)
    return TableView(("Item", "Accepted") * 2, lines, (5, 45) * 2)
