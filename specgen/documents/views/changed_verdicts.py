"""The verdicts of walls that differ from the set issued before."""

from specgen.documents.changes_words import changes_of
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import name_member
from specgen.model.value_text import words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each wall."""
    lines = tuple(
        (name_member(context, "walls", one.wall), _say(one.old), _say(one.new)) for one in changes_of(context).verdicts
    )
    return TableView(("Wall", "Was", "Is"), lines, (40, 30, 30))


def _say(verdict: str | None) -> str:
    return words(verdict or "none").capitalize()
