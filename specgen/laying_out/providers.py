"""What a resolver finds of a layout: that of an elevation, all that are offered for it, and lengths of joints."""

from fractions import Fraction
from itertools import pairwise

from specgen.laying_out.assembling import assemble
from specgen.laying_out.describing import describe, face_of, find_place
from specgen.laying_out.face import Face
from specgen.laying_out.proposing import propose
from specgen.laying_out.runs import find_runs, runs_around
from specgen.model.layout import ElevationLayout
from specgen.model.typed_views import Elevation, Joint
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Provider

_SIZE = ("elevations.*.width", "elevations.*.height", "elevations.*.openings")
_LINES = ("elevations.*.layout.mode", "joints")
_CUTS = ("joints.*.elevation", "joints.*.runs")


def lay_out(elevation: Elevation, ask: Ask) -> tuple[ElevationLayout, ...]:
    """The layouts of an elevation, the one in force first: by the lines given, or as proposed. Raises Absent."""
    if elevation.layout.mode == "request":
        return propose(elevation)
    described = describe(elevation)
    return (assemble(described.face, described.upright, described.level, described.wishes),)


def take_first(elevation: Elevation, ask: Ask) -> ElevationLayout:
    """The layout in force of an elevation."""
    first: ElevationLayout = ask("layouts")[0]
    return first


def measure_joint(joint: Joint, ask: Ask) -> Quantity:
    """The length of a joint on its elevation: all its runs. Raises Absent."""
    face = face_of(joint.elevation)
    around = next((one for one in face.around if one.mark == joint.mark), None)
    at = _place(joint, face)
    runs = runs_around(face, around) if around else find_runs(face, joint.runs == "vertical", at)
    return _in_unit(joint, face.meters(sum(run.length for run in runs)))


def measure_moving(joint: Joint, ask: Ask) -> Quantity:
    """The longest stretch of wall that moves into a joint: to the next joint or end, or the side of an opening."""
    face = face_of(joint.elevation)
    around = next((one for one in face.around if one.mark == joint.mark), None)
    if around:
        served = [one for one in face.openings if one.mark in around.openings]
        sides = [side for one in served for side in (one.right - one.left, one.high - one.low)]
    else:
        upright, at = joint.runs == "vertical", _place(joint, face)
        joints, end = (face.upright, face.width) if upright else (face.level, face.height)
        cuts = sorted({0, end, *(one.at for one in joints)})
        sides = [right - left for left, right in pairwise(cuts) if at in (left, right)]
    return _in_unit(joint, face.meters(max(sides, default=0)))


def _place(joint: Joint, face: Face) -> int:
    return int((find_place(joint) or 0) * face.scale)


def _in_unit(joint: Joint, meters: Fraction) -> Quantity:
    return Quantity(meters, "length", "m" if joint.project.system == "si" else "ft")


PROVIDERS = {
    provider.name: provider
    for provider in (
        Provider(
            name="layouts",
            title="Layouts",
            each=("elevations",),
            compute=lay_out,
            reads=(*_SIZE, *_LINES),
            printed=False,
        ),
        Provider(
            name="layout", title="Layout", each=("elevations",), compute=take_first, needs=("layouts",), printed=False
        ),
        Provider(
            name="joint-run",
            title="Length of a joint",
            each=("joints",),
            compute=measure_joint,
            reads=_CUTS,
            printed=False,
        ),
        Provider(
            name="moving-run",
            title="Moving length",
            each=("joints",),
            compute=measure_moving,
            reads=_CUTS,
            printed=False,
        ),
    )
}
