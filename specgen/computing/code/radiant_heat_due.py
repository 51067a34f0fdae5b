"""Whether code asks for a radiant heat test of the wall, NFPA 268."""

from specgen.computing.code._foam_walls import FireTest, look_up
from specgen.model.typed_views import Wall
from specgen.model.working import Lookup
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source

_IGNITION = find_source("ibc_ignition")

TEST = FireTest(
    name="radiant-heat-due",
    where="regardless of fire separation; a thin base coat is not an exempt covering",
    no_foam="the board is not foam plastic; combustible coats may still require the test: ask the authority having "
    "jurisdiction",
    source=(
        find_source("ibc_foam_ignition_memory").quote(
            "NFPA 268 for foam plastic in exterior walls of types I to IV, except behind a thermal barrier, concrete, "
            "masonry, metal, or stucco"
        ),
        _IGNITION,
    ),
    no_foam_source=(_IGNITION,),
)


def for_wall(wall: Wall, ask: Ask) -> Lookup:
    """Yes where the wall must be tested by NFPA 268."""
    return look_up(wall, TEST)


PROVIDER = Provider(
    name=TEST.name,
    title="Radiant heat test required",
    each=("walls",),
    compute=for_wall,
    reads=("code.model", "code.construction_type", "walls.*.insulation.kind"),
    order=40,
)
