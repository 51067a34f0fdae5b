"""The documents of a draft: which are included, and how much is known of each."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.drafts import ALWAYS, LEAST_KNOWN, Known


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document but this one."""
    left_out = {entry.id for entry in context.rest.left_out}
    lines = tuple(_row(entry, entry.id in left_out) for entry in context.rest.known)
    return TableView(("Document", "Included", "Values known", "Open, of all"), lines, (40, 32, 14, 14))


def _row(entry: Known, left_out: bool) -> tuple[Any, ...]:
    included = f"no, under {LEAST_KNOWN}% known" if left_out else "yes, in any draft" if entry.id in ALWAYS else "yes"
    return f"{entry.id} {entry.title}", included, f"{entry.known}%", f"{entry.brackets} of {entry.values}"
