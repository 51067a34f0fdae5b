"""Answers that calculations and procedures look up in the code: yes or no, why, and what is held against them."""

from typing import Any

from specgen.documents.calculations import computed
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.views.workings import against, joined, mark, told
from specgen.model.finding import Compared
from specgen.quantities.comparison import Outcome

# A local code that is no model code is not read; the building official is asked.
UNREAD = "not read here"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each answer and member."""
    made: list[tuple[Any, ...]] = []
    unread = context.project.get(("code", "model")) == "other"
    for one in computed(context):
        held = against(context, one.provider)
        for member, found in one.lookups.items():
            why = DisplayValue(found.why, found.why, found.source[0] if found.source else None)
            is_unread = unread and "code.model" in one.provider.reads
            answer = UNREAD if is_unread else "yes" if found.result else "no"
            compared = ["none: the answer is not known"] if is_unread else _held(context, held[member])
            made.append((one.provider.title, mark(member), answer, why, compared))
    return TableView(("Question", "For", "Answer", "Why", "Held against"), tuple(made), (18, 9, 11, 27, 35))


def _held(context: DocumentContext, compared: list[Compared]) -> list[Any]:
    """Each clause that is not met or not judged with what stands against it, then the codes of those that are met."""
    against_it = [told(context, one) for one in compared if one.outcome is not Outcome.WITHIN]
    met = [one.code for one in compared if one.outcome is Outcome.WITHIN]
    return joined([*against_it, *([[f"met: {', '.join(met)}"]] if met else [])])
