"""The findings that are raised or cleared since the set issued before."""

from specgen.documents.changes_words import changes_of
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.changes import RuleChange
from specgen.model.finding import Severity


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each finding and subject."""
    return TableView(
        ("Item", "Subject", "Was", "Is", "Finding"), tuple(map(_tell, changes_of(context).rules)), (12, 16, 11, 11, 50)
    )


def _tell(rule: RuleChange) -> tuple[str, ...]:
    subject = "Project" if rule.subject == "project" else rule.subject
    return rule.code, subject, _name(rule.old, "Not found"), _name(rule.new, "Cleared"), rule.message


def _name(severity: Severity | None, otherwise: str) -> str:
    return otherwise if severity is None else str(severity).capitalize()
