"""What a resolver finds of a layout: that of an elevation, all that are offered for it, and lengths of joints."""

from collections.abc import Callable
from fractions import Fraction
from itertools import pairwise
from typing import NoReturn

from specgen.laying_out.assembling import assemble
from specgen.laying_out.describing import describe, face_of, find_place
from specgen.laying_out.face import Face
from specgen.laying_out.proposing import propose
from specgen.laying_out.runs import find_runs, runs_around
from specgen.model.layout import ElevationLayout, Panel
from specgen.model.project import View
from specgen.model.typed_views import Description, Elevation, Joint
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Provider

_SIZE = ("elevations.*.width", "elevations.*.height", "elevations.*.openings")
_LINES = ("elevations.*.layout.mode", "joints")
_CUTS = ("joints.*.elevation", "joints.*.runs")


def lay_out(elevation: Elevation, ask: Ask) -> tuple[ElevationLayout, ...]:
    """The layouts of an elevation, the one in force first: by the lines given, or as proposed. Raises Absent."""
    return elevation.project.remember(("layouts", elevation.mark), lambda: _lay_out(elevation))


def _lay_out(elevation: Elevation) -> tuple[ElevationLayout, ...]:
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


def find_widest(project: Description, ask: Ask) -> Quantity:
    """The largest width of any panel of a project. Raises Absent."""
    return _largest(project, lambda panel: panel.width)


def find_highest(project: Description, ask: Ask) -> Quantity:
    """The largest height of any panel of a project. Raises Absent."""
    return _largest(project, lambda panel: panel.height)


def _largest(project: Description, size: Callable[[Panel], Fraction]) -> Quantity:
    panels = [panel for one in project.elevations for panel in lay_out(one, _ask_nothing)[0].panels]
    return _in_unit(project, max(map(size, panels), default=Fraction(0)))


def _ask_nothing(name: str) -> NoReturn:
    raise AssertionError(f"a layout asks for no other value: {name}")


def _place(joint: Joint, face: Face) -> int:
    return int((find_place(joint) or 0) * face.scale)


def _in_unit(view: View, meters: Fraction) -> Quantity:
    return Quantity(meters, "length", "m" if view.project.system == "si" else "ft")


_PROVIDERS = (
    Provider(name="layouts", title="Layouts", each=("elevations",), compute=lay_out, reads=(*_SIZE, *_LINES)),
    Provider(name="layout", title="Layout", each=("elevations",), compute=take_first, needs=("layouts",)),
    Provider(name="joint-run", title="Length of a joint", each=("joints",), compute=measure_joint, reads=_CUTS),
    Provider(name="moving-run", title="Moving length", each=("joints",), compute=measure_moving, reads=_CUTS),
    Provider(name="widest-panel", title="Widest panel", each=(), compute=find_widest),
    Provider(name="highest-panel", title="Highest panel", each=(), compute=find_highest),
)
PROVIDERS = {provider.name: provider for provider in _PROVIDERS}
