"""The section of the adopted code under which a special inspector looks at the walls."""

from collections.abc import Mapping
from typing import Any

from specgen.computing.code.special_inspection_due import COATING
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.model.absence import Absent
from specgen.model.source import Source
from specgen.model.working import Lookup

# The first edition with a paragraph on barrier coatings.
_COATINGS_SINCE = "2009"


def find_section(context: DocumentContext, edition: Mapping[str, Any], found: Lookup) -> tuple[str, Source]:
    """Number and source of the section that an answer rests on: that on barrier coatings where these alone are due."""
    number, source = edition["inspection_section"], edition["inspection_source"]
    if found.source == (COATING,) and str(context.project.get(("code", "edition"))) >= _COATINGS_SINCE:
        return f"{number}.1", COATING if source.is_verified else source
    return number, source


def name_inspection_section(context: DocumentContext) -> DisplayValue | None:
    """The section of the adopted code on the special inspection of EIFS; None where none is due."""
    try:
        found: Lookup = context.resolve((), "special-inspection-due")
    except Absent:
        return None
    edition = context.standards.editions.get(str(context.project.get(("code", "edition"))), {})
    if not found.result or not edition.get("inspection_section"):
        return None
    number, source = find_section(context, edition, found)
    return DisplayValue(number, number, source, about="Section, inspection")
