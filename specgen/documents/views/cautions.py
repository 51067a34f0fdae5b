"""The cautions of a project."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.findings import table
from specgen.model.finding import Severity


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each exception that its measure allows."""
    return table(context, context.judgment.of(Severity.CAUTION), "Condition")
