"""Places to sign the acceptance form: party, printed name and title, signature, date."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank
from specgen.model.value_text import words

_SIGNING = ("applicator", "general_contractor", "inspector", "architect", "owner")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party that signs, with its company where the project names it."""
    lines = []
    for role in _SIGNING:
        name = ("parties", role, "name")
        party = words(role).capitalize()
        lines.append(
            (
                party,
                context.display(name) if context.project.is_given(name) else Blank(f"Company of {party.lower()}"),
                Blank(f"Printed name and title, {party.lower()}"),
                Blank(f"Signature, {party.lower()}"),
                Blank(f"Date, {party.lower()}", "date"),
            )
        )
    header = ("Party", "Company", "Printed name and title", "Signature", "Date")
    return TableView(header, tuple(lines), (15, 22, 26, 25, 12))
