"""What the code table leaves to the architect: the existing building code, and walls without drainage."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext

_STANDING = ("existing_coated", "existing_brick")
EXISTING = "Existing building code: adopted or not, and whether it governs this work"
BARRIER = "Barrier wall without drainage accepted, in writing"


def list_open_answers(context: DocumentContext) -> Iterator[str]:
    """What the architect is to answer before the decision on the walls, with the marks of the walls."""
    if context.project.get(("code", "model")) != "other" and list_standing(context):
        yield EXISTING
    barriers = list_barriers(context)
    if barriers:
        yield f"{BARRIER} ({', '.join(barriers)})"


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
