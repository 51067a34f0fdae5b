"""Who gives the figures of the calculations that bear no letter: the project's own, by party."""

from specgen.documents.calculations import gather_calculations
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.origins import find_origin, follow
from specgen.documents.parties import tell_party


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party with the figures that it gives, each once."""
    given: dict[str, dict[str, None]] = {}
    for calculation in gather_calculations(context):
        for member, working in calculation.workings.items():
            for row in working.inputs:
                path = follow(context.project, row.origin, member)
                field = context.project.schema.field_at(path) if path is not None else None
                if field is None or path not in context.project.values or find_origin(context, member, row).source:
                    continue
                given.setdefault(field.owed_by, {})[field.label] = None
    lines = tuple((tell_party(context, role), "; ".join(sorted(given[role]))) for role in sorted(given))
    return TableView(("Given by", "Values without a letter"), lines, (28, 72))
