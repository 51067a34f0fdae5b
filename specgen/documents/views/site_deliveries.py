"""By when what is not ordered by color must be on site: the working day before its first use, on mockup and wall."""

import datetime
from collections.abc import Iterator
from fractions import Fraction

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.schedule import find_schedule
from specgen.documents.submission import find_worked_before
from specgen.model.typed_views import root_of
from specgen.model.value_text import long_date
from specgen.scheduling.waits import find_sealant_cure

# What the first of some steps takes, and the accessories for want of which nobody brings it.
_TAKEN: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "Sheathing joint treatment": (("wrb",), ("sheathing_joint_treatment",)),
    "Water-resistive barrier": (("wrb",), ()),
    "Flashing membrane and its primer": (("wrb", "flashings"), ("flashing_membrane",)),
    "Pans, flashings, and collars": (("flashings",), ()),
    "Starters": (("boards",), ("starter",)),
    "Boards and adhesive": (("boards",), ()),
    "Base coat": (("heavy_mesh", "mesh"), ()),
    "Masking tape and film": (("heavy_mesh", "mesh"), ()),
    "Smoothing coat": (("smoothing_1", "smoothing_2"), ()),
    "Metal caps": (("metal_caps",), ()),
    "Backer rod": (("sealant",), ()),
}
_MESH, _SEALANT = "Mesh", "Sealant"
_UNDATED = "–"
Starts = dict[str, datetime.date]
Use = tuple[str, datetime.date, str]  # the material, the day of its first use, and what that is


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each first use of materials that the schedule works with, in the order of need.

    None without a schedule.
    """
    planned = context.project.get(("mockup", "planned_on"))
    mockup = long_date(find_worked_before(context, planned)) if planned else _UNDATED
    taken: dict[tuple[datetime.date, str], list[str]] = {}
    for material, day, use in sorted(_list_uses(context, _find_starts(context)), key=lambda one: one[1]):
        taken.setdefault((day, use), []).append(material)
    lines = tuple(
        (_join(materials), mockup, long_date(find_worked_before(context, day)), f"{use}, {day:%B} {day.day}")
        for (day, use), materials in taken.items()
    )
    return TableView(("On site by", "Mockup", "Wall", "First use on the wall"), lines, (42, 13, 13, 32))


def _join(materials: list[str]) -> str:
    """Materials in one cell: `Starters; boards and adhesive`."""
    first, *others = materials
    return "; ".join([first, *(f"{one[:1].lower()}{one[1:]}" for one in others)])


def _list_uses(context: DocumentContext, starts: Starts) -> Iterator[Use]:
    project = context.project
    listed = {project.get(("accessories", one, "kind")) for one in project.members.get(("accessories",), ())}
    for material, (steps, kinds) in _TAKEN.items():
        if not kinds or listed & set(kinds):
            yield from _find_first(context, starts, material, steps)
    wrapped = any(project.get(("walls", wall, "mesh", "back_wrap")) for wall in project.members.get(("walls",), ()))
    if wrapped and "boards" in starts:
        yield _MESH, starts["boards"], "back-wrapping at insulation boards"
    else:
        yield from _find_first(context, starts, _MESH, ("heavy_mesh", "mesh"))
    yield from _find_sealant(context, starts)


def _find_first(context: DocumentContext, starts: Starts, material: str, steps: tuple[str, ...]) -> Iterator[Use]:
    """The first of some steps that take a material; none where the schedule has none of them."""
    for day, step in sorted((starts[step], step) for step in steps if step in starts)[:1]:
        title = context.standards.steps[step].title
        yield material, day, f"{title[:1].lower()}{title[1:]}"


def _find_sealant(context: DocumentContext, starts: Starts) -> Iterator[Use]:
    """Sealant goes into laps of flashings and pans; else first into test beads, cured before the joints are sealed."""
    if "flashings" in starts:
        yield _SEALANT, starts["flashings"], "laps of flashings and pans, then test beads"
    elif "sealant" in starts:
        cure = find_sealant_cure(root_of(context.project.view(())), context.standards).length
        days = -(-Fraction(cure // datetime.timedelta(hours=1)) // 24)
        yield _SEALANT, starts["sealant"] - datetime.timedelta(days=int(days)), "test beads"


def _find_starts(context: DocumentContext) -> Starts:
    """The first day of work of each step on any elevation."""
    schedule = find_schedule(context)
    starts: Starts = {}
    for one in schedule.activities if schedule else ():  # in the order of their start
        if one.kind == "work" and one.elevation:
            starts.setdefault(one.step, one.start.date())
    return starts
