"""Code look-ups: yes or no, why, and the clauses that check the answer."""

from typing import Any

from specgen.documents.calculations import gather_calculations
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.members import mark, marks
from specgen.documents.views._limit_checks import describe_check, join_cells, limit_checks
from specgen.model.finding import LimitCheck
from specgen.quantities.comparison import Outcome

# A local code that is no model code is not evaluated: the authority having jurisdiction is asked.
UNREAD = "not evaluated"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each answer, with the members that share it."""
    lines: dict[tuple[Any, ...], tuple[list[str], Any, Any]] = {}
    unread = context.project.get(("code", "model")) == "other"
    for calculation in gather_calculations(context):
        checks = limit_checks(context, calculation.provider)
        for member, lookup in calculation.lookups.items():
            source = lookup.source[0] if lookup.source else None
            why = DisplayValue(lookup.why, lookup.why, source, about=calculation.provider.title)
            is_unread = unread and "code.model" in calculation.provider.reads
            answer = UNREAD if is_unread else "yes" if lookup.result else "no"
            held_against = (
                ["confirm with the authority having jurisdiction"]
                if is_unread
                else _list_checks(context, checks[member], due=bool(lookup.result))
            )
            key = (calculation.provider.title, answer, lookup.why, str(held_against))
            lines.setdefault(key, ([], why, held_against))[0].append(mark(member))
    shown = tuple((key[0], marks(names), key[1], *cells) for key, (names, *cells) in lines.items())
    return TableView(("Requirement", "For", "Applies", "Reason", "Status"), shown, (19, 10, 13, 30, 28))


def _list_checks(context: DocumentContext, checks: list[LimitCheck], due: bool) -> list[Any]:
    """Each check that is not met or not judged with its value, else that what is due is met."""
    against_it = [describe_check(context, check) for check in checks if check.outcome is not Outcome.WITHIN]
    return join_cells(against_it) if against_it else [("met" if checks else "") if due else "not applicable"]
