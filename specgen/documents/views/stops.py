"""The stops of a project, save those for want of a document."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.findings import table
from specgen.judging.owners import looks_for_document
from specgen.model.finding import Severity


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each exception that stops the package."""
    return table(context, (f for f in context.judgment.of(Severity.STOP) if not looks_for_document(f)), "Exception")
