"""The length of the sealant joints on an elevation, which a crew seals by the foot."""

from fractions import Fraction
from functools import partial

from specgen.model.absence import read_all
from specgen.model.typed_views import Elevation, Joint, root_of
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask


def find_joint_length(elevation: Elevation, ask: Ask) -> Quantity:
    """The sealant joints of an elevation together, each as given, else as the elevation has it. Raises Absent."""
    joints = root_of(elevation).joints.find_referring("elevation", elevation.mark)
    lengths = read_all(*(partial(find_run, joint, ask) for joint in joints))
    return Quantity(sum((length.amount for length in lengths), Fraction(0)), "length", "ft")


def find_run(joint: Joint, ask: Ask) -> Quantity:
    """The length of a joint as given, else as the elevation has it. Raises Absent."""
    given: Quantity | None = joint.get("length")
    if given is not None:
        return given
    run: Quantity = ask("joint-run", joint.path)
    return run
