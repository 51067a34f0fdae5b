"""Bond that the wind asks of an old surface: its pull on the board, times the factor of safety."""

from fractions import Fraction

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.old_surface import is_old_surface
from specgen.computing.wind.wall_wind import WindInputs, for_elevation
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Wall, root_of
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

SOURCES = (Source(Kind.COMPUTED, "pull of the wind at allowable level, times the factor of safety"),)
NOTES = (
    "The whole face is taken as glued; ribbons or dabs load the surface harder, by the share of it they leave bare.",
)


class BondInputs(Inputs):
    """The pull of the wind on a wall, and the factor of safety of its attachment."""

    pull: Quantity = given_input(
        "p_o",
        "governing outward pressure, wall elevations",
        "pressure",
        origin="wind pressure on the wall, computed for each elevation",
        units=("psf", "kPa"),
        least=0,
    )
    factor: Fraction = given_input("S", "safety factor", "number", "walls.*.attachment.safety_factor")


def bond_demand(inputs: BondInputs) -> Working:
    """Bond that an old surface must show, in psi or kPa."""
    ip = inputs.system == "ip"
    working = WorkingBuilder(inputs.rows())
    working.step("b", "required bond", "p_o * S / 144" if ip else "p_o * S", "psi" if ip else "kPa")
    return working.build("bond-demand", "b", SOURCES, NOTES)


def for_wall(wall: Wall, ask: Ask) -> Working | None:
    """The bond asked of a wall of the project; none where its boards are not glued to an old surface."""
    if not is_old_surface(wall.substrate):
        return None
    pulls = [for_elevation(elevation, ask).quantity for elevation in root_of(wall).elevations if elevation.wall == wall]
    if not pulls:
        return None
    return bond_demand(BondInputs.from_project(wall, ask, pull=max(pull * -1 for pull in pulls)))


def compare_bond(wall: Wall, ask: Ask) -> Comparison:
    """The bond asked for against the bond that the pull tests found."""
    return at_most(ask("bond-demand").quantity, wall.substrate.bond_result)


PROVIDER = provide(
    "Required bond, existing surface",
    BondInputs,
    bond_demand,
    each=("walls",),
    by_keys=False,
    for_member=for_wall,
    reads=(
        "walls.*.substrate.kind",
        "walls.*.substrate.coating_removed",
        "elevations",
        *WindInputs.reads(),
        "code.wind_standard",
    ),
    checks=(Check("required bond", "bond found by test", ("ATT-05g",), compare_bond),),
    order=15,
)
