"""What the contract tells and is read there first: the architect is asked where it is silent or contradictory."""

from specgen.documents.context import DocumentContext
from specgen.documents.parties import find_contractor
from specgen.documents.verifiers import ARCHITECT
from specgen.model.series import join_series
from specgen.model.value_text import words

# What the architect judges by eye, and neither a section nor a drawing tells.
_JUDGED = ("elevations.*.prominent", "elevations.*.critical_light")
_ELSE = "only where silent or contradictory"
# The specification and the drawings, as lists name them.
CONTRACT = "contract documents"


def reads_first(context: DocumentContext) -> bool:
    """Whether the specification and the drawings are still to be read for what they tell."""
    project = context.project
    submitted = project.value(("package", "purpose")) != "design_draft"
    there = submitted or bool(project.members.get(("contract", "spec_sections")))
    return context.is_marked and there and not project.members.get(("contract", "demands"))


def is_in_contract(context: DocumentContext, party: str, pattern: str) -> bool:
    """Whether a value that the architect gives is looked for in the contract first."""
    return party == ARCHITECT and pattern not in _JUDGED and reads_first(context)


def name_contract(context: DocumentContext) -> str:
    """`Section 07 24 00, the sections it refers to, and the drawings`: each section once."""
    project = context.project
    marks = project.members.get(("contract", "spec_sections"), ())
    given = (project.get(("contract", "spec_sections", mark, "number")) for mark in marks)
    numbers = [str(number) for number in dict.fromkeys(filter(None, given))]
    if len(numbers) > 1:
        return f"Sections {join_series(numbers)}, those they refer to, and the drawings"
    if numbers:
        return f"Section {numbers[0]}, the sections it refers to, and the drawings"
    return "the specification and the drawings"


def name_settler(context: DocumentContext) -> str:
    """Who settles what the architect gives: the contract documents first, where they are still to be read."""
    return f"{CONTRACT}, else architect," if reads_first(context) else ARCHITECT


def tell_order(context: DocumentContext) -> str:
    """`Contract documents: read Section 07 24 00 and the drawings first; ask ... only where silent`; else empty."""
    if not reads_first(context):
        return ""
    route = find_contractor(context)
    through = f" through {route}" if route else ""
    return (
        f"Contract documents: read {name_contract(context)} first, and cite paragraph or sheet; ask the architect"
        f"{through} by RFI {_ELSE}."
    )


def tell_head(context: DocumentContext, *, first: bool) -> str:
    """How the open items head what is read first: `Contract documents: Section 07 24 00 and the drawings; else ...`."""
    named = context.project.get(("parties", ARCHITECT, "name"))
    of = f", {named}," if named else ""
    told = f": {name_contract(context)}; {_ELSE}, the architect{of} by RFI"
    return f"{CONTRACT[:1].upper()}{CONTRACT[1:]}{told if first else ''}"


def name_giver(context: DocumentContext, party: str, pattern: str) -> str:
    """Who gives a value, within a sentence: `contract documents`; the party where these do not tell it."""
    return CONTRACT if is_in_contract(context, party, pattern) else words(party)


def tell_review(context: DocumentContext) -> str:
    """What the applicator reads before anybody is asked."""
    if not reads_first(context):
        return "Review of the specification: paragraphs met, and deviations"
    return (
        f"Review of {name_contract(context)}: paragraphs met, deviations, and each value below that they give, with "
        "paragraph or sheet"
    )
