"""Sealant of a joint: the volume of its bead and what is lost while it is filled."""

from typing import Any

from specgen.computing.guards import refuse_negative, refuse_negative_percent, refuse_none_of
from specgen.computing.whole_containers import whole
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

WASTE = Source(Kind.MEMORY, "waste of 5 to 15 % is usual in the field")
SOURCES = (Source(Kind.COMPUTED, "volume of the bead; a US gallon is 231 cubic inches"), WASTE)
NOTES = ("The bead is taken as a full rectangle; tooling and the round of the rod take a little off it.",)


def sealant_quantity(
    length: Quantity,
    width: Quantity,
    depth: Quantity,
    waste: Any = 10,
    container: Quantity | None = None,
    system: str = "ip",
) -> Working:
    """Volume of sealant with waste, in gallons or liters, whole containers beside it; `waste` in percent.

    Raises Refused.
    """
    refuse_negative(length=length)
    refuse_none_of(width=width, depth=depth, container=container)
    refuse_negative_percent(waste=waste)
    ip = system == "ip"
    along, across, volume = ("ft", "in", "gal") if ip else ("m", "mm", "L")
    given = [
        Given("L", "length of joint", length.number(along), along),
        Given("W", "width of the bead", width.number(across), across),
        Given("D", "depth of the bead", depth.number(across), across),
        Given("x", "waste", float(waste), "%", source=WASTE if waste == 10 else None),
    ]
    if container is not None:
        given.append(Given("c", "container", container.number(volume), volume))
    made = Sum(tuple(given))
    made.step("Y", "joint filled without waste", "231 / (12 * W * D)" if ip else "1000 / (W * D)", f"{along}/{volume}")
    made.step("V_0", "volume of the bead", "L * 12 * W * D / 231" if ip else "L * W * D / 1000", volume)
    needed = made.step("V", "volume with waste", "V_0 * (1 + x / 100)", volume)
    said = () if container is None else (whole(made, "n", "containers", "V", "c"),)
    beside = ("Y",) if container is None else ("n", "Y")
    return Working("sealant-quantity", made.given, tuple(made.steps), needed, volume, SOURCES, said + NOTES, "", beside)


def for_joint(joint: View, ask: Ask) -> Working:
    """The sealant of a joint of the project, with the usual waste; it names no container."""
    system = joint.project.system
    return sealant_quantity(joint.length, joint.width, joint.depth, system=system)


PROVIDER = Provider(
    "sealant-quantity",
    "Quantity of sealant",
    ("joints",),
    for_joint,
    reads=("joints.*.length", "joints.*.width", "joints.*.depth"),
    direct=sealant_quantity,
    units=("gal", "L"),
    order=40,
    origins={"L": "joints.*.length", "W": "joints.*.width", "D": "joints.*.depth"},
    keys=(
        Key("length", "length", "length of joint"),
        Key("width", "length", "width of the bead"),
        Key("depth", "length", "depth of the bead"),
        Key("waste", "percent", "lost while filling", "10%"),
        Key("container", "volume", "what it is sold in, such as 20 fl oz", ""),
    ),
)
