"""Places to sign the calculations: who made and who checked them, and the seal of an engineer who checks them."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.verifiers import find_signing_day, is_checked_by_engineer
from specgen.model.block import Blank

AUTHOR, CHECKER = "calculated", "checked"
SIGNING = {AUTHOR: "Calculated by", CHECKER: "Checked by"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for the author and one for the checker; a blank where the name or the signature is not given."""
    sealed = is_checked_by_engineer(context.project)
    header: tuple[str, ...] = ("Role", "Name", "Signature", "Date", "Seal")
    widths: tuple[int, ...] = (14, 34, 22, 12, 18)
    lines = tuple((*_sign(context, role), _seal(context, role)) for role in SIGNING)
    if not sealed:
        header, widths, lines = header[:-1], (16, 36, 30, 18), tuple(line[:-1] for line in lines)
    return TableView(header, lines, widths)


def _sign(context: DocumentContext, role: str) -> tuple[Any, ...]:
    said, path = SIGNING[role], ("package", f"{role}_by")
    who = context.display(path) if context.project.is_given(path) else Blank(f"{said}, name")
    if find_signing_day(context.project, role):
        return said, who, "Signed", context.display(("package", f"{role}_on"))
    return said, who, Blank(f"{said}, signature"), Blank(f"{said}, date", "date")


def _seal(context: DocumentContext, role: str) -> Blank | str:
    if role != CHECKER:
        return ""
    return "Sealed" if find_signing_day(context.project, role) else Blank("Seal of the engineer")
