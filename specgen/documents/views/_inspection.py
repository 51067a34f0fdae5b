"""The section of the adopted code under which a special inspector looks at the walls."""

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.model.absence import Absent


def name_inspection_section(context: DocumentContext) -> DisplayValue | None:
    """The section of the adopted code on the special inspection of EIFS; None where none is due."""
    try:
        due = context.resolve((), "special-inspection-due").result
    except Absent:
        return None
    edition = context.standards.editions.get(str(context.project.get(("code", "edition"))), {})
    number = edition.get("inspection_section")
    if not due or not number:
        return None
    return DisplayValue(number, number, edition["inspection_source"], about="Section, inspection")
