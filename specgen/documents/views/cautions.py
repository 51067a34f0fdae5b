"""The cautions of a project."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import list_pending
from specgen.documents.views.findings import table
from specgen.model.finding import Finding, Severity


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each exception that its measure allows."""
    return table(context, list_cautions(context), "Condition")


def list_cautions(context: DocumentContext) -> tuple[Finding, ...]:
    """The cautions that a measure answers; what a document answers stands among those required."""
    required = {document.code for document in list_pending(context)}
    return tuple(f for f in context.judgment.of(Severity.CAUTION) if f.code not in required)
