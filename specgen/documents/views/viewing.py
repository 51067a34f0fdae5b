"""The record of the viewing itself: when, from where, in what light, by whom."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_ASKED = ("Date, time", "Distance", "Angle to the face", "Sky and sun", "Light on the face", "Viewed by")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A first and a second viewing, each with a blank for all that is asked."""
    lines = tuple(
        (
            viewing,
            *(Blank(f"{a}, {viewing.lower()}", field=f"form.viewing.{at}.{n}") for n, a in enumerate(_ASKED, 1)),
        )
        for at, viewing in enumerate(("First viewing", "Second viewing"), 1)
    )
    return TableView(("Viewing", *_ASKED), lines, (12, 14, 12, 13, 15, 15, 19))
