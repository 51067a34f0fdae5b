"""How a party is named where it is asked for something."""

from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.value_text import words

# The section of the parties that a role stands in, where it has another name.
_SECTIONS = {"engineer": "design_engineer"}


def name_party(context: DocumentContext, role: str) -> list[Any]:
    """`EIFS manufacturer: Graywether Wall Systems`; the name is in brackets while it is not given."""
    said = words(role)
    title = said[:1].upper() + said[1:]
    section = _SECTIONS.get(role, role)
    known = section in context.project.schema.node(("parties",)).children
    return [title, ": ", context.display(("parties", section, "name"))] if known else [title]
