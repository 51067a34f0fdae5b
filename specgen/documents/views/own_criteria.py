"""The criteria of the mockup in the project's own words."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each criterion that the project lists."""
    path = ("mockup", "criteria")
    columns = ("name", "method", "instrument", "limit", "readings")
    lines = tuple(
        tuple(context.display((*path, number, column)) for column in columns)
        for number in context.project.members.get(path, ())
    )
    return TableView(("Criterion", "Method", "Instrument", "Limit", "Readings"), lines, (16, 28, 14, 32, 10))
