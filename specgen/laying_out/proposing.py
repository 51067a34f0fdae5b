"""Lines proposed for an elevation."""

from specgen.laying_out.assembling import assemble
from specgen.laying_out.describing import describe
from specgen.model.layout import ElevationLayout
from specgen.model.typed_views import Elevation


def propose(elevation: Elevation) -> tuple[ElevationLayout, ...]:
    """The layouts offered for an elevation, the better first. Raises Absent."""
    described = describe(elevation)
    return (assemble(described.face, (), (), described.wishes, "through"),)
