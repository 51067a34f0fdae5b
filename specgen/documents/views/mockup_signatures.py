"""Places to sign the acceptance form: party, printed name and title, signature, date."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank
from specgen.model.value_text import words

_SIGNING = ("applicator", "general_contractor", "inspector", "architect", "owner")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party that the project names, and for whoever decides."""
    lines = []
    for role in _SIGNING:
        name = ("parties", role, "name")
        if not context.project.is_given(name) and role != context.project.get(("mockup", "approver")):
            continue
        party = words(role).capitalize()
        lines.append(
            (
                party,
                context.display(name),
                Blank(f"Printed name and title, {party.lower()}", field=f"form.signer.{role}"),
                Blank(f"Signature, {party.lower()}", field=f"form.signature.{role}"),
                Blank(f"Date, {party.lower()}", "date", f"form.signed_on.{role}"),
            )
        )
    header = ("Party", "Company", "Printed name and title", "Signature", "Date")
    return TableView(header, tuple(lines), (15, 22, 26, 25, 12))
