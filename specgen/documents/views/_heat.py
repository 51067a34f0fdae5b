"""What the materials below the sprayed coats bear of heat until dry, and of sun until set, as their fields give it."""

from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue, take_stricter
from specgen.documents.heat_told import HeatedWork, list_works
from specgen.documents.views._materials import list_data_sheets
from specgen.weather.heat import MOST, SUN

SPRAYED = ("primer", "gloss")


class Heat(NamedTuple):
    """The heat that a material bears until it is dry, and the sun until it is set."""

    work: str  # `base coat`
    most: DisplayValue | None  # air and wall; None where it is not given
    sun: bool | None  # whether direct sun may reach it; None where it is not told
    instructions: str  # the marks of the papers that tell it


def list_heat(context: DocumentContext) -> list[Heat]:
    """One entry for each of these works that the project has, in their order; the strictest where walls differ."""
    return [_make(context, work) for work in list_works(context)]


def list_sprayed_heat(context: DocumentContext) -> list[Heat]:
    """Primer and gloss whose instructions give a maximum of air and wall; no sprayed coat stands in the sun."""
    figures = (
        (coat, context.display((coat, MOST))) for coat in SPRAYED if context.project.get((coat, MOST)) is not None
    )
    return [Heat(coat, most, False, "") for coat, most in figures]


def _make(context: DocumentContext, work: HeatedWork) -> Heat:
    figures = [context.display(path) for path in work.list_given(context, MOST)]
    allowed = [bool(context.project.get(path)) for path in work.list_given(context, SUN)]
    papers = list_data_sheets(context, work.covers).rpartition("; ")[2]
    most = take_stricter(False, *figures) if figures else None
    return Heat(work.name, most, all(allowed) if allowed else None, papers)
