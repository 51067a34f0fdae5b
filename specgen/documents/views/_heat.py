"""What the materials below the sprayed coats bear of heat until dry, and of sun until set, as their fields give it."""

from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue, take_stricter
from specgen.documents.views._materials import PENDING, list_data_sheets
from specgen.model.field import Path
from specgen.weather.heat import MOST, SUN, list_heat_paths


class Heat(NamedTuple):
    """The heat that a material bears until it is dry, and the sun until it is set."""

    work: str  # `base coat`
    most: DisplayValue | None  # air and wall; None where it is not given
    sun: bool | None  # whether direct sun may reach it; None where it is not told
    instructions: str  # the marks of the papers that tell it


# The work by the step at which its material goes on, and the word under which attachments cover it.
_WORKS = {"WRB": ("wrb", "wrb"), "boards": ("boards", "adhesive"), "base coat": ("mesh", "base_coat")}
SPRAYED = ("primer", "gloss")
_COAT = {"smoothing": ("smoothing_1", "smoothing")}


def list_heat(context: DocumentContext) -> list[Heat]:
    """One entry for each of these works that the project has, in their order; the strictest where walls differ."""
    project = context.project
    walls = project.members.get(("walls",), ())
    barrier = [wall for wall in walls if project.get(("walls", wall, "wrb", "kind")) not in (None, "none")]
    works = {work: told for work, told in (_WORKS | _COAT).items() if work != "WRB" or barrier}
    return [
        _make(context, work, step, barrier if work == "WRB" else list(walls), covers)
        for work, (step, covers) in works.items()
    ]


def list_uninstructed(context: DocumentContext) -> list[str]:
    """The materials of which neither a field nor a paper tells the heat or the sun, as attachments cover them."""
    covers = {work: covers for work, (_, covers) in (_WORKS | _COAT).items()}
    untold = (heat for heat in list_heat(context) if heat.most is None or heat.sun is None)
    return [covers[heat.work] for heat in untold if heat.instructions == PENDING]


def list_sprayed_heat(context: DocumentContext) -> list[Heat]:
    """Primer and gloss whose instructions give a maximum of air and wall; no sprayed coat stands in the sun."""
    figures = (
        (coat, context.display((coat, MOST))) for coat in SPRAYED if context.project.get((coat, MOST)) is not None
    )
    return [Heat(coat, most, False, "") for coat, most in figures]


def _make(context: DocumentContext, work: str, step: str, walls: list[str], covers: str) -> Heat:
    def given(name: str) -> list[Path]:
        return [path for path in list_heat_paths(step, walls, name) if context.project.get(path) is not None]

    figures = [context.display(path) for path in given(MOST)]
    allowed = [bool(context.project.get(path)) for path in given(SUN)]
    papers = list_data_sheets(context, covers).rpartition("; ")[2]
    return Heat(work, take_stricter(False, *figures) if figures else None, all(allowed) if allowed else None, papers)
