"""What is asked for below the party and the work that it is needed before, as the tables of the open items set it."""

import re
from collections.abc import Callable, Iterable, Iterator
from itertools import groupby
from typing import Any, NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.contract_first import is_in_contract, tell_head
from specgen.documents.members import span_marks
from specgen.documents.parties import name_party, name_role
from specgen.documents.views._needed import find_pattern
from specgen.documents.views._requests import Item, Request, list_requests
from specgen.documents.views._stages import DECISION, NAMING, START
from specgen.documents.views.reply_dates import LATER, find_due
from specgen.model.field import dotted_path
from specgen.model.value_text import long_date

# The code of a rule with the letters of its subject.
_CODE = re.compile(r"([A-Z]{3}-)(\d\d)(?: to [A-Z]{3}-(\d\d))?")


class Group(NamedTuple):
    """What a party is asked for before one work; `step` is the work where the head of the rows does not name it."""

    step: str
    items: list[Item]


def group_items(
    context: DocumentContext, wanted: Callable[[Item], bool]
) -> Iterator[tuple[tuple[list[Any]], list[Group]]]:
    """The row that names a party and a work, with what of the wanted items that party is asked for before it.

    The steps behind the start of work stand together.
    """
    named: set[tuple[str, bool]] = set()
    for (party, order, before), asked in groupby(list_requests(context), key=_find_head):
        requests = list(asked)
        for told in (True, False):

            def is_meant(item: Item, told: bool = told, party: str = party) -> bool:
                return wanted(item) and is_told(context, party, item) == told

            groups = list(_group_steps(requests, is_meant))
            if groups:
                who = _name_asked(context, party, told=told, first=(party, told) not in named)
                named.add((party, told))
                several = len(groups) > 1
                head = f". Needed before: {before if several else groups[0].step}{_tell_due(context, order)}"
                yield ([*who, head],), [group if several else group._replace(step="") for group in groups]


def _group_steps(requests: list[Request], wanted: Callable[[Item], bool]) -> Iterator[Group]:
    """What of the wanted items is asked for before each work."""
    for step, same in groupby(requests, key=lambda request: request.before):
        items = [item for one in same for item in one.items if wanted(item)]
        if items:
            yield Group(step, items)


def is_told(context: DocumentContext, party: str, item: Item) -> bool:
    """Whether the contract is read for an item before its party is asked."""
    pattern = dotted_path(find_pattern(context, item.paths[0])) if item.paths else ""
    return not (item.number or item.judged) and is_in_contract(context, party, pattern)


def _name_asked(context: DocumentContext, party: str, *, told: bool, first: bool) -> list[Any]:
    """Where a value is read, or whom it is asked of, by name where that is the first time."""
    if told:
        return [tell_head(context, first=first)]
    return name_party(context, party) if first else [name_role(party)]


def _find_head(request: Request) -> tuple[str, int, str]:
    """The party, and the work that its head names; what comes behind the start of work in one."""
    if request.order > START[0]:
        return request.party, START[0] + 1, LATER
    return request.party, request.order, request.before


def _tell_due(context: DocumentContext, order: int) -> str:
    """`; reply by April 12, 2027`; empty where no date is known, and before the decision on the walls."""
    if order == NAMING[0]:
        return "; reply at once"
    due = find_due(context, order) if order >= DECISION[0] else None
    return f"; reply by {long_date(due)}" if due else ""


def tell_step(step: str) -> str:
    """`; before gloss finish`: the work of a row below a head that does not name it."""
    return f"; before {step}" if step else ""


def shorten_holds(holds: Iterable[str]) -> str:
    """`AIR-01, 02, 04, FIN-11 to 16`: the letters of a subject once."""
    told, subject = [], ""
    for part in span_marks(dict.fromkeys(holds)).split(", "):
        found = _CODE.fullmatch(part)
        if found is None:
            told.append(part)
            continue
        letters, first, last = found.groups()
        told.append(f"{letters if letters != subject else ''}{first}{f' to {last}' if last else ''}")
        subject = letters
    return ", ".join(told)


def tell_numbers(first: int, number: int) -> str:
    """The numbers of documents that stand in one row: `7`, `7, 8`, `7 to 9`."""
    last = first + number - 1
    return str(first) if number == 1 else f"{first}, {last}" if last == first + 1 else f"{first} to {last}"
