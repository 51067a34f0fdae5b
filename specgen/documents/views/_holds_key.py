"""What the codes under Holds up stand for, before the table that prints them."""

import re
from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.measures import name_groups
from specgen.documents.views._requests import list_requests

_RULE = re.compile(r"[A-Z]{3}-\d\d")
_SECTION = "COD "


def tell_holds_key(context: DocumentContext) -> str:
    """`rules, numbered by subject: ACC access; documents: D06 Calculations`: of the codes that are printed."""
    return "; ".join(_tell_kinds(context))


def _tell_kinds(context: DocumentContext) -> Iterator[str]:
    held = {code for request in list_requests(context) for item in request.items for code in item.holds}
    rules = sorted(code for code in held if _RULE.fullmatch(code))
    if rules:
        yield f"rules, numbered by subject: {name_groups(rules)}"
    if any(code.startswith(_SECTION) for code in held):
        yield "COD with a section: code requirement, D02"
    documents = [f"{known.id} {known.title}" for known in context.rest.known if known.id in held]
    if documents:
        yield f"documents: {', '.join(documents)}"
