"""Least time from barrier or glued board to finished gloss, and to the pull of the sealant on a mockup.

Every drying and curing time of a wall counts, one after the other; on a wall that the mockup shows, its panel that is
recoated too.
"""

from collections.abc import Iterator
from typing import NamedTuple

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
    "Drying and curing alone: working time, days off, weather, light, and releases take the other days.",
)
# The field holds the wait behind the last coat; between coats nobody has said less.
COATS_NOTE = "Each coat of the WRB is taken to dry as long as the last; its joint treatment is not counted."


class Wait(NamedTuple):
    """Hours that a wall dries or cures: where they stand, and how many times they are waited."""

    symbol: str
    title: str
    view: View
    name: str
    times: int = 1


def for_wall(wall: Wall, ask: Ask) -> Working:
    """The least days from barrier or board to gloss; a board that is not glued waits for no adhesive.

    On a wall of the mockup the panel that is recoated and the cure of the sealant before its pull are counted too.
    """
    waits = [*_waits_of_wall(wall), *_waits_of_coats(root_of(wall))]
    start = "WRB" if waits[0].symbol == "t_w" else "board"
    rows = [
        InputRow(one.symbol, one.title, float(getattr(one.view, one.name)), "h", dotted_field(one.view.path, one.name))
        for one in waits
    ]
    terms = " + ".join(one.symbol if one.times == 1 else f"{one.times} * {one.symbol}" for one in waits)
    more = _waits_of_mockup(wall) if is_on_mockup(wall) else {}
    working = WorkingBuilder([*rows, *(row for row in more.values() if row.symbol not in {r.symbol for r in rows})])
    working.step("t_b" if more else "t", f"drying time, {start} to gloss", terms, "h")
    if more:
        added = f"drying time, with {' and '.join(more)} on the mockup"
        working.step("t", added, " + ".join(["t_b", *map(_term, more.values())]), "h")
    working.step("d", "minimum drying time", "t / 24", "d")
    coated = any(one.symbol == "t_w" and one.times > 1 for one in waits)
    made = working.build("minimum-elapsed", "d", SOURCES, (*NOTES, *((COATS_NOTE,) if coated else ())))
    # Walls whose times hold different things are told apart in the table that compares them.
    counted = f"{start} to gloss" + (f", with {' and '.join(more)} on the mockup" if more else "")
    return made._replace(said=(("Counted", counted),))


def _term(row: InputRow) -> str:
    return f"24 * {row.symbol}" if row.unit == "d" else row.symbol


def _waits_of_wall(wall: Wall) -> Iterator[Wait]:
    if wall.project.get((*wall.path, "wrb", "kind")) == "fluid_applied":
        coats = wall.wrb.get("coats") or 1
        yield Wait("t_w", "WRB, each coat" if coats > 1 else "WRB", wall.wrb, "dry_hours", coats)
    # The schema knows which methods have a curing time; without a method nobody does.
    if wall.attachment.method and wall.project.applies((*wall.attachment.path, "cure_hours")):
        yield Wait("t_a", "adhesive cure", wall.attachment, "cure_hours")
    yield Wait("t_1", "base coat, first pass", wall.base_coat, "first_pass_dry_hours")
    heavy = [layer for layer in wall.mesh.layers if layer.kind == "high_impact"]
    for n, layer in enumerate(heavy, 1):
        symbol = f"t_m{n}" if len(heavy) > 1 else "t_m"
        yield Wait(symbol, "base coat over heavy mesh", layer, "dry_hours")
    yield Wait("t_2", "base coat cure", wall.base_coat, "cure_hours")


def _waits_of_coats(project: Description) -> Iterator[Wait]:
    """The hours of each coat, and those between coats of one kind."""
    if project.smoothing.coats:
        if project.smoothing.coats > 1:
            times = project.smoothing.coats - 1
            yield Wait("b_s", "between smoothing coats", project.smoothing, "between_hours", times)
        yield Wait("t_s", "smoothing", project.smoothing, "dry_hours")
    yield Wait("t_p", "primer", project.primer, "dry_hours")
    if project.gloss.coats > 1:
        yield Wait("b_g", "between gloss coats", project.gloss, "touch_dry_hours", project.gloss.coats - 1)
    yield Wait("t_g", "gloss", project.gloss, "dry_hours")


def is_on_mockup(wall: Wall) -> bool:
    """Whether the mockup shows the build-up of a wall; it shows all until the project names some."""
    named = root_of(wall).mockup.get("walls") or ()
    return not named or wall in named


def _waits_of_mockup(wall: Wall) -> dict[str, InputRow]:
    """What the mockup waits for besides, by what it shows: the panel that is recoated, the slowest sealant."""
    project = root_of(wall)
    shown, waits = project.mockup.get("includes") or (), dict[str, InputRow]()
    if "recoat_patch" in shown:
        dried = float(project.gloss.dry_hours)
        waits["the recoated panel"] = InputRow(
            "t_g", "gloss", dried, "h", dotted_field(project.gloss.path, "dry_hours")
        )
    if "sealant_joint" in shown and list(project.sealants):
        slowest = max(project.sealants, key=lambda sealant: sealant.pull_cure_days)
        path, days = dotted_field(slowest.path, "pull_cure_days"), float(slowest.pull_cure_days)
        row = InputRow("t_c", "sealant cure before pull", days, "d", path, limit="sealant.pull_cure")
        waits["sealant cure"] = row
    return waits


def compare_drying(wall: Wall, ask: Ask) -> Comparison | None:
    """The drying time against the time given to the mockup; none for a wall that the mockup does not show."""
    if not is_on_mockup(wall):
        return None
    return at_most(ask("minimum-elapsed").quantity, Quantity.of(root_of(wall).mockup.duration_days, "d"))


PROVIDER = Provider(
    name="minimum-elapsed",
    title="Minimum drying time",
    each=("walls",),
    compute=for_wall,
    reads=(
        "walls.*.wrb.kind",
        "walls.*.wrb.dry_hours",
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
    checks=(Check("drying time", "mockup duration", ("MOC-01b",), compare_drying, "mockup.duration_days"),),
    order=20,
)
