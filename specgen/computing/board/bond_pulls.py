"""Pull tests that the old surface of a wall asks for: a set of them for each part of its area."""

from specgen.computing.declaration import UNITS
from specgen.computing.face_area import gross_area
from specgen.computing.inputs import Inputs, given_input, limit_input, provide
from specgen.computing.old_surface import is_old_surface
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.source import InForce
from specgen.model.typed_views import Wall, root_of
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

NOTES = ("Openings are not taken off. Each kind of surface has its own set of tests.",)


class PullInputs(Inputs):
    """The area of an old surface, and the area that a set of pull tests stands for."""

    area: Quantity = given_input(
        "A", "existing surface area", "area", origin="width by height of the wall's elevations", least=0
    )
    each: InForce = limit_input("substrate.pulls_area", "A_1", "area per test set", units=UNITS["area"])
    pulls: InForce = limit_input("substrate.pulls", "n", "tests per set", units=("", ""))


def bond_pulls(inputs: PullInputs) -> Working:
    """Least number of pull tests on the old surface, at least one set."""
    working = WorkingBuilder(inputs.rows())
    # An area that fills its sets but for the last bit of a float needs no further one.
    working.step("k", "test sets", "max(1, ceil(A / A_1 - 1e-9))", "")
    working.step("N", "pull tests", "n * k", "")
    return working.build("bond-pulls", "N", (inputs.limit_source("pulls"),), NOTES)


def for_wall(wall: Wall, ask: Ask) -> Working | None:
    """The tests of a wall of the project; none where its boards are not glued to an old surface."""
    if not is_old_surface(wall.substrate):
        return None
    area = Quantity.of(0, "m2")
    for elevation in root_of(wall).elevations:
        if elevation.wall == wall:
            area += Quantity.of(gross_area(elevation), "m2")
    return bond_pulls(PullInputs.from_project(wall, ask, area=area))


def compare_pulls(wall: Wall, ask: Ask) -> Comparison:
    """The tests asked for against the tests made."""
    return at_most(round(ask("bond-pulls").result), wall.substrate.bond_pulls)


PROVIDER = provide(
    "Pull tests, existing surface",
    PullInputs,
    bond_pulls,
    each=("walls",),
    by_keys=False,
    for_member=for_wall,
    reads=(
        "walls.*.substrate.kind",
        "walls.*.substrate.coating_removed",
        "elevations.*.wall",
        "elevations.*.width",
        "elevations.*.height",
    ),
    checks=(Check("pull tests required", "pull tests made", ("ATT-05h",), compare_pulls),),
    order=50,
)
