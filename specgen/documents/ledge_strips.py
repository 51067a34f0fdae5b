"""What a ledge on the face leaves of the panels it crosses: strips below and above it, narrower than the panel."""

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures.water_places import Place, list_places
from specgen.model.layout import Panel


class LedgeCut(NamedTuple):
    """A ledge in a panel, and how high the strips are that it leaves there, in meters; none at its edge or end."""

    mark: str
    across: bool  # whether it takes the whole width of the panel
    below: Fraction
    above: Fraction

    @property
    def narrowest(self) -> Fraction:
        """The lower of the strips that are left; none is left where it takes the panel whole."""
        return min((strip for strip in (self.below, self.above) if strip), default=Fraction(0))


def list_ledge_cuts(context: DocumentContext, face: str, panel: Panel) -> tuple[LedgeCut, ...]:
    """The ledges of an elevation that lie in a panel, from the left."""
    return tuple(_find_cuts([one for one in list_places(context.project, face) if one.stops_grooves], panel))


def is_cut_narrow(context: DocumentContext, face: str, panel: Panel) -> bool:
    """Whether a ledge leaves a strip of a panel that is lower than the minimum side."""
    least = context.project.get(("panel_limits", "least_side"))
    cuts = list_ledge_cuts(context, face, panel) if least is not None else ()
    return any(cut.across and 0 < cut.narrowest < least.to("m") for cut in cuts)


def _find_cuts(ledges: list[Place], panel: Panel) -> Iterator[LedgeCut]:
    right, top = panel.x + panel.width, panel.y + panel.height
    for one in sorted(ledges):
        if one.left < right and one.right > panel.x and one.bottom < top and one.top > panel.y:
            across = one.left <= panel.x and one.right >= right
            strips = (one.bottom - panel.y, top - one.top) if across else (Fraction(0), Fraction(0))
            yield LedgeCut(one.mark, across, *(max(strip, Fraction(0)) for strip in strips))
