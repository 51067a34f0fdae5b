"""What the code table leaves to the architect: the existing building code, thermal barriers, and ratings."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.foam_reports import list_unparted, list_unrated

_STANDING = ("existing_coated", "existing_brick")
EXISTING = "Existing building code: adopted or not, and whether it governs this work"
BARRIER = "Acceptance of a barrier wall without drainage, in writing"


def list_open_answers(context: DocumentContext) -> Iterator[str]:
    """What the architect is to answer before the decision on the walls, with the marks of the walls."""
    if context.project.get(("code", "model")) != "other" and list_standing(context):
        yield EXISTING
    least = context.limit("foam.thermal_barrier").text
    asked = {
        f"Thermal barrier: {least} gypsum board or equal between board and interior? yes/no": list_unparted(context),
        "Fire-resistance rating of the wall: hours, or none": list_unrated(context),
    }
    yield from (f"{question} ({', '.join(walls)})" for question, walls in asked.items() if walls)


def list_standing(context: DocumentContext) -> list[str]:
    """The marks of the walls that stand already."""
    kind = ("substrate", "kind")
    return [mark for mark in _list_walls(context) if context.project.get(("walls", mark, *kind)) in _STANDING]


def list_barriers(context: DocumentContext) -> list[str]:
    """The marks of the walls that stand already and are told to get no drainage."""
    kind = ("drainage", "kind")
    return [mark for mark in list_standing(context) if context.project.get(("walls", mark, *kind)) == "none"]


def _list_walls(context: DocumentContext) -> tuple[str, ...]:
    return context.project.members[("walls",)]
