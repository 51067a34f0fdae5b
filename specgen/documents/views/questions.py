"""What to ask of whom, and by when: the open items and pending documents of each party, those needed first on top."""

from collections import Counter, defaultdict

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.parties import name_party, name_role
from specgen.documents.required_documents import list_pending
from specgen.documents.views._asked import SUBMITTAL, Asked, list_asked, sort_document
from specgen.documents.views._fields import name_fields, say_fields

_REVIEW = "Review of the specification: paragraphs met, and deviations"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party and date; the party whose answers settle most comes first, behind any hazard."""
    held = Counter(need for clause in context.judgment.not_judged for need in clause.needs)
    values = list_asked(context)
    told: dict[tuple[str, int, str], list[str]] = defaultdict(list)
    for asked, paths in _group(values).items():
        told[asked] += say_fields(name_fields(context, paths))
    for document in list_pending(context):
        places = "" if document.subjects == ("project",) else f" ({', '.join(document.subjects)})"
        told[(document.owed_by, *sort_document(context, document))].append(f"{document.name}{places}")
    if not context.project.members.get(("contract", "demands")):
        told[("applicator", *SUBMITTAL)].append(_REVIEW)
    weight: Counter[str] = Counter()
    for entry in values:
        weight[entry.party] += held[entry.path]
    first = {party: min(order for name, order, _ in told if name == party) for party, _, _ in told}
    parties = sorted(first, key=lambda party: (first[party] > 0, -weight[party]))
    lines = []
    for party in parties:
        mine = sorted(key for key in told if key[0] == party)
        lines += [
            (name_role(party) if number else name_party(context, party), key[2], "; ".join(told[key]))
            for number, key in enumerate(mine)
        ]
    return TableView(("Ask", "Needed before", "Value or document"), tuple(lines), (22, 18, 60))


def _group(values: list[Asked]) -> dict[tuple[str, int, str], list[str]]:
    """The paths of the values by party and by when they are needed."""
    grouped: dict[tuple[str, int, str], list[str]] = defaultdict(list)
    for entry in values:
        grouped[(entry.party, entry.order, entry.before)].append(entry.path)
    return grouped
