"""The length of the flashings or of the metal caps on an elevation, which a crew sets by the foot."""

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from math import hypot

from specgen.model.absence import read_all
from specgen.model.typed_views import Elevation, WaterDetail, root_of
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask
from specgen.scheduling.joint_length import find_run

BY_LENGTH = ("flashings", "metal_caps")  # steps
_FINEST = 10**7  # parts of a meter, so that a slope by floating point is that of its figures


def find_metal_length(elevation: Elevation, step: str, ask: Ask) -> Quantity:
    """The caps of the parapets; or pans and heads of openings, flashings of floor lines, and those along a roof below.

    Raises Absent.
    """
    lengths = _list_caps(elevation) if step == "metal_caps" else _list_flashings(elevation, ask)
    return Quantity(sum(lengths, Fraction(0)), "length", "ft")


def _list_caps(elevation: Elevation) -> Iterator[Fraction]:
    """Each parapet by its own width, else along the whole elevation."""
    for detail in _list_details(elevation, "parapet"):
        width: Quantity = detail.get("width") or elevation.width
        yield Fraction(width.amount)


def _list_flashings(elevation: Elevation, ask: Ask) -> Iterator[Fraction]:
    for opening in elevation.openings:
        for name in ("sill_pan", "head_flashing"):
            if opening.get(name):
                yield Fraction(opening.width.amount)
    project = root_of(elevation)
    joints = project.joints.find_referring("elevation", elevation.mark) if project.joints.is_given() else ()
    floors = [joint for joint in joints if joint.get("kind") == "floor_line"]
    for run in read_all(*(partial(find_run, joint, ask) for joint in floors)):
        yield Fraction(run.amount)
    for detail in _list_details(elevation, "roof_below"):
        across, up = detail.get("width"), detail.get("height")
        if across is not None:
            slope = hypot(across.amount, 0 if up is None else up.amount)
            yield Fraction(slope).limit_denominator(_FINEST)


def _list_details(elevation: Elevation, kind: str) -> list[WaterDetail]:
    details = root_of(elevation).details
    on = details.find_referring("elevation", elevation.mark) if details.is_given() else ()
    return [detail for detail in on if detail.get("kind") == kind]
