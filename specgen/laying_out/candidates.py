"""Where lines may be proposed: edges of openings, what lies a limit away from them, joints, and even spacing."""

from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import NamedTuple

from specgen.laying_out.face import Face
from specgen.laying_out.scoring import Wishes

# More places than these, some and so many more to the length of a panel, are thinned out: the less a place is worth the
# sooner.
_FEW, _TO_A_PANEL = 48, 3
_KEPT = 3  # tiers that are never thinned out


class Direction(NamedTuple):
    """What places for lines of one direction are found from, in ticks."""

    end: int
    fixed: tuple[int, ...]  # places at which the elevation is always cut
    wanted: tuple[int, ...]  # each as often as it is wished for
    edges: tuple[int, ...]  # of openings, each as often as it is one
    most: int  # the largest side of a panel across the lines
    least: int
    wish: int | None


def find_places(face: Face, wishes: Wishes, snap: int, upright: bool) -> tuple[int, ...]:
    """The places of one direction at which a line may run, ascending; those always cut are among them."""
    way = _direction(face, wishes, upright)
    most = _FEW + _TO_A_PANEL * way.end // way.most
    tiers = [
        {*way.fixed, *_even(way, [0, *way.fixed, way.end], snap, one_more=False)},
        _best(way.wanted, most // 3),
        _best([at for at, times in Counter(way.edges).items() for _ in range(times) if times > 1], most // 2),
        set(way.wanted),
        set(_even(way, [0, *way.fixed, *way.wanted, way.end], snap)),
        set(way.edges),
        set(_even(way, [0, *way.fixed, *way.wanted, *way.edges, way.end], snap)),
        set(_beside(way, snap)),
    ]
    return thin(tiers, way.end, most)


def _direction(face: Face, wishes: Wishes, upright: bool) -> Direction:
    limits = face.limits
    if upright:
        edges = [side for one in face.openings for side in (one.left, one.right)]
        steps = {edge.left for edge in (*face.top, *face.bottom)}
        fixed, wanted, wish = face.upright, wishes.upright, wishes.width
        end, most = face.width, limits.max_width
    else:
        edges = [side for one in face.openings for side in (one.low, one.high)]
        steps = {y for edge in (*face.top, *face.bottom) for y in (edge.at_left, edge.at_right)}
        fixed, wanted, wish = face.level, wishes.level, wishes.height
        end, most = face.height, limits.max_height
    return Direction(
        end,
        tuple(joint.at for joint in fixed if 0 < joint.at < end),
        tuple(at for at, times in wanted for _ in range(times)),
        tuple(at for at in (*edges, *steps) if 0 < at < end),
        most,
        limits.least_side,
        wish,
    )


def _best(places: Iterable[int], most: int) -> set[int]:
    """The places that are named most often, as many as leave room."""
    return {at for at, _ in Counter(places).most_common(most)}


def _even(way: Direction, anchors: Iterable[int], snap: int, *, one_more: bool = True) -> Iterator[int]:
    """Places that divide the stretches between anchors evenly, alike from both ends, as few as fit and one more."""
    for left, right in pairwise(sorted(set(anchors))):
        stretch = right - left
        for side in (way.most, way.wish):
            if side is None or side <= 0:
                continue
            parts = -(-stretch // side)
            for count in (parts, parts + 1) if one_more else (parts,):
                yield from _divide(left, right, count, snap)
            yield from (left + k * (side // snap * snap) for k in range(1, parts) if side >= snap)


def _divide(left: int, right: int, count: int, snap: int) -> Iterator[int]:
    for k in range(1, count // 2 + 1):
        place = snap * round((right - left) * k / (count * snap))
        yield left + place
        yield right - place


def _beside(way: Direction, snap: int) -> Iterator[int]:
    """Places that lie the least side, or the most a panel may have, from an edge or a joint."""
    for at in (0, way.end, *way.fixed, *way.wanted, *way.edges):
        for side in (way.least, way.most):
            up = -(-side // snap) * snap if side == way.least else side // snap * snap
            yield from (at - up, at + up)


def thin(tiers: list[set[int]], end: int, most: int) -> tuple[int, ...]:
    """The places of some tiers, the first worth most: all if they are few, else those that keep a distance."""
    # The first tier alone keeps to the limits, and what openings share comes next: they stay whatever there is.
    inside = [{at for at in tier if 0 < at < end} for tier in tiers]
    every = set().union(*inside)
    apart = max(1, end // (4 * most))
    while len(every) > most:
        every = set().union(*inside[:_KEPT])
        kept = {at // apart for at in every}
        for tier in inside[_KEPT:]:
            for at in sorted(tier - every):
                spot = at // apart
                if kept.isdisjoint((spot - 1, spot, spot + 1)):
                    kept.add(spot)
                    every.add(at)
        if apart > end:
            break
        apart = apart * 3 // 2 + 1
    return tuple(sorted(every))
