"""What the architect is left to answer: existing building code, indoor air, thermal barriers, and ratings."""

from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.foam_reports import list_unparted, list_unrated
from specgen.documents.standing_walls import list_solid, list_standing

_VAPOR = "INS-05"
EXISTING = "Existing building code: adopted or not, and whether it governs this work"


def list_open_answers(context: DocumentContext) -> Iterator[str]:
    """What the architect is to answer before the decision on the walls, with the marks of the walls."""
    if context.project.get(("code", "model")) != "other" and list_standing(context):
        yield EXISTING
    if context.project.get(("code", "jurisdiction")) is None and context.project.get(("code", "edition")) is not None:
        yield f"IBC edition adopted by the authority ({context.project.get(('code', 'edition'))} assumed)"
    if not context.project.members.get(("contract", "spec_sections")):
        yield "Specification section for this work: number, or none"
    if any(clause.rule == _VAPOR for clause in context.judgment.not_judged):
        yield "Indoor design temperature and relative humidity; winter vapor is computed for normal occupancy"
    least = context.limit("foam.thermal_barrier").text
    asked = {
        f"Thermal barrier: {least} gypsum board or equal between board and interior? yes/no": [
            *list_solid(context),
            *list_unparted(context),
        ],
        "Is the wall concrete or masonry designed to the code? yes/no": list_solid(context),
        "Fire-resistance rating of the wall: hours, or none": list_unrated(context),
    }
    yield from (f"{question} ({', '.join(walls)})" for question, walls in asked.items() if walls)
