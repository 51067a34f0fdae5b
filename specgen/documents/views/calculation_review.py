"""Places to sign the calculations: who made and who checked them, and the seal of an engineer who checks them."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.verifiers import is_checked_by_engineer
from specgen.model.block import Blank

SIGNING = {"calculated_by": "Calculated by", "checked_by": "Checked by"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for the author and one for the checker; a blank where the name is not given."""
    sealed = is_checked_by_engineer(context.project)
    header: tuple[str, ...] = ("Role", "Name", "Signature", "Date", "Seal")
    widths: tuple[int, ...] = (14, 34, 22, 12, 18)
    lines = tuple((*_sign(context, name), _seal(name)) for name in SIGNING)
    if not sealed:
        header, widths, lines = header[:-1], (16, 36, 30, 18), tuple(line[:-1] for line in lines)
    return TableView(header, lines, widths)


def _sign(context: DocumentContext, name: str) -> tuple[Any, ...]:
    said, path = SIGNING[name], ("package", name)
    who = context.display(path) if context.project.is_given(path) else Blank(f"{said}, name")
    return said, who, Blank(f"{said}, signature"), Blank(f"{said}, date", "date")


def _seal(name: str) -> Blank | str:
    return Blank("Seal of the engineer") if name == "checked_by" else ""
