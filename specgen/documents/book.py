"""The sheets of a composed set as one book: what it says of itself, and the lines that its printed pages repeat."""

import datetime

from specgen.documents.composed_set import ComposedSet
from specgen.documents.sheets import make_sheets
from specgen.model.sheet import Book, Sheet


def list_sheets(made: ComposedSet) -> tuple[tuple[str, Sheet], ...]:
    """The sheets that go with the documents of a set, each with the id of its own."""
    return make_sheets(made.context, frozenset(document.id for document in made.documents))


def make_book(made: ComposedSet) -> Book | None:
    """The sheets of a set; None where no document of the set has one."""
    sheets = tuple(sheet for _, sheet in list_sheets(made))
    if not sheets:
        return None
    first = made.documents[0]
    revision = first.running[1].rpartition(" | ")[2]
    day = made.context.project.get(("package", "date"))
    return Book(
        title=f"{first.project}: registers and lists",
        author=first.firm,
        head=(first.running[0], revision),
        foot=first.date,
        metric=made.context.first == "si",
        day=day if isinstance(day, datetime.date) else None,
        sheets=sheets,
    )
