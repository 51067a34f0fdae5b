"""Whether code asks for a fire propagation test of the wall, NFPA 285."""

from specgen.computing.code._foam_walls import FireTest, look_up
from specgen.model.typed_views import Wall
from specgen.model.working import Lookup
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source

TEST = FireTest(
    name="fire-propagation-due",
    where="whatever its height; one story is free only with metal-faced foam and sprinklers",
    no_foam="the board is no foam plastic; a combustible weather barrier may still owe the test: ask the building "
    "official",
    source=(
        find_source("ibc_foam_walls").quote(
            "NFPA 285 for foam plastic in exterior walls of types I to IV of any height, save one-story buildings with "
            "metal-faced foam and sprinklers by 2603.4.1.4"
        ),
    ),
    no_foam_source=(find_source("ibc_combustible_walls_memory").quote("NFPA 285 for combustible weather barriers"),),
)


def for_wall(wall: Wall, ask: Ask) -> Lookup:
    """Yes where the wall must be tested by NFPA 285."""
    return look_up(wall, TEST)


PROVIDER = Provider(
    name=TEST.name,
    title="Fire propagation test due",
    each=("walls",),
    compute=for_wall,
    reads=("code.model", "code.construction_type", "walls.*.insulation.kind"),
    order=30,
)
