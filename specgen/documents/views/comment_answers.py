"""The comments of the last review, and how each is answered."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each comment, in the order of the project file."""
    lines = tuple(
        (
            mark,
            context.display(("comments", mark, "text")),
            context.display(("comments", mark, "answer")),
            _if_given(context, mark, "where"),
            _if_given(context, mark, "closed"),
        )
        for mark in context.project.members.get(("comments",), ())
    )
    return TableView(("No.", "Comment", "Answer", "Where", "Closed"), lines, (8, 34, 34, 14, 10))


def _if_given(context: DocumentContext, mark: str, name: str) -> object:
    """An optional value of a comment; nothing where it is not given."""
    path = ("comments", mark, name)
    return context.display(path) if context.project.is_given(path) else ""
