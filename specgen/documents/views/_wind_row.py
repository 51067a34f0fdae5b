"""What the code requires of wind on the walls, while the engineer still owes the load on what is adhered to them."""

from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.members import span_marks
from specgen.documents.required_documents import list_pending
from specgen.documents.system_reports import WIND_LOAD

# The chapter of the International Building Code on loads, to which that on exterior walls refers.
_CHAPTER = "Chapter 16"
_MET = (
    "suction held to the tested load over the safety factor; wind load calculation, signed, required from the engineer"
)


def rows(context: DocumentContext) -> list[tuple[Any, ...]]:
    """One row for the walls whose calculation is pending."""
    walls = dict.fromkeys(mark for entry in list_pending(context) if entry.name == WIND_LOAD for mark in entry.subjects)
    return [(f"Wind, {span_marks(walls)}", _CHAPTER, "yes", _MET)] if walls else []
