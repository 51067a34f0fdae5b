"""Whether code asks for a fire propagation test of the wall, NFPA 285."""

from specgen.computing.code._foam_walls import FireTest, look_up
from specgen.model.absence import if_given
from specgen.model.typed_views import Wall, root_of
from specgen.model.working import Lookup
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source

TEST = FireTest(
    name="fire-propagation-due",
    where="regardless of height",
    no_foam="the board is not foam plastic; a combustible water-resistive barrier may still require the test: ask the "
    "authority having jurisdiction",
    source=(
        find_source("ibc_foam_walls").quote(
            "NFPA 285 for foam plastic in exterior walls of types I to IV of any height, except one-story buildings "
            "with metal-faced foam and sprinklers by 2603.4.1.4"
        ),
    ),
    no_foam_source=(
        find_source("ibc_combustible_walls_memory").quote("NFPA 285 for combustible water-resistive barriers"),
    ),
)


def for_wall(wall: Wall, ask: Ask) -> Lookup:
    """Yes where the wall must be tested by NFPA 285; of a one-story building it says what would free it."""
    found = look_up(wall, TEST)
    if found.result and if_given(lambda: root_of(wall).building.stories) == 1:
        return found._replace(why=f"{found.why}; one story is exempt only with metal-faced foam and sprinklers")
    return found


PROVIDER = Provider(
    name=TEST.name,
    title="Fire propagation test required",
    each=("walls",),
    compute=for_wall,
    reads=("code.model", "code.construction_type", "walls.*.insulation.kind"),
    order=30,
)
