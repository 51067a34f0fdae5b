"""The data of the project that differ from the set issued before."""

from typing import Any

from specgen.documents.changes_words import changes_of, name_owner, name_place, tell_value
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.changes import FieldChange
from specgen.terminal.changes_words import below_members, count_fields


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each value; one for each member that is new or dropped as a whole."""
    changes = changes_of(context)
    lines = [_tell(context, one) for one in changes.issue]
    lines += [(name_place(context, path), "", count_fields(changes, path), "Dropped", "") for path in changes.gone]
    lines += [(name_place(context, path), "", "Not given", count_fields(changes, path), "") for path in changes.come]
    lines += [_tell(context, one) for one in below_members(changes)]
    return TableView(("Item", "Value", "Was", "Is", "Responsible"), tuple(lines), (18, 26, 20, 20, 16))


def _tell(context: DocumentContext, one: FieldChange) -> tuple[Any, ...]:
    values = (tell_value(context, said) for said in (one.old, one.new))
    return name_place(context, one.path), one.label or one.path, *values, name_owner(one.owed_by)
