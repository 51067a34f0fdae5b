"""Least time from glued board to finished gloss, and to the pull of the sealant on a mockup.

Every drying and curing time of a wall counts, one after the other.
"""

from collections.abc import Iterator

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
Wait = tuple[str, str, View, str, int]  # symbol, title, where the hours stand, and how many times they are waited


def for_wall(wall: Wall, ask: Ask) -> Working:
    """The least hours from board to gloss on a wall; a board that is not glued waits for no adhesive.

    Where the mockup shows a sealant joint, the cure of its sealant before the pull is counted too.
    """
    waits = [*_waits_of_wall(wall), *_waits_of_coats(root_of(wall))]
    rows = [
        InputRow(symbol, title, float(getattr(view, name)), "h", dotted_field(view.path, name))
        for symbol, title, view, name, _ in waits
    ]
    terms = [symbol if times == 1 else f"{times} * {symbol}" for symbol, *_, times in waits]
    cure = _sealant_row(root_of(wall))
    working = WorkingBuilder([*rows, *cure])
    working.step("t_b" if cure else "t", "minimum time, board to gloss", " + ".join(terms), "h")
    if cure:
        working.step("t", "minimum time, with sealant cure on the mockup", "t_b + 24 * t_c", "h")
    working.step("d", "minimum duration", "t / 24", "d")
    return working.build("minimum-elapsed", "t", SOURCES, NOTES, secondary_results=("d",))


def _waits_of_wall(wall: Wall) -> Iterator[Wait]:
    # The schema knows which methods have a curing time; without a method nobody does.
    if wall.attachment.method and wall.project.applies((*wall.attachment.path, "cure_hours")):
        yield "t_a", "adhesive cure", wall.attachment, "cure_hours", 1
    yield "t_1", "base coat, first pass", wall.base_coat, "first_pass_dry_hours", 1
    heavy = [layer for layer in wall.mesh.layers if layer.kind == "high_impact"]
    for n, layer in enumerate(heavy, 1):
        symbol = f"t_m{n}" if len(heavy) > 1 else "t_m"
        yield symbol, "base coat over heavy mesh", layer, "dry_hours", 1
    yield "t_2", "base coat cure", wall.base_coat, "cure_hours", 1


def _waits_of_coats(project: Description) -> Iterator[Wait]:
    """The hours of each coat, and those between coats of one kind."""
    if project.smoothing.coats:
        if project.smoothing.coats > 1:
            yield "b_s", "between smoothing coats", project.smoothing, "between_hours", project.smoothing.coats - 1
        yield "t_s", "smoothing", project.smoothing, "dry_hours", 1
    yield "t_p", "primer", project.primer, "dry_hours", 1
    if project.gloss.coats > 1:
        yield "b_g", "between gloss coats", project.gloss, "touch_dry_hours", project.gloss.coats - 1
    yield "t_g", "gloss", project.gloss, "dry_hours", 1


def _sealant_row(project: Description) -> tuple[InputRow, ...]:
    """The longest cure of a sealant before its pull, where the mockup shows a sealant joint."""
    if "sealant_joint" not in (project.mockup.get("includes") or ()) or not list(project.sealants):
        return ()
    slowest = max(project.sealants, key=lambda sealant: sealant.pull_cure_days)
    return (
        InputRow(
            "t_c",
            "sealant cure before pull",
            float(slowest.pull_cure_days),
            "d",
            dotted_field(slowest.path, "pull_cure_days"),
        ),
    )


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
    title="Minimum drying time",
    each=("walls",),
    compute=for_wall,
    reads=(
        "walls.*.attachment.method",
        "walls.*.base_coat.first_pass_dry_hours",
        "walls.*.base_coat.cure_hours",
        "walls.*.mesh.layers",
        "smoothing.coats",
        "smoothing.between_hours",
        "smoothing.dry_hours",
        "primer.dry_hours",
        "gloss.coats",
        "gloss.touch_dry_hours",
        "gloss.dry_hours",
    ),
    checks=(Check("drying time", "mockup duration", ("MOC-01b",), compare_drying),),
    order=20,
)
