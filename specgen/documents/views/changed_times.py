"""Fit days and dates that differ from the set issued before."""

from specgen.documents.changes_words import changes_of, name_place, tell_value
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each month of an elevation, and for each date."""
    lines = tuple(
        (
            one.about,
            name_place(context, one.member) if one.member else "Project",
            tell_value(context, one.old),
            tell_value(context, one.new),
        )
        for one in changes_of(context).times
    )
    return TableView(("Time", "Of", "Was", "Is"), lines, (30, 26, 22, 22))
