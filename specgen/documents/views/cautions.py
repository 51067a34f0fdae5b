"""The cautions of a project."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_pending
from specgen.documents.views.findings import table
from specgen.model.finding import Severity


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each exception that its measure allows; what a document answers stands among those required."""
    required = {document.code for document in list_pending(context)}
    return table(context, (f for f in context.judgment.of(Severity.CAUTION) if f.code not in required), "Condition")
