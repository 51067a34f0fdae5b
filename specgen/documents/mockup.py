"""What of the project its mockup shows: the walls it copies, their elevations, and the part that is finished."""

from datetime import date
from fractions import Fraction
from typing import Any

from specgen.computing.calendars import find_work_days
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.layouts import list_layouts
from specgen.documents.submission import find_worked_before
from specgen.model.absence import Absent
from specgen.model.dates import days_after
from specgen.model.layout import AESTHETIC, ElevationLayout, Panel
from specgen.model.typed_views import root_of
from specgen.model.value_text import long_date, words
from specgen.quantities.quantity import Quantity
from specgen.recording.acceptance_lines import list_shown_walls

# Board is adhered to these once they have an age.
_CAST_OR_LAID = {"concrete", "concrete_masonry"}
_HALF = Fraction(1, 2)


def list_mockup_walls(context: DocumentContext) -> tuple[str, ...]:
    """The marks of the walls whose build-up the mockup shows; all of them until the project names some."""
    return list_shown_walls(context.project)


def list_mockup_faces(context: DocumentContext) -> tuple[str, ...]:
    """The marks of the elevations of those walls; one whose wall is not known is among them."""
    return context.remember(_find_faces)


def _find_faces(context: DocumentContext) -> tuple[str, ...]:
    walls = {None, *list_mockup_walls(context)}
    faces = context.project.members.get(("elevations",), ())
    return tuple(face for face in faces if _wall_of(context, face) in walls)


def list_built_faces(context: DocumentContext) -> tuple[str, ...]:
    """The marks of the elevations on which a mockup in place is built, by its facing; of any other, all it copies."""
    project, faces = context.project, list_mockup_faces(context)
    facing = project.get(("mockup", "facing"))
    if project.get(("mockup", "kind")) != "in_place" or facing is None:
        return faces
    return tuple(face for face in faces if project.get(("elevations", face, "facing")) == facing) or faces


def list_built_joints(context: DocumentContext) -> tuple[str, ...]:
    """The marks of the joints that the mockup can show: those on no elevation but its own.

    A mockup apart from the work has the joint of its opening alone, where the work seals its openings.
    """
    project, own = context.project, {*list_built_faces(context)}
    elsewhere = {*project.members.get(("elevations",), ())} - own
    joints = project.members.get(("joints",), ())
    built = tuple(joint for joint in joints if str(project.get(("joints", joint, "elevation"))) not in elsewhere)
    if project.get(("mockup", "kind")) == "in_place" or "opening" not in (project.get(("mockup", "includes")) or ()):
        return built
    return tuple(joint for joint in built if project.get(("joints", joint, "runs")) == "around_opening") or built


def _wall_of(context: DocumentContext, face: str) -> str | None:
    wall = context.project.get(("elevations", face, "wall"))
    return None if wall is None else str(wall)


def name_base(context: DocumentContext) -> str:
    """What must stand before the mockup begins."""
    return "Frame and substrate" if context.project.get(("mockup", "kind")) == "free_standing" else "Substrate"


def tell_base_age(context: DocumentContext) -> list[Any]:
    """`; concrete or masonry by then a minimum of 28 days old`; nothing where the mockup is of neither."""
    kinds = {context.project.get(("walls", mark, "substrate", "kind")) for mark in list_mockup_walls(context)}
    if kinds.isdisjoint(_CAST_OR_LAID):
        return []
    return ["; concrete or masonry by then a minimum of ", context.limit("substrate.age"), " old"]


def find_start(context: DocumentContext) -> date | None:
    """The first day of the mockup: the planned one, or the working day on which all that it waits for is there.

    None where no start is planned.
    """
    planned: date | None = context.project.get(("mockup", "planned_on"))
    ready = find_day_behind(context, "M") if planned else None
    if planned is None or ready is None or ready <= planned:
        return planned
    return find_work_days(root_of(context.project.root())).find_day(ready)


def find_day_behind(context: DocumentContext, *symbols: str) -> date | None:
    """The date that lies as many days behind the submission as the earliest start says; None where it is open."""
    try:
        working = context.resolve((), "earliest-start")
    except Absent:
        return None
    days = {row.symbol: row.value for row in working.inputs} | {step.symbol: step.value for step in working.steps}
    submitted = context.project.value(("schedule", "submit_on"))
    return days_after(submitted, round(sum(days.get(symbol, 0) for symbol in symbols)))


def find_ready_day(context: DocumentContext) -> date | None:
    """The last working day before the planned start of the mockup, by which its base is complete."""
    start = find_start(context)
    return None if start is None else find_worked_before(context, start)


def tell_ready_day(context: DocumentContext) -> str:
    """`by April 9, 2027, the last working day before Day 1`; `before Day 1` where no start is planned."""
    ready = find_ready_day(context)
    return f"by {long_date(ready)}, the last working day before Day 1" if ready else "before Day 1"


def list_mesh_zones(context: DocumentContext) -> dict[tuple[str, ...], list[str]]:
    """The zones of mesh that the mockup shows, by their kinds, each with the walls that have just these.

    Detail mesh lines edges and joints, and is no zone.
    """
    project, walls = context.project, list_mockup_walls(context)
    of_kinds: dict[tuple[str, ...], list[str]] = {}
    for wall in walls:
        layers = ("walls", wall, "mesh", "layers")
        kinds = (project.get((*layers, mark, "kind")) for mark in project.members.get(layers, ()))
        said = (words(str(kind)) for kind in kinds if kind not in (None, "detail"))
        of_kinds.setdefault(tuple(dict.fromkeys(said)), []).append(wall)
    return {kinds: marks for kinds, marks in of_kinds.items() if kinds}


def list_fluid_walls(context: DocumentContext) -> tuple[str, ...]:
    """The marks of the walls that the mockup shows with a barrier that is applied fluid, and so dries."""
    walls = list_mockup_walls(context)
    return tuple(wall for wall in walls if context.project.get(("walls", wall, "wrb", "kind")) == "fluid_applied")


def is_drained(context: DocumentContext) -> bool:
    """Whether a wall that the mockup shows drains."""
    kinds = (context.project.get(("walls", wall, "drainage", "kind")) for wall in list_mockup_walls(context))
    return any(kind not in (None, "none") for kind in kinds)


def has_starter(context: DocumentContext) -> bool:
    """Whether the project sets a starter at its lower edges."""
    listed = context.project.members.get(("accessories",), ())
    return any(context.project.get(("accessories", number, "kind")) == "starter" for number in listed)


def size_finished(context: DocumentContext) -> tuple[Quantity, Quantity] | None:
    """Width and height of the part that gets every coat, half beside a stepped build-up; None where not given."""
    width, height = (context.project.get(("mockup", name)) for name in ("width", "height"))
    if width is None or height is None:
        return None
    stepped = "build_up_steps" in (context.project.get(("mockup", "includes")) or ())
    return (width * _HALF if stepped else width), height


def find_full_panel(context: DocumentContext) -> Panel | None:
    """The largest whole panel of the faces shown, where their lines are given."""
    faces = [
        face
        for face in list_mockup_faces(context)
        if context.project.get(("elevations", face, "layout", "mode")) == "given"
    ]
    found = list_layouts(context) if faces else {}
    whole = [panel for face in faces for one in found.get(face, ()) for panel in one.panels if panel.is_rectangle]
    return max(whole, key=lambda panel: panel.net_area, default=None)


def find_corner_side(context: DocumentContext) -> str:
    """The end of the mockup that turns its corner, `left` or `right`: as on the face that looks as the mockup does."""
    project, faces = context.project, list_mockup_faces(context)
    facing = project.get(("mockup", "facing"))
    for face in sorted(faces, key=lambda face: project.get(("elevations", face, "facing")) != facing):
        for side in ("left", "right"):
            if project.get(("elevations", face, f"{side}_end")) == "outside_corner":
                return side
    return "left"


def has_lines_at_corners(context: DocumentContext) -> bool:
    """Whether aesthetic joints end on the corners of an opening that the mockup copies."""
    found = list_layouts(context)
    for face in list_mockup_faces(context):
        for layout in found.get(face, ())[:1]:
            runs = [run for run in layout.joints if run.kind == AESTHETIC]
            ends = {end for run in runs for end in ((run.x1, run.y1), (run.x2, run.y2))}
            corners = {(x + w * a, y + h * b) for _, x, y, w, h in layout.openings for a in (0, 1) for b in (0, 1)}
            if ends & corners:
                return True
    return False


def has_mesh_edge_on_line(context: DocumentContext) -> bool:
    """Whether each edge of a mesh zone within the faces shown lies on a level joint, so that none shows in a panel."""
    found = list_layouts(context)
    edges = [
        (face, edge)
        for face in list_mockup_faces(context)
        for edge in _list_mesh_edges(context, face)
        if 0 < edge < context.project.value(("elevations", face, "height")).amount
    ]
    return bool(edges) and all(
        any(edge in _list_levels(layout) for layout in found.get(face, ())[:1]) for face, edge in edges
    )


def _list_mesh_edges(context: DocumentContext, face: str) -> set[Fraction]:
    """The heights of the edges of mesh zones, above the lower edge of a face; none where its size is not given."""
    project, at = context.project, ("elevations", face)
    base, zones = project.get((*at, "base_above_grade")), (*at, "impact_zones")
    if base is None or project.get((*at, "height")) is None:
        return set()
    edges = (project.get((*zones, mark, name)) for mark in project.members.get(zones, ()) for name in ("from", "to"))
    return {edge.amount - base.amount for edge in edges if edge is not None}


def _list_levels(layout: ElevationLayout) -> set[Fraction]:
    """Where level joints run, aesthetic ones and movement joints."""
    return {*layout.horizontal_lines, *(run.y1 for run in layout.joints if run.y1 == run.y2 and run.x1 != run.x2)}


def tell_length(context: DocumentContext, length: Quantity) -> DisplayValue:
    """A length of the mockup as the field of its width prints."""
    return DisplayValue(context.text(length, context.project.schema.node(("mockup", "width")).field), length)
