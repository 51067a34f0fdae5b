"""Where the project gives the name of a party."""

from specgen.model.field import Path, Schema

# The section of the parties that a role stands in, where it has another name.
_SECTIONS = {"engineer": "design_engineer"}


def party_name_path(schema: Schema, role: str) -> Path:
    """The field of the name of a party; empty for a role that no section of the parties is about."""
    section = _SECTIONS.get(role, role)
    return ("parties", section, "name") if section in schema.node(("parties",)).children else ()
