"""What is read on each panel besides the spray record: gap of the base coat, moisture of the primer."""

from itertools import chain
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.form_units import UNITS
from specgen.documents.views._record_blanks import make_blank

_ABREAST, _LINES = 7, 8


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Seven panels in a line: mark, gap under the short straightedge, reading of the moisture meter."""
    heads = ("Panel", f"Gap, {UNITS[context.first]['length']}", "Meter")
    places = [range(_ABREAST * line + 1, _ABREAST * (line + 1) + 1) for line in range(_LINES)]
    lines = tuple(tuple(chain.from_iterable(map(_read, line))) for line in places)
    first, *rest = (5, 4, 5) * _ABREAST
    return TableView(heads * _ABREAST, lines, (100 - sum(rest), *rest))


def _read(place: int) -> list[Any]:
    names = (("Panel", "panel"), ("Gap, panel", "panel_gap"), ("Meter, panel", "panel_meter"))
    return [make_blank(f"{label} {place}", f"form.{name}", "e", place) for label, name in names]
