"""What the architect is left to answer: existing building code, indoor air, thermal barriers, and ratings."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.foam_reports import SECTIONS, list_unparted, list_unrated
from specgen.documents.standing_walls import list_solid, list_standing

EDITION = "IBC edition adopted by the authority"
_VAPOR, _SECTIONS = "INS-05", "SUB-07"
SPEC_SECTIONS = "Specification section for this work: number, or none"
EXISTING = "Existing building code: adopted or not, and whether it governs this work"


def assumes_edition(context: DocumentContext) -> bool:
    """Whether the edition of the code is not given, and no authority is named whose adoption tells it."""
    project = context.project
    known = ("code", "edition") in project.values or project.get(("code", "edition")) is None
    return not known and project.get(("code", "jurisdiction")) is None


def list_open_answers(context: DocumentContext) -> Iterator[tuple[str, tuple[str, ...]]]:
    """What the architect is to answer before the decision on the walls, with their marks, and what it holds up."""
    model, edition = (context.project.get(("code", name)) for name in ("model", "edition"))
    if model != "other" and list_standing(context):
        yield EXISTING, ()
    if assumes_edition(context):
        yield f"{EDITION} ({edition} assumed)", ()
    if not context.project.members.get(("contract", "spec_sections")):
        yield SPEC_SECTIONS, (_SECTIONS,)
    if any(clause.rule == _VAPOR for clause in context.judgment.not_judged):
        yield "Indoor design temperature and relative humidity in winter, %", (_VAPOR,)
    least = context.limit("foam.thermal_barrier").text
    barrier = (f"COD, {SECTIONS[str(model)][1]}",) if model in SECTIONS else ()
    asked = (
        ("Thermal barrier: does the existing wall cover the whole board? yes/no", barrier, list_solid(context)),
        (
            f"Thermal barrier: {least} gypsum board or equal between board and interior? yes/no",
            barrier,
            list_unparted(context),
        ),
        ("Is the wall concrete or masonry designed to the code? yes/no", (), list_solid(context)),
        ("Fire-resistance rating of the wall: hours, or none", ("COD, 2603.5.1",), list_unrated(context)),
    )
    yield from ((f"{question} ({', '.join(walls)})", held) for question, held, walls in asked if walls)
