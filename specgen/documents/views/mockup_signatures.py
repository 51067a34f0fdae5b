"""Places to sign the acceptance form: party, printed name and title, signature, date."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank
from specgen.model.value_text import words
from specgen.recording.acceptance_lines import list_lines

_SIGNING = ("applicator", "sealant_applicator", "general_contractor", "inspector", "architect", "owner")
# What the signature of a party is for; that of who decides is for the decision.
_FOR = {
    "applicator": "the work and its own readings",
    "general_contractor": "receipt; no decision",
    "inspector": "readings made or witnessed",
    "architect": "receipt; no decision",
    "owner": "receipt; no decision",
}
_DECISION = "the decision"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party that the project names, and for whoever decides."""
    lines = []
    for role in _SIGNING:
        name = ("parties", role, "name")
        decides = role == context.project.get(("mockup", "approver"))
        signs_for = _DECISION if decides else _FOR.get(role) or _name_sealant_lines(context)
        if not signs_for or not (context.project.is_given(name) or decides):
            continue
        party = words(role).capitalize()
        lines.append(
            (
                party,
                context.display(name),
                signs_for,
                Blank(f"Printed name and title, {party.lower()}", field=f"form.signer.{role}"),
                Blank(f"Signature, {party.lower()}", field=f"form.signature.{role}"),
                Blank(f"Date, {party.lower()}", "date", f"form.signed_on.{role}"),
            )
        )
    header = ("Party", "Company", "Signs for", "Printed name and title", "Signature", "Date")
    return TableView(header, tuple(lines), (13, 19, 16, 21, 20, 11))


def _name_sealant_lines(context: DocumentContext) -> str:
    """`criteria 31 and 32`: the lines that the work of a sealant applicator apart is judged by; empty for none."""
    firms = {context.project.get(("parties", role, "name")) for role in ("applicator", "sealant_applicator")}
    lines = list_lines(context.project, context.standards)
    numbers = [str(line.number) for line in lines if line.criterion.startswith("sealant_") and line.parts]
    return f"criteria {' and '.join(numbers)}" if numbers and len(firms) > 1 else ""
