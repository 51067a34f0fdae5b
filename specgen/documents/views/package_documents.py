"""The documents of a draft: which are included, and what is missing for each, by the party that gives it."""

from collections.abc import Iterator

from specgen.documents.calculations import list_waiting
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.contract_first import CONTRACT, name_giver
from specgen.documents.drafts import Known
from specgen.documents.mockup_days import UNTOLD, list_drying_owners
from specgen.documents.pull_tests import MOISTURE
from specgen.documents.views._asked import list_asked
from specgen.documents.views._asked_rows import is_told
from specgen.documents.views._earlier import LAYOUT, OF_LAYOUT, find_party
from specgen.documents.views._fields import ask_by_code, find_field, name_fields, say_fields
from specgen.documents.views._following import list_open_rules
from specgen.documents.views._needed import find_held, find_pattern
from specgen.documents.views._requests import list_requests
from specgen.model.field import dotted_path
from specgen.model.value_text import words

# So many values are named one by one, of more the parties.
_NAMED = 3
_RULES, _SUMS, _SCHEDULE = "D02", "D06", "D14"
# The rules on dates, each of which waits for what the schedule lacks.
_OF_DATES = "SCH-"
# In brackets: a document that is still required, and what follows from values that are asked for.
_PENDING = "pending"
_FOLLOWS = ("open", "pending: ", "follows from ")
_DOCUMENTS = "Documents still required: see D19"
_OF_PULLS = "D12f"
# Who gives what no field holds.
_GIVEN_BY = {"Review of the specification": "applicator", MOISTURE: "EIFS manufacturer"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document but this one."""
    left_out = {entry.id for entry in context.rest.left_out}
    lines = tuple(
        (f"{entry.id} {entry.title}", "no" if entry.id in left_out else "yes", tell_missing(context, composer, entry))
        for entry in context.rest.known
    )
    return TableView(("Document", "Included", "Missing, and from whom"), lines, (34, 9, 57))


def tell_missing(context: DocumentContext, composer: Composer, entry: Known) -> str:
    """`Gun nozzle size (applicator)`; of many `Values: engineer, applicator`."""
    paths = [path for path, _ in entry.missing]
    if entry.id == _SUMS:
        paths += list_waiting(context)
    marks = context.judgment.walls if entry.id == _RULES else ()
    open_rules = {rule for mark in marks for rule in list_open_rules(context, mark)}
    paths += [path for path, rules in find_held(context).items() if not open_rules.isdisjoint(rules)]
    if entry.id == _SCHEDULE:
        paths += [path for path, rules in find_held(context).items() if any(map(_is_of_dates, rules))]
    if entry.id == LAYOUT:
        paths += [one.path for one in list_asked(context) if find_pattern(context, one.path) in OF_LAYOUT]
    asked: dict[str, list[str]] = {}
    for path in ask_by_code(context, paths):
        field = find_field(context, path)
        if field is not None:
            giver = name_giver(context, find_party(context, field), dotted_path(field.path))
            asked.setdefault(giver, []).append(path)
    named = {party: say_fields(name_fields(context, wanted)) for party, wanted in asked.items()}
    for party, said in _list_answers(context, open_rules):
        named.setdefault(party, []).append(said)
    # What a sum waits for is told by its paths.
    others = [said for path, said in entry.missing if find_field(context, path) is None and entry.id != _SUMS]
    apart = [_name_apart(context, composer, said) for said in others if not said.startswith(_FOLLOWS)]
    return "; ".join((*_name_or_sum_up(named), *apart)) or ("values that follow from others" if others else "nothing")


def _list_answers(context: DocumentContext, rules: set[str]) -> Iterator[tuple[str, str]]:
    """What no field holds and some rules wait for, with who gives it."""
    for request in list_requests(context):
        for item in request.items:
            if not (item.paths or item.number or item.names or rules.isdisjoint(item.holds)):
                yield CONTRACT if is_told(context, request.party, item) else words(request.party), item.text


def tell_forms_left_out(context: DocumentContext) -> str:
    """`With the package: D12a Spray record (finish manufacturer)`: what a draft holds back, with who is to give what.

    The decision on a wall that is pulled comes before the package, and the pull tests before the decision.
    """
    told: dict[str, list[str]] = {}
    for form in context.rest.forms_left_out:
        said = f"{form.id} {form.title} ({', '.join(_list_parties(context, form))})"
        told.setdefault("Before the pull tests" if form.id == _OF_PULLS else "With the package", []).append(said)
    return ". ".join(f"{when}: {'; '.join(forms)}" for when, forms in told.items())


def _list_parties(context: DocumentContext, entry: Known) -> list[str]:
    """Who gives what a form lacks."""
    fields = [(find_field(context, path), said) for path, said in entry.missing]
    return list(dict.fromkeys(words(field.owed_by) if field else _GIVEN_BY.get(said, said) for field, said in fields))


def _is_of_dates(rule: str) -> bool:
    return rule.startswith(_OF_DATES)


def _name_apart(context: DocumentContext, composer: Composer, said: str) -> str:
    """What no field alone gives, with whoever gives it: `drying times (EIFS manufacturer, finish manufacturer)`."""
    if said == UNTOLD:
        return f"drying times ({', '.join(map(words, list_drying_owners(context, composer)))})"
    if said in _GIVEN_BY:
        return f"{said} ({_GIVEN_BY[said]})"
    return _DOCUMENTS if said == _PENDING else said


def _name_or_sum_up(named: dict[str, list[str]]) -> list[str]:
    """Each value with its party; of many the parties, the one that gives the most first."""
    number = sum(map(len, named.values()))
    if number <= _NAMED:
        return [f"{label} ({party})" for party, labels in named.items() for label in labels]
    parties = sorted(named, key=lambda party: -len(named[party]))
    return [f"Values: {', '.join(parties)}"]
