"""Lines of the tables of materials: material, standard and description, manufacturer, product, data sheet."""

from typing import Any, NamedTuple

from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks

HEADER = ("Material", "Standard and description", "Manufacturer", "Product", "Data sheet; instructions")
WIDTHS = (14, 36, 21, 15, 14)


class MaterialLine(NamedTuple):
    """A material of one place or of several, as the tables print it."""

    name: Any
    description: list[Any]
    manufacturer: Any
    product: Any
    covers: str  # the word under which attachments cover it

    @property
    def text(self) -> str:
        """All that it says, to tell whether two walls have the same."""
        parts = (self.name, *self.description, self.manufacturer, self.product)
        return "\n".join(str(part) for part in parts)


def set_materials(context: DocumentContext, lines: list[MaterialLine]) -> TableView:
    """The table of these materials, each with the marks of its data sheets."""
    rows = tuple((*line[:4], list_data_sheets(context, line.covers)) for line in lines)
    return TableView(HEADER, rows, WIDTHS)


def party_name(context: DocumentContext, role: str) -> Any:
    """The name of a manufacturer that the project names as a party."""
    return context.display(("parties", role, "name"))


def list_data_sheets(context: DocumentContext, covers: str) -> str:
    """The marks of the data sheets of a material, and behind them those of its instructions: `A2; A12`."""
    found: dict[str, list[str]] = {"data_sheet": [], "instructions": []}
    for mark in list_marks(context, "attachments"):
        kind, covered = (context.project.get(("attachments", mark, name)) for name in ("kind", "covers"))
        if kind in found and covers in (covered or ()):
            found[kind].append(mark)
    sheets, instructions = (", ".join(marks) for marks in found.values())
    return "; ".join(filter(None, (sheets or "pending", instructions)))
