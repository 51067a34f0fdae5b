"""How a party is named: by its role, and by the name that the project gives it."""

from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.field import Path
from specgen.model.series import join_series
from specgen.model.value_text import words
from specgen.resolving.party_names import party_name_path


def name_role(role: str) -> str:
    """`EIFS manufacturer`, as a line begins."""
    said = words(role)
    return said[:1].upper() + said[1:]


def tell_party(context: DocumentContext, role: str) -> str:
    """`EIFS manufacturer (Graywether Wall Systems)`; the role alone while no name is given."""
    path = find_name(context, role)
    name = context.project.get(path) if path else None
    return f"{name_role(role)} ({name})" if name else name_role(role)


def name_party(context: DocumentContext, role: str) -> list[Any]:
    """`EIFS manufacturer: Graywether Wall Systems`; the name is in brackets while it is not given."""
    path = find_name(context, role)
    return [name_role(role), ": ", context.display(path)] if path else [name_role(role)]


def tell_warrantors(context: DocumentContext) -> str:
    """`Lark Builders and the EIFS manufacturer`: each by its name, else by its role; empty where none is named."""
    roles = context.project.get(("contract", "warrantors")) or ()
    return join_series(context.project.get(find_name(context, role)) or f"the {words(role)}" for role in roles)


def find_name(context: DocumentContext, role: str) -> Path:
    """The field of the name of a party; empty for a role that no section of the parties is about."""
    return party_name_path(context.project.schema, role)


def find_named(context: DocumentContext, dotted: str) -> str:
    """The role whose name a field holds, `architect` of `parties.architect.name`; empty for any other field."""
    path = tuple(dotted.split("."))
    if path[0] != "parties":
        return ""
    roles = {field.owed_by for field in context.project.schema.fields.values()} - {""}
    return next((role for role in sorted(roles) if find_name(context, role) == path), "")


def find_contractor(context: DocumentContext) -> str:
    """The name of the general contractor; empty where none is named."""
    return str(context.project.get(("parties", "general_contractor", "name")) or "")


def tell_route(context: DocumentContext) -> str:
    """`; owner, architect, and engineer through Lark Builders`: where a contractor is named, as contracts have it."""
    contractor = find_contractor(context)
    return f"; owner, architect, and engineer through {contractor}" if contractor else ""


def tell_contact(context: DocumentContext) -> str:
    """`, Ida Marsh, 555-0147, ida@lark.example`: whom to answer at the applicator's; empty where nobody is named."""
    asked = (context.project.get(("parties", "applicator", name)) for name in ("contact", "phone", "email"))
    return "".join(f", {told}" for told in asked if told)
