"""Elevations that meet, unfolded to one face above a common datum, so that one set of level lines serves them all."""

from typing import NamedTuple

from specgen.laying_out.describing import Described
from specgen.laying_out.face import Edge, Face, Movement
from specgen.laying_out.scoring import Wishes
from specgen.model.typed_views import Elevation, root_of

# The mark of what cuts an unfolded face at a corner.
CORNER = "corner"


class Part(NamedTuple):
    """An elevation of an unfolded face, and where its lower left corner lies on it."""

    described: Described
    left: int
    low: int


class Unfolded(NamedTuple):
    """Several elevations as one face."""

    parts: tuple[Part, ...]
    face: Face
    wishes: Wishes


def find_group(elevation: Elevation) -> list[Elevation]:
    """The elevations of which lines are requested and that meet one another, from the left to the right."""
    first, seen = elevation, {elevation.mark}
    while (before := _neighbor(first, "left_meets")) is not None and before.mark not in seen:
        first = before
        seen.add(before.mark)
    if before is not None and len(seen) > 1:
        # Round a whole building: the one that stands first in the file begins.
        marks = elevation.project.members[("elevations",)]
        first = root_of(elevation).elevations[min(seen, key=marks.index)]
    group = [first]
    while (behind := _neighbor(group[-1], "right_meets")) is not None and behind not in group:
        group.append(behind)
    return group


def _neighbor(elevation: Elevation, side: str) -> Elevation | None:
    """The elevation met at a side, where its lines are requested too and it meets this one with its other side."""
    other: Elevation | None = elevation.get(side)
    if other is None or other.mark == elevation.mark or other.layout.get("mode") != "request":
        return None
    back: Elevation | None = other.get("right_meets" if side == "left_meets" else "left_meets")
    return other if back is not None and back.mark == elevation.mark else None


def given_neighbors(group: list[Elevation]) -> list[Elevation]:
    """The elevations that a group meets whose lines are given."""
    met = [one.get(side) for one in group for side in ("left_meets", "right_meets")]
    return list(dict.fromkeys(one for one in met if one is not None and one.layout.get("mode") == "given"))


def unfold(described: list[Described]) -> Unfolded:
    """Elevations beside each other, each at its height above the lowest."""
    datum = min(one.base for one in described)
    parts, left = [], 0
    for one in described:
        parts.append(Part(one, left, one.base - datum))
        left += one.face.width
    if len(parts) == 1:
        return Unfolded(tuple(parts), described[0].face, described[0].wishes)
    height = max(part.low + part.described.face.height for part in parts)
    wishes = [part.described.wishes for part in parts]
    return Unfolded(
        tuple(parts),
        _join_faces(parts, left, height),
        Wishes(
            tuple((at + part.left, n) for part in parts for at, n in part.described.wishes.upright),
            _add_up([(at + part.low, n) for part in parts for at, n in part.described.wishes.level]),
            min((one.width for one in wishes if one.width is not None), default=None),
            min((one.height for one in wishes if one.height is not None), default=None),
        ),
    )


def _add_up(places: list[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    return tuple((at, sum(n for other, n in places if other == at)) for at in sorted({at for at, _ in places}))


def _join_faces(parts: list[Part], width: int, height: int) -> Face:
    faces = [part.described.face for part in parts]
    corners = [Movement(CORNER, CORNER, part.left) for part in parts[1:]]
    uprights = [joint._replace(at=joint.at + part.left) for part in parts for joint in part.described.face.upright]
    levels = {part.low + joint.at for part in parts for joint in part.described.face.level}
    whole = all(part.low == 0 for part in parts) and all(f.height == height and f.is_rectangle for f in faces)
    return Face(
        mark=faces[0].mark,
        scale=faces[0].scale,
        width=width,
        height=height,
        openings=tuple(
            one._replace(
                left=one.left + part.left, right=one.right + part.left, low=one.low + part.low, high=one.high + part.low
            )
            for part in parts
            for one in part.described.face.openings
        ),
        limits=faces[0].limits,
        upright=tuple(sorted([*uprights, *corners], key=lambda joint: joint.at)),
        level=tuple(Movement("", "", at) for at in sorted(levels) if 0 < at < height),
        top=() if whole else tuple(e for part in parts for e in _edges(part, part.described.face.height, True)),
        bottom=() if whole else tuple(e for part in parts for e in _edges(part, 0, False)),
    )


def _edges(part: Part, level: int, top: bool) -> list[Edge]:
    face = part.described.face
    return [
        Edge(e.left + part.left, e.right + part.left, e.at_left + part.low, e.at_right + part.low)
        for e in face.edges(face.top if top else face.bottom, level)
    ]
