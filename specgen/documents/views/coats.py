"""The coats over the base coat: how many, how thick, how thinned, how long they dry."""

from collections.abc import Callable
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Smoothing, primer and gloss, one row each."""
    made = (_smoothing(context), _sprayed(context, "primer"), _sprayed(context, "gloss"))
    return TableView(("Coat", "Coats", "Film", "Cup time and water", "Drying"), made, (17, 9, 24, 32, 18))


def _smoothing(context: DocumentContext) -> tuple[Any, ...]:
    shown = _of(context, "smoothing")
    film = [shown("total_thickness"), " in all, at most"]
    return "Smoothing coat", shown("coats"), film, "not thinned beyond its instructions", shown("dry_hours")


def _sprayed(context: DocumentContext, coat: str) -> tuple[Any, ...]:
    shown = _of(context, coat)
    tinted = coat == "primer" and context.project.get(("primer", "tinted"))
    window = [shown("cup_least"), " to ", shown("cup_most"), " in cup ", shown("cup")]
    water = ["; water ", shown("max_water"), " at most"]
    film = [shown("dry_film"), " dry, each coat"]
    return "Primer, tinted" if tinted else coat.capitalize(), shown("coats"), film, window + water, shown("dry_hours")


def _of(context: DocumentContext, section: str) -> Callable[[str], Any]:
    return lambda name: context.display((section, name))
