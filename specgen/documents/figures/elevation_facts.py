"""What the project says of an elevation beside its layout: names, heights, mesh zones, joints, scaffold ties."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from specgen.documents.figures.dimension_text import write_length
from specgen.documents.figures.water_places import Place, list_places, tell_details
from specgen.model.absence import Absent
from specgen.model.layout import Point
from specgen.model.outline import read_point
from specgen.model.problem import Refused
from specgen.model.project import Project, View
from specgen.model.value_text import compass, count, long_date, value_text, words
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Resolver

# The mesh that the trade puts into a zone goes by the class of its impact; a class is what the drawing tells.
_MESH = "impact class"


class Zone(NamedTuple):
    """A band of the wall that takes a mesh of its own; meters above the lower edge of the elevation."""

    mark: str
    lower: Fraction
    upper: Fraction
    text: str


class Level(NamedTuple):
    """A height that is marked beside the wall; meters above its lower edge."""

    mark: str
    height: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class ElevationFacts:
    """An elevation as its title block, margins and remarks tell it."""

    mark: str
    project: str
    name: str = ""
    facing: str = ""
    bearing: float | None = None  # degrees from north, clockwise
    wall: str = ""
    color: str = ""
    revision: str = "0"
    date: str = ""
    system: str = "ip"
    base: Fraction | None = None  # meters above grade
    day_area: Fraction | None = None  # square meters that are sprayed in a day
    zones: tuple[Zone, ...] = ()
    floors: tuple[Level, ...] = ()
    details: tuple[Place, ...] = ()  # water details whose places are given
    ties: tuple[Point, ...] = ()  # of scaffolds, where their places are given
    open_sills: frozenset[str] = frozenset()  # openings below which the joint around them is left open
    remarks: tuple[str, ...] = ()

    def length(self, meters: Fraction) -> str:
        """A length as the drawing writes it."""
        return write_length(meters, self.system)


def read_facts(project: Project, mark: str, day_area: Quantity | None = None) -> ElevationFacts:
    """What the project gives for an elevation, and the area of a day; what is absent is left out of the drawing."""
    face = project.view(("elevations", mark))
    facing, base = face.get("facing"), _meters(face.get("base_above_grade"))
    date = project.get(("package", "date"))
    return ElevationFacts(
        mark=mark,
        project=str(project.get(("project", "name")) or ""),
        name=str(face.get("name") or ""),
        facing=_tell_facing(facing),
        bearing=facing.number("deg") if facing is not None else None,
        wall=_mark_of(face.get("wall")),
        color=_mark_of(face.get("color")),
        revision=str(project.get(("package", "revision")) or 0),
        date=long_date(date) if isinstance(date, datetime.date) else "",
        system=project.system,
        base=base,
        day_area=None if day_area is None else day_area.to("m2"),
        zones=tuple(_read_zones(face, base or Fraction(0), project.system)),
        floors=tuple(_read_floors(face)),
        details=tuple(list_places(project, mark)),
        ties=tuple(_read_ties(project, mark)),
        open_sills=find_open_sills(project, mark),
        remarks=(
            *_tell_joints(project, mark),
            *_tell_ends(face),
            *_tell_landings(project, mark),
            *tell_details(project, mark),
            *_tell_ties(project, mark),
        ),
    )


def find_day_area(resolve: Resolver, mark: str) -> Quantity | None:
    """The area of an elevation that is sprayed in a day; None where it cannot be worked out."""
    try:
        area: Quantity = resolve(("elevations", mark), "day-area").quantity
    except (Absent, Refused):
        return None
    return area


def _meters(length: Quantity | None) -> Fraction | None:
    return None if length is None else length.to("m")


def _mark_of(member: View | None) -> str:
    return "" if member is None else member.mark


def _tell_facing(facing: Quantity | None) -> str:
    """`south`, `217° from north`; empty where it is absent."""
    if facing is None:
        return ""
    return compass(facing.text) if facing.text.isalpha() else f"{value_text(facing, None, both=False)} from north"


def _read_zones(face: View, base: Fraction, system: str) -> Iterator[Zone]:
    """The mesh zones whose edges are known; the project counts them from grade."""
    path = (*face.path, "impact_zones")
    for number, mark in enumerate(face.project.members.get(path, ()), 1):
        lower, upper, grade = (face.project.get((*path, mark, name)) for name in ("from", "to", "class"))
        if lower is None or upper is None:
            continue
        low, high = lower.to("m"), upper.to("m")
        start, end = max(low - base, Fraction(0)), high - base
        span = f"{write_length(start, system)} to {write_length(end, system)} above datum"
        grades = f" ({write_length(high, system)} above grade)" if base else ""
        kind = f"{_MESH} {words(grade)}, " if grade else ""
        yield Zone(f"Z{number}", start, end, f"Z{number}: {kind}{span}{grades}")


def _read_floors(face: View) -> Iterator[Level]:
    path = (*face.path, "floor_lines")
    for mark in face.project.members.get(path, ()):
        height = face.project.get((*path, mark, "height"))
        if height is not None:
            yield Level(mark, height.to("m"))


def _tell_joints(project: Project, face: str) -> Iterator[str]:
    """The movement joints of the elevation: `J2: floor line, 1 in wide`."""
    for mark in _list_referring(project, "joints", face):
        at = project.get(("joints", mark, "elevation"))
        if at is None or at.mark != face:
            continue
        kind, width = (project.get(("joints", mark, name)) for name in ("kind", "width"))
        told = [_tell_kind(project, mark, face, kind)] if kind else []
        told += [f"{_small(width, project.system)} wide"] if width is not None else []
        if told:
            yield f"{mark}: {', '.join(told)}"


def _tell_kind(project: Project, mark: str, face: str, kind: str) -> str:
    """The kind of a joint; of one around openings the sides it has, where it is open below each of them."""
    served = {str(one) for one in project.get(("joints", mark, "serves")) or ()}
    around = project.get(("joints", mark, "runs")) == "around_opening"
    if around and served and served <= find_open_sills(project, face):
        return "heads and jambs, open below"
    return words(kind)


def find_open_sills(project: Project, face: str) -> frozenset[str]:
    """The openings whose joint ends at the foot of the jambs: those above a sill pan, and doors down to the base."""
    at = ("elevations", face, "openings")

    def is_open(mark: str) -> bool:
        kind, y = project.get((*at, mark, "kind")), project.get((*at, mark, "y"))
        return project.get((*at, mark, "sill_pan")) is True or (kind == "door" and y is not None and not y.amount)

    return frozenset(mark for mark in project.members.get(at, ()) if is_open(mark))


def _tell_landings(project: Project, face: str) -> Iterator[str]:
    """The landing of each door that has one: `DR1: landing: steel grating`."""
    at = ("elevations", face, "openings")
    for mark in project.members.get(at, ()):
        landing = project.get((*at, mark, "landing"))
        if landing:
            yield f"{mark}: landing: {landing}"


def _tell_ends(face: View) -> Iterator[str]:
    """What each end meets: `Left end: outside corner with E2; right end: EIFS ends, edge wrapped`."""
    told: list[str] = []
    for side in ("left", "right"):
        kind, other = face.get(f"{side}_end"), face.get(f"{side}_meets")
        if kind:
            met = f" with {other.mark}" if other is not None else ""
            told.append(f"{side if told else side.capitalize()} end: {_ENDS[kind]}{met}")
    if told:
        yield "; ".join(told)


_ENDS = {
    "outside_corner": "outside corner",
    "inside_corner": "inside corner",
    "other_material": "joint to other material",
    "end": "EIFS ends, edge wrapped",
}


def _list_referring(project: Project, collection: str, face: str) -> tuple[str, ...]:
    """The members that stand on an elevation, or do not say on which; each collection is gone through once."""
    return project.find_referring((collection,), "elevation", face) if (collection,) in project.members else ()


def _small(width: Quantity, system: str) -> str:
    """A width in inches or millimeters."""
    return value_text(width, None, system, both=False)


def _list_standing(project: Project, face: str) -> Iterator[str]:
    """The means of access that stand at an elevation."""
    for mark in _list_referring(project, "access", face):
        at = project.get(("access", mark, "elevation"))
        if at is not None and at.mark == face:
            yield mark


def _read_ties(project: Project, face: str) -> Iterator[Point]:
    for mark in _list_standing(project, face):
        yield from (read_point(n, text) for n, text in enumerate(project.get(("access", mark, "ties")) or ()))


def _tell_ties(project: Project, face: str) -> Iterator[str]:
    """Where the scaffolds of the elevation may be tied: `X1: frame scaffold, any tie in an opening, tie plan A31`."""
    for mark in _list_standing(project, face):
        kind, ties, plan, points, design = (
            project.get(("access", mark, name))
            for name in ("kind", "tie_location", "tie_plan", "ties", "sheeted_design")
        )
        base = project.get(("access", mark, "base")) if ties == "none" and not points else None
        if ties is not None or points:
            where = _count_ties(points, ties) if points else _TIED[ties]
            stands = f"base {write_length(base.to('m'), project.system)}" if base is not None else ""
            plans = (stands, plan and f"tie plan {plan.mark}", design and f"design {design.mark}")
            yield ", ".join(filter(None, (f"{mark}: {words(kind or 'access')}", where, *plans)))


def _count_ties(points: tuple[str, ...], location: str | None) -> str:
    """`2 ties at movement joints, as drawn`."""
    return f"{count(len(points), 'tie')}{_DRAWN.get(location or '', '')}, as drawn"


_DRAWN = {
    "movement_joint": " at movement joints",
    "opening": " in openings",
    "field_of_wall": " in the field of the wall",
}
_TIED = {
    "movement_joint": "any tie at a movement joint",
    "opening": "any tie in an opening, none in the face",
    "field_of_wall": "tied in the field of the wall",
    "none": "without ties",
}
