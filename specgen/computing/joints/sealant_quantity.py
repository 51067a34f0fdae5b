"""Sealant of a joint: the volume of its bead and what is lost while it is filled."""

from fractions import Fraction

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.whole_containers import count_containers
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Joint, root_of
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

WASTE = Source(Kind.MEMORY, "waste of 5 to 15 % is usual in the field")
SOURCES = (Source(Kind.COMPUTED, "volume of the bead; a US gallon is 231 cubic inches"), WASTE)
NOTES = ("Bead cross section: full rectangle; tooling and the curve of the rod reduce it slightly.",)


class SealantInputs(Inputs):
    """A joint and its bead; waste in percent."""

    length: Quantity = given_input("L", "joint length", "distance", "joints.*.length", least=0, measured="joint-run")
    width: Quantity = given_input("W", "bead width", "length", "joints.*.width", above=0)
    depth: Quantity = given_input("D", "bead depth", "length", "joints.*.depth", above=0)
    waste: Fraction | int = given_input(  # method's own: the middle of what is usual in the field, no kept reserve
        "x", "waste", "percent", default=10, source=WASTE, about="lost while filling", least=0, span=("0", "100")
    )
    container: Quantity | None = given_input(
        "c",
        "container",
        "volume",
        default=None,
        about="what it is sold in, such as 20 fl oz",
        above=0,
        span=("1 fl oz", "300 gal"),
    )


def sealant_quantity(inputs: SealantInputs) -> Working:
    """Volume of sealant with waste, in gallons or liters, whole containers beside it. Raises Refused."""
    ip = inputs.system == "ip"
    along, volume = ("ft", "gal") if ip else ("m", "L")
    working = WorkingBuilder(inputs.rows())
    filled = "231 / (12 * W * D)" if ip else "1000 / (W * D)"
    working.step("Y", "yield without waste", filled, f"{along}/{volume}")
    working.step("V_0", "bead volume", "L * 12 * W * D / 231" if ip else "L * W * D / 1000", volume)
    working.step("V", "volume with waste", "V_0 * (1 + x / 100)", volume)
    if inputs.container is None:
        return working.build("sealant-quantity", "V", SOURCES, NOTES, secondary_results=("Y",))
    count = count_containers(working, "n", "containers", "V", "c")
    return working.build("sealant-quantity", "V", SOURCES, (count, *NOTES), secondary_results=("n", "Y"))


def for_joint(joint: Joint, ask: Ask) -> Working:
    """The sealant of a joint; the beads around penetrations are no joints and have no size."""
    working = sealant_quantity(SealantInputs.from_project(joint, ask))
    project = root_of(joint)
    served = {mark for one in project.joints for mark in one.get("serves") or ()}
    beads = [d.mark for d in project.details if d.get("kind") == "penetration" and d.mark not in served]
    note = f"The bead at {', '.join(beads)} is taken from the waste." if beads else ""
    apart = "Excludes the mockup." if project.mockup.get("kind") == "free_standing" else ""
    return working._replace(notes=(*working.notes, *(told for told in (note, apart) if told)))


PROVIDER = provide(
    "Sealant quantity",
    SealantInputs,
    sealant_quantity,
    each=("joints",),
    for_member=for_joint,
    columns=("Y", "V_0", "V"),
    adds=True,
    order=40,
    example="length=400ft width=3/4in depth=3/8in",
)
