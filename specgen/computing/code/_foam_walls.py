"""Foam plastic in exterior walls: where the code asks for a fire test of the wall, and why."""

from typing import NamedTuple

from specgen.computing.foam_plastic import FOAM, RESTRICTED
from specgen.model.absence import if_given, read_all
from specgen.model.source import Source
from specgen.model.typed_views import Wall, root_of
from specgen.model.working import Lookup
from specgen.standards import find_source

ASK = "ask the authority which fire class the wall needs"

_TYPE_V = find_source("ibc_foam_type_v").quote(
    "tests of exterior walls of types I to IV; type V complies with 2603.2 to 2603.4"
)
_IRC = find_source("irc_fire_memory").quote("no fire test of exterior walls")


class FireTest(NamedTuple):
    """A fire test of exterior walls: the name of its look-up, where it holds, what frees a wall, and its sources."""

    name: str
    where: str
    no_foam: str
    source: tuple[Source, ...]
    no_foam_source: tuple[Source, ...]


def look_up(wall: Wall, test: FireTest) -> Lookup:
    """Yes for a wall with foam plastic in a building of type I to IV; a code of other make asks nothing here."""
    code = root_of(wall).code
    model = code.model
    if model == "other":
        return Lookup(test.name, False, f"the local code is not evaluated: {ASK}", ())
    if model == "irc":
        return Lookup(test.name, False, "the International Residential Code requires none", (_IRC,))
    construction, board = if_given(lambda: code.construction_type), if_given(lambda: wall.insulation.kind)
    if construction is not None and construction not in RESTRICTED:
        return Lookup(test.name, False, f"construction type {construction} is not type I to IV", (_TYPE_V,))
    if board is not None and board not in FOAM:
        return Lookup(test.name, False, test.no_foam, test.no_foam_source)
    construction, board = read_all(lambda: code.construction_type, lambda: wall.insulation.kind)
    return Lookup(
        test.name, True, f"foam plastic in an exterior wall of type {construction}, {test.where}", test.source
    )
