"""What of the work its mockup does not show: walls, joints, openings, and details by their marks."""

from specgen.documents.context import DocumentContext
from specgen.documents.marks import name_opening
from specgen.documents.mockup import list_built_joints, list_mockup_faces, list_mockup_walls


def name_not_shown(context: DocumentContext) -> str:
    """`Wall W2; joint J5; details PA1 and PN1` as a cell; empty where the mockup stands for all."""
    said = "; ".join(
        f"{noun}{'s' if len(marks) > 1 else ''} {', '.join(marks)}" for noun, marks in list_not_shown(context).items()
    )
    return f"{said[:1].upper()}{said[1:]}"


def list_not_shown(context: DocumentContext) -> dict[str, list[str]]:
    """The marks of what the mockup does not show, by what they are; no kind without any."""
    members = context.project.members
    faces = members.get(("elevations",), ())
    elsewhere = [face for face in faces if face not in list_mockup_faces(context)]
    opened = [
        name_opening(context, face, mark)
        for face in elsewhere
        for mark in members.get(("elevations", face, "openings"), ())
    ]
    shown = {*list_mockup_walls(context), *list_built_joints(context)}
    flashed = [joint for joint in members.get(("joints",), ()) if joint in shown and _is_flashed(context, joint)]
    missing = {
        "wall": [wall for wall in members.get(("walls",), ()) if wall not in shown],
        "joint": [joint for joint in members.get(("joints",), ()) if joint not in shown],
        "floor-line flashing": flashed,
        "opening": opened,
        "detail": list(members.get(("details",), ())),
    }
    return {noun: marks for noun, marks in missing.items() if marks}


def _is_flashed(context: DocumentContext, joint: str) -> bool:
    """Whether a joint runs over a floor line of a drained wall, and so has a flashing of its own."""
    project, at = context.project, ("joints", joint)
    elevation = project.get((*at, "elevation"))
    wall = elevation and project.get(("elevations", elevation.mark, "wall"))
    kind = wall and project.get(("walls", wall.mark, "drainage", "kind"))
    return project.get((*at, "kind")) == "floor_line" and kind not in (None, "none")
