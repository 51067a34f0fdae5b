"""How a party is named where it is asked for something."""

from specgen.documents.context import DocumentContext
from specgen.model.value_text import words


def name_party(context: DocumentContext, role: str) -> str:
    """`EIFS manufacturer (Graywether Wall Systems)`; the role alone while no name is given."""
    said = words(role)
    title = said[:1].upper() + said[1:]
    known = role in context.project.schema.node(("parties",)).children
    name = context.project.get(("parties", role, "name")) if known else None
    return f"{title} ({name})" if name else title
