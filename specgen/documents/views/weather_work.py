"""The work that a sheet of the weather record is of, and the instruments it is read by."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.form_units import UNITS
from specgen.documents.marks import list_marks
from specgen.documents.standing_walls import list_standing
from specgen.documents.views._record_blanks import make_blank, make_boxes
from specgen.documents.views.spray_head import SPRAYED
from specgen.model.block import Blank
from specgen.scheduling.applying import applies

# The work on which weather has limits, besides that on a wall that stands already.
_WORK = (
    *("wrb", "boards", "heavy_mesh", "mesh", "second_pass"),
    *("smoothing_1", "smoothing_2", "primer", "gloss", "sealant"),
)
_SEVERAL = 2
ON_STANDING = "washing and repair"
_INSTRUMENTS = ("air_thermometer", "surface_thermometer", "hygrometer", "wind_meter")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names."""
    kinds = {mark: context.project.get(("instruments", mark, "kind")) for mark in list_marks(context, "instruments")}
    marks = [mark for name in _INSTRUMENTS for mark, kind in kinds.items() if kind == name]
    line = (
        make_boxes(_list_work(context), "log.step", "c"),
        ", ".join(marks) if marks else Blank("Instruments", field="form.instruments.c"),
    )
    if not _hangs_cloth(context):
        return TableView(("Work", "Instruments"), (line,), (80, 20))
    return TableView(("Work", "Instruments", "Cloth"), ((*line, _follow_cloth(context)),), (64, 14, 22))


def _hangs_cloth(context: DocumentContext) -> bool:
    """Whether a face is shaded by cloth, which comes down ahead of gusts."""
    return any(context.project.get(("shade", mark, "kind")) == "shade_cloth" for mark in list_marks(context, "shade"))


def _follow_cloth(context: DocumentContext) -> list[Any]:
    """When the cloth was hung and taken off, the gusts that were forecast, and those at which it comes off."""
    unit = UNITS[context.first]["speed"]
    return [
        "hung ",
        make_blank("Cloth hung at", "form.cloth_hung", "c"),
        " off ",
        make_blank("Cloth taken off at", "form.cloth_off", "c"),
        f" gusts forecast, {unit} ",
        make_blank("Gusts forecast", "form.cloth_gusts", "c"),
        " comes off above, by its design ",
        make_blank("Gusts at which the cloth comes off", "form.cloth_limit", "c"),
    ]


def _takes(context: DocumentContext, step: str, wall: str) -> bool:
    """Whether a wall takes a step; another pass or coat where so many are known."""
    project = context.project
    if step == "second_pass" and int(project.get(("walls", wall, "base_coat", "passes")) or 0) < _SEVERAL:
        return False
    if step == "smoothing_2" and int(project.get(("smoothing", "coats")) or 0) < _SEVERAL:
        return False
    return applies(context.standards.steps[step].when, project, wall)


def _list_work(context: DocumentContext) -> Iterator[tuple[str, str]]:
    """The steps of the work that a wall of the project takes, each by the name it has in the other documents."""
    if list_standing(context):
        yield "substrate", ON_STANDING
    walls = list_marks(context, "walls")
    for name in _WORK:
        if not walls or any(_takes(context, name, wall) for wall in walls):
            title = context.standards.steps[name].title
            yield name, dict(SPRAYED).get(name) or title[:1].lower() + title[1:]
