"""What the seal of an engineer on the calculations covers, and who answers for the rest."""

from specgen.documents.calculations import number_sheets
from specgen.documents.context import DocumentContext
from specgen.documents.members import span_marks
from specgen.documents.verifiers import APPLICATOR, is_checked_by_engineer
from specgen.model.series import join_series
from specgen.resolving.provider import GROUPS

# What a licensed engineer answers for; quantities, air, and time are the business of whoever does the work.
SEALED = ("heat", "joints", "board", "wind", "moisture")


def tell_seal(context: DocumentContext) -> str:
    """`The seal covers calculations 1 to 11, 22 to 24: heat, ...`; empty where no engineer checks them."""
    if not is_checked_by_engineer(context.project):
        return ""
    groups = {name: context.resolve.find(name).group for name in number_sheets(context)}
    numbers = [number for name, number in number_sheets(context).items() if groups[name] in SEALED]
    if not numbers:
        return ""
    covered = [GROUPS[group].lower() for group in SEALED if group in groups.values()]
    rest = context.project.get(("parties", APPLICATOR, "name")) or "the applicator"
    others = f"; {rest} answers for the others" if len(numbers) < len(groups) else ""
    counted = f"calculation{'s' * (len(numbers) > 1)} {span_marks(map(str, numbers))}"
    return f"The seal covers {counted}: {join_series(covered)}{others}."
