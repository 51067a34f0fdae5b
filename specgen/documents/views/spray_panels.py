"""The panels of a day: wet film of each coat, and a tick where the finished panel was shielded."""

from itertools import chain
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.form_units import UNITS
from specgen.documents.views._record_blanks import make_blank
from specgen.documents.views.spray_passes import count_coats
from specgen.model.block import CheckBox

# The back of the sheet: a face of many panels takes few of them.
_ABREAST, _LINES = 4, 14
_FILMS = 12  # the share of the width that the films of one panel have


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Four panels in a line: mark, wet film of each coat, tick."""
    coats, film = count_coats(context), UNITS[context.first]["film"]
    heads = ("Panel", *(f"Coat {coat} wet, {film}" for coat in range(1, coats + 1)), "Shield")
    places = [range(_ABREAST * line + 1, _ABREAST * (line + 1) + 1) for line in range(_LINES)]
    lines = tuple(tuple(chain.from_iterable(_panel(place, coats) for place in line)) for line in places)
    each = (7, *(_FILMS // coats,) * coats, 6)
    first, *rest = each * _ABREAST
    return TableView(heads * _ABREAST, lines, (100 - sum(rest), *rest))


def _panel(place: int, coats: int) -> list[Any]:
    films = [
        make_blank(f"Wet film, coat {coat}, panel {place}", "log.wet_film", f"a{coat}", place)
        for coat in range(1, coats + 1)
    ]
    mark = make_blank(f"Panel {place}", "log.panels", "a", place)
    return [mark, *films, CheckBox("yes", "log.masked_panels.a", str(place))]
