"""The stops of a project."""

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView
from specgen.documents.views.findings import table
from specgen.model.finding import Severity


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each fired clause."""
    return table(desk.judgment.of(Severity.STOP))
