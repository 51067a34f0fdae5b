"""Lines of the tables of materials: material, standard and description, manufacturer, product, data sheet."""

from typing import Any, NamedTuple

from specgen.documents.context import DocumentContext, TableView

HEADER = ("Material", "Standard and description", "Manufacturer", "Product", "Data sheet")
WIDTHS = (18, 36, 19, 16, 11)


class MaterialLine(NamedTuple):
    """A material of one place or of several, as the tables print it."""

    name: str
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
    rows = tuple((*line[:4], _data_sheets(context, line.covers)) for line in lines)
    return TableView(HEADER, rows, WIDTHS)


def party_name(context: DocumentContext, role: str) -> Any:
    """The name of a manufacturer that the project names as a party."""
    return context.display(("parties", role, "name"))


def _data_sheets(context: DocumentContext, covers: str) -> str:
    """The marks of the data sheets of a material."""
    project = context.project
    marks = [
        mark
        for mark in project.members.get(("attachments",), ())
        if project.get(("attachments", mark, "kind")) == "data_sheet"
        and covers in (project.get(("attachments", mark, "covers")) or ())
    ]
    return ", ".join(marks) or "pending"
