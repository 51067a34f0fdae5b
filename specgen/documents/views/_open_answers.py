"""What the code table leaves to the architect: the existing building code, thermal barriers, and ratings."""

from collections.abc import Iterator

from specgen.computing.substrates import MASONRY
from specgen.documents.context import DocumentContext
from specgen.documents.foam_reports import list_unparted, list_unrated

_STANDING = ("existing_coated", "existing_brick")
EXISTING = "Existing building code: adopted or not, and whether it governs this work"
BARRIER = "Acceptance of a barrier wall without drainage, in writing"


def list_open_answers(context: DocumentContext) -> Iterator[str]:
    """What the architect is to answer before the decision on the walls, with the marks of the walls."""
    if context.project.get(("code", "model")) != "other" and list_standing(context):
        yield EXISTING
    if context.project.get(("code", "jurisdiction")) is None and context.project.get(("code", "edition")) is not None:
        yield f"Code that the authority adopted: IBC {context.project.get(('code', 'edition'))}? yes/no"
    if not context.project.members.get(("contract", "spec_sections")):
        yield "Specification section for this work: number, or none"
    least = context.limit("foam.thermal_barrier").text
    asked = {
        f"Thermal barrier: {least} gypsum board or equal between board and interior? yes/no": list_unparted(context),
        "Is the wall concrete or masonry designed to the code? yes/no": list_solid(context),
        "Fire-resistance rating of the wall: hours, or none": list_unrated(context),
    }
    yield from (f"{question} ({', '.join(walls)})" for question, walls in asked.items() if walls)


def list_bare(context: DocumentContext) -> list[str]:
    """The marks of the walls that are told to get no water-resistive barrier, which the IBC asks of all but masonry."""
    project = context.project
    if project.get(("code", "model")) != "ibc":
        return []
    return [mark for mark in _list_walls(context) if project.get(("walls", mark, "wrb", "kind")) == "none"]


def list_solid(context: DocumentContext) -> list[str]:
    """Those of them that are of concrete or masonry as far as the project tells."""
    return [mark for mark in list_bare(context) if _is_solid(context, mark)]


def _is_solid(context: DocumentContext, mark: str) -> bool:
    kind, base = (context.project.get(("walls", mark, "substrate", name)) for name in ("kind", "base"))
    return kind in MASONRY or (kind == "existing_coated" and base in ("concrete", "masonry"))


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
