"""Room for the pulls of one wall and the moisture beside each, two in a line."""

from itertools import chain
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.form_units import UNITS
from specgen.documents.old_surfaces import list_pulled
from specgen.documents.views._record_blanks import make_blank, make_boxes

_ABREAST, _LINES = 2, 3
_ASKED = (
    ("Place", "form.place"),
    ("Moisture", "form.moisture"),
    ("Bond", "form.bond"),
    ("Failed in", "form.failed_in"),
)
_JUDGED = (("yes", "pass"), ("no", "fail"))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A place for each pull; none where no surface is pulled."""
    heads = ("No.", "Elevation, place", "Moisture", f"Bond, {UNITS[context.first]['pressure']}", "Failed in", "Result")
    numbers = [[_ABREAST * line + place + 1 for place in range(_ABREAST)] for line in range(_LINES)]
    lines = tuple(tuple(chain.from_iterable(map(_pull, line))) for line in numbers) if list_pulled(context) else ()
    return TableView(heads * _ABREAST, lines, (4, 13, 7, 7, 9, 10) * _ABREAST)


def _pull(number: int) -> list[Any]:
    row = f"f{number}"
    blanks = [make_blank(f"{label}, pull {number}", field, row) for label, field in _ASKED]
    return [str(number), *blanks, make_boxes(_JUDGED, "form.met", row)]
