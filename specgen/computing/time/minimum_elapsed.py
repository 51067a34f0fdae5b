"""Least time from glued board to finished gloss: every drying and curing time of a wall, one after the other."""

from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.field import dotted_field
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Description, Wall, root_of
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Provider

SOURCES = (Source(Kind.COMPUTED, "drying and curing times of the steps, one after the other"),)
NOTES = (
    "Drying times as given, at the temperature and humidity their sources state; cold or damp weather extends them.",
    "Excludes working time and waiting for weather, light, and release.",
)


def for_wall(wall: Wall, ask: Ask) -> Working:
    """The least hours from board to gloss on a wall; a board that is not glued waits for no adhesive."""
    working = WorkingBuilder(_rows(wall))
    steps = " + ".join(row.symbol for row in working.inputs)
    working.step("t", "minimum time, board to gloss", steps, "h")
    working.step("d", "minimum duration", "t / 24", "d")
    return working.build("minimum-elapsed", "t", SOURCES, NOTES, secondary_results=("d",))


def _rows(wall: Wall) -> list[InputRow]:
    project = root_of(wall)
    waits: list[tuple[str, str, View, str]] = []
    # The schema knows which methods have a curing time; without a method nobody does.
    if wall.attachment.method and wall.project.applies((*wall.attachment.path, "cure_hours")):
        waits.append(("t_a", "adhesive cure", wall.attachment, "cure_hours"))
    waits.append(("t_1", "base coat, first pass", wall.base_coat, "first_pass_dry_hours"))
    heavy = [layer for layer in wall.mesh.layers if layer.kind == "high_impact"]
    waits += [
        (f"t_m{n}" if len(heavy) > 1 else "t_m", "base coat over heavy mesh", layer, "dry_hours")
        for n, layer in enumerate(heavy, 1)
    ]
    waits += [
        ("t_2", "base coat cure", wall.base_coat, "cure_hours"),
        *([("t_s", "smoothing", project.smoothing, "dry_hours")] if project.smoothing.coats else []),
        ("t_p", "primer", project.primer, "dry_hours"),
        ("t_g", "gloss", project.gloss, "dry_hours"),
    ]
    return [
        InputRow(symbol, title, float(getattr(view, name)), "h", dotted_field(view.path, name))
        for symbol, title, view, name in waits
    ]


def mockup_time(project: Description) -> Working:
    """The time that the mockup is given, in hours."""
    days = float(project.mockup.duration_days)
    working = WorkingBuilder((InputRow("D", "mockup duration", days, "d", "mockup.duration_days"),))
    working.step("t_c", "time given to the mockup", "24 * D", "h")
    return working.build("mockup-time", "t_c", SOURCES)


def compare_drying(wall: Wall, ask: Ask) -> Comparison:
    """The drying time against the time given to the mockup."""
    project = root_of(wall)
    given = Quantity.of(project.mockup.duration_days, "d")
    return at_most(ask("minimum-elapsed").quantity, given, capacity=mockup_time(project))


PROVIDER = Provider(
    name="minimum-elapsed",
    title="Minimum drying time, board to gloss",
    each=("walls",),
    compute=for_wall,
    reads=(
        "walls.*.attachment.method",
        "walls.*.base_coat.first_pass_dry_hours",
        "walls.*.base_coat.cure_hours",
        "walls.*.mesh.layers",
        "smoothing.coats",
        "smoothing.dry_hours",
        "primer.dry_hours",
        "gloss.dry_hours",
    ),
    checks=(Check("drying time", "mockup duration", ("MOC-01b",), compare_drying),),
    order=20,
)
