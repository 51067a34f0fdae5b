"""How a party is named where it is asked for something."""

from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.field import Path
from specgen.model.value_text import words

# The section of the parties that a role stands in, where it has another name.
_SECTIONS = {"engineer": "design_engineer"}


def name_party(context: DocumentContext, role: str) -> list[Any]:
    """`EIFS manufacturer: Graywether Wall Systems`; the name is in brackets while it is not given."""
    path = find_name(context, role)
    return [name_role(role), ": ", context.display(path)] if path else [name_role(role)]


def name_role(role: str) -> str:
    """`EIFS manufacturer`: a role at the head of a cell."""
    said = words(role)
    return said[:1].upper() + said[1:]


def find_name(context: DocumentContext, role: str) -> Path:
    """The path of the name that a role goes by; empty for a role that the project does not name."""
    section = _SECTIONS.get(role, role)
    return ("parties", section, "name") if section in context.project.schema.node(("parties",)).children else ()
