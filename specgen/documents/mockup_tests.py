"""The tests of a mockup that stand in its order of work: water at the opening, test beads of the sealant."""

from specgen.documents.context import DocumentContext
from specgen.documents.mockup import list_built_joints, list_mockup_faces
from specgen.recording.acceptance_lines import list_lines

# The lines of the acceptance form, as they are told.
_WATER = {"water_sill": "sill pan", "water_head": "head flashing"}
BEADED = {"opening_perimeter", "penetration", "dissimilar_material"}  # the kinds of joints that want a test bead
_PANNED = {"window", "door"}


def name_water_tests(context: DocumentContext) -> str:
    """`Water tests of sill pan and head flashing, Form D10`: those that the form holds; empty for none."""
    lines = {line.row.name for line in list_lines(context.project, context.standards) if line.row and line.parts}
    tested = [name for line, name in _WATER.items() if line in lines]
    return f"Water test{'s'[: len(tested) - 1]} of {' and '.join(tested)}, Form D10" if tested else ""


def is_pan_open(context: DocumentContext) -> bool:
    """Whether it is not decided yet if a window or door that the mockup shows has a sill pan."""
    project = context.project
    openings = [
        ("elevations", face, "openings", mark)
        for face in list_mockup_faces(context)
        for mark in project.members.get(("elevations", face, "openings"), ())
    ]
    return any(project.get((*one, "kind")) in _PANNED and project.get((*one, "sill_pan")) is None for one in openings)


def has_beads(context: DocumentContext) -> bool:
    """Whether a joint that the mockup shows wants a test bead before it is sealed."""
    return any(context.project.get(("joints", mark, "kind")) in BEADED for mark in list_built_joints(context))
