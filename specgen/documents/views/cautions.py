"""The cautions of a project."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_measured
from specgen.documents.views.findings import table


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each exception that its measure allows; what a document answers stands among those required."""
    return table(context, list_measured(context), "Condition")
