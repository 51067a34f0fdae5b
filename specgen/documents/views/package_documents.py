"""The documents of a draft: which are included, and what is missing for each, by the party that gives it."""

from specgen.documents.calculations import list_waiting
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.drafts import Known
from specgen.documents.mockup_days import UNTOLD, list_drying_owners
from specgen.documents.views._fields import find_field, name_fields, say_fields
from specgen.model.value_text import count, words

# So many values are named one by one, more are counted by party.
_NAMED = 3
_SUMS = "D06"
# In brackets: a document that is still required, and what follows from values that are asked for.
_PENDING = "pending"
_FOLLOWS = ("open", "pending: ", "follows from ")
_DOCUMENTS = "documents still required"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document but this one."""
    left_out = {entry.id for entry in context.rest.left_out}
    lines = tuple(
        (f"{entry.id} {entry.title}", "no" if entry.id in left_out else "yes", tell_missing(context, composer, entry))
        for entry in context.rest.known
    )
    return TableView(("Document", "Included", "Missing, and from whom"), lines, (34, 11, 55))


def tell_missing(context: DocumentContext, composer: Composer, entry: Known) -> str:
    """`Gun nozzle size (applicator)`; of many `31 values: engineer 20, applicator 11`."""
    paths = [path for path, _ in entry.missing]
    if entry.id == _SUMS:
        paths += list_waiting(context)
    asked: dict[str, list[str]] = {}
    for path in dict.fromkeys(paths):
        field = find_field(context, path)
        if field is not None:
            asked.setdefault(words(field.owed_by), []).append(path)
    named = {party: say_fields(name_fields(context, wanted)) for party, wanted in asked.items()}
    # What a sum waits for is told by its paths.
    others = [said for path, said in entry.missing if find_field(context, path) is None and entry.id != _SUMS]
    apart = [_name_apart(context, composer, said) for said in others if not said.startswith(_FOLLOWS)]
    return "; ".join((*_name_or_count(named), *apart)) or ("values that follow from others" if others else "nothing")


def _name_apart(context: DocumentContext, composer: Composer, said: str) -> str:
    """What no field alone gives, with whoever gives it: `drying times (EIFS manufacturer, finish manufacturer)`."""
    if said == UNTOLD:
        return f"drying times ({', '.join(map(words, list_drying_owners(context, composer)))})"
    return _DOCUMENTS if said == _PENDING else said


def _name_or_count(named: dict[str, list[str]]) -> list[str]:
    """Each value with its party, or of many the number by party, the most first."""
    number = sum(map(len, named.values()))
    if number <= _NAMED:
        return [f"{label} ({party})" for party, labels in named.items() for label in labels]
    parties = sorted(named, key=lambda party: -len(named[party]))
    return [f"{count(number, 'value')}: {', '.join(f'{party} {len(named[party])}' for party in parties)}"]
