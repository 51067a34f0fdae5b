"""The stops of a project."""

from ...vocabulary.finding import Severity
from ..compose import Composer
from ..desk import Desk, TableView
from .findings import table


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each fired clause."""
    return table(desk.judgment.of(Severity.STOP))
