"""A slow and plain way to cut and score a small elevation, written apart from the product: squares on a grid.

The grid has a square between any two neighboring places at which something begins or ends; squares are flooded one by
one, and all lines are tried.
"""

from collections.abc import Iterator
from itertools import chain, combinations, pairwise
from typing import NamedTuple


class Plan(NamedTuple):
    """A small elevation: openings as left, low, right, high; joints that always cut; limits; wishes."""

    width: int
    height: int
    openings: tuple[tuple[int, int, int, int], ...]
    upright_joints: tuple[int, ...]
    level_joints: tuple[int, ...]
    most: tuple[int, int, int]  # width, height, area
    least: int
    wanted_upright: tuple[int, ...]
    wanted_level: tuple[int, ...]


Places = tuple[int, ...]
Square = tuple[int, int]


def is_wall(plan: Plan, x: float, y: float) -> bool:
    """Whether wall stands at a point that lies on no edge."""
    inside = 0 < x < plan.width and 0 < y < plan.height
    return inside and not any(a < x < c and b < y < d for a, b, c, d in plan.openings)


def flood(plan: Plan, xs: list[int], ys: list[int], upright: set[int], level: set[int]) -> Iterator[set[Square]]:
    """The pieces, each as its squares."""
    free = {
        (i, j)
        for i in range(len(xs) - 1)
        for j in range(len(ys) - 1)
        if is_wall(plan, (xs[i] + xs[i + 1]) / 2, (ys[j] + ys[j + 1]) / 2)
    }
    while free:
        piece, edge = set(), [free.pop()]
        while edge:
            i, j = edge.pop()
            piece.add((i, j))
            near = []
            if xs[i] not in upright:
                near.append((i - 1, j))
            if xs[i + 1] not in upright:
                near.append((i + 1, j))
            if ys[j] not in level:
                near.append((i, j - 1))
            if ys[j + 1] not in level:
                near.append((i, j + 1))
            for square in near:
                if square in free:
                    free.discard(square)
                    edge.append(square)
        yield piece


def shortest_run(piece: set[Square], xs: list[int], ys: list[int]) -> int:
    """The shortest run of squares in a row or a column of a piece, from one end to the other."""
    found = []
    for i, j in piece:
        if (i - 1, j) not in piece:
            end = i
            while (end + 1, j) in piece:
                end += 1
            found.append(xs[end + 1] - xs[i])
        if (i, j - 1) not in piece:
            end = j
            while (i, end + 1) in piece:
                end += 1
            found.append(ys[end + 1] - ys[j])
    return min(found)


def grid_of(plan: Plan, upright: Places, level: Places) -> tuple[list[int], list[int]]:
    """Where squares begin and end."""
    xs = {0, plan.width, *upright, *plan.upright_joints, *(x for a, _, c, _ in plan.openings for x in (a, c))}
    ys = {0, plan.height, *level, *plan.level_joints, *(y for _, b, _, d in plan.openings for y in (b, d))}
    return sorted(xs), sorted(ys)


class Scored(NamedTuple):
    """What lines are judged by, in the order of the demand."""

    over: int
    slivers: int
    missed: int
    length: int
    inequality: int
    asymmetry: int


def score(plan: Plan, upright: Places, level: Places) -> Scored:
    """The score of some lines beside the joints."""
    xs, ys = grid_of(plan, upright, level)
    cuts = {*upright, *plan.upright_joints}, {*level, *plan.level_joints}
    over = slivers = 0
    areas = []
    for piece in flood(plan, xs, ys, *cuts):
        width = max(xs[i + 1] for i, _ in piece) - min(xs[i] for i, _ in piece)
        height = max(ys[j + 1] for _, j in piece) - min(ys[j] for _, j in piece)
        area = sum((xs[i + 1] - xs[i]) * (ys[j + 1] - ys[j]) for i, j in piece)
        over += width > plan.most[0] or height > plan.most[1] or area > plan.most[2]
        slivers += shortest_run(piece, xs, ys) < plan.least
        areas.append(area)
    missed = sum(at not in cuts[0] for at in plan.wanted_upright) + sum(at not in cuts[1] for at in plan.wanted_level)
    length = joint_length(plan, upright, level, xs, ys)
    unlike = sum(plan.width - at not in cuts[0] for at in upright if at not in plan.upright_joints)
    return Scored(over, slivers, missed, length, max(areas, default=0) - min(areas, default=0), unlike)


def joint_length(plan: Plan, upright: Places, level: Places, xs: list[int], ys: list[int]) -> int:
    """How long the lines are where there is wall at both hands, joints left out."""
    length = 0
    for x in set(upright) - set(plan.upright_joints):
        for low, high in pairwise(ys):
            y = (low + high) / 2
            length += (high - low) * (is_wall(plan, x - 0.5, y) and is_wall(plan, x + 0.5, y))
    for y in set(level) - set(plan.level_joints):
        for left, right in pairwise(xs):
            x = (left + right) / 2
            length += (right - left) * (is_wall(plan, x, y - 0.5) and is_wall(plan, x, y + 0.5))
    return length


def best_of_all(plan: Plan, upright: Places, level: Places) -> Scored:
    """The best score of any lines at some places."""
    return min(score(plan, one, other) for one in subsets(upright) for other in subsets(level))


def subsets(places: Places) -> list[Places]:
    """Every choice of places."""
    return list(chain.from_iterable(combinations(places, count) for count in range(len(places) + 1)))


class Stretch(NamedTuple):
    """A part of a line from one opening, end or joint to the next."""

    upright: bool
    at: int
    start: int
    end: int


def stretches_of(plan: Plan, upright: Places, level: Places) -> list[Stretch]:
    """Every stretch of lines at some places, those on joints left out, one unit after the other."""
    found = []
    for way, places, end in ((True, upright, plan.height), (False, level, plan.width)):
        joints, crossing = plan.upright_joints, plan.level_joints
        if not way:
            joints, crossing = crossing, joints
        for at in sorted(set(places) - set(joints)):
            start = None
            for unit in range(end + 1):
                middle = unit + 0.5
                hands = ((at - 0.5, middle), (at + 0.5, middle)) if way else ((middle, at - 0.5), (middle, at + 0.5))
                clear = all(is_wall(plan, *point) for point in hands)
                if start is not None and (not clear or unit in crossing):
                    found.append(Stretch(way, at, start, unit))
                    start = None
                if clear and start is None:
                    start = unit
    return found


def score_stretches(plan: Plan, places: tuple[Places, Places], kept: tuple[Stretch, ...]) -> tuple[int, ...] | None:
    """Panels past a limit, narrow ones, wishes missed and length of joint; None where a stretch ends in a panel."""
    piece_of: dict[Square, int] = {}
    barred = {joint: set(range(-1, plan.height + 1)) for joint in plan.upright_joints}
    barred_level = {joint: set(range(-1, plan.width + 1)) for joint in plan.level_joints}
    for one in kept:
        (barred if one.upright else barred_level).setdefault(one.at, set()).update(range(one.start, one.end))
    pieces: list[set[Square]] = []
    free = {(x, y) for x in range(plan.width) for y in range(plan.height) if is_wall(plan, x + 0.5, y + 0.5)}
    while free:
        edge, piece = [free.pop()], set[Square]()
        while edge:
            x, y = edge.pop()
            piece.add((x, y))
            piece_of[x, y] = len(pieces)
            near = [(x - 1, y)] if y not in barred.get(x, ()) else []
            near += [(x + 1, y)] if y not in barred.get(x + 1, ()) else []
            near += [(x, y - 1)] if x not in barred_level.get(y, ()) else []
            near += [(x, y + 1)] if x not in barred_level.get(y + 1, ()) else []
            edge += [square for square in near if square in free]
            free.difference_update(near)
        pieces.append(piece)
    for one in kept:
        for unit in range(one.start, one.end):
            before, behind = (
                ((one.at - 1, unit), (one.at, unit)) if one.upright else ((unit, one.at - 1), (unit, one.at))
            )
            if piece_of[before] == piece_of[behind]:
                return None
    xs, ys = list(range(plan.width + 1)), list(range(plan.height + 1))
    over = sum(is_past(plan, piece) for piece in pieces)
    narrow = sum(shortest_run(piece, xs, ys) < plan.least for piece in pieces)
    whole = {(one.upright, one.at) for one in kept}
    whole -= {(one.upright, one.at) for one in stretches_of(plan, *places) if one not in kept}
    whole |= {(True, at) for at in plan.upright_joints} | {(False, at) for at in plan.level_joints}
    missed = sum((True, at) not in whole for at in plan.wanted_upright)
    missed += sum((False, at) not in whole for at in plan.wanted_level)
    return over, narrow, missed, sum(one.end - one.start for one in kept)


def is_past(plan: Plan, piece: set[Square]) -> bool:
    """Whether a piece of squares of one unit is past a limit."""
    wide = max(x for x, _ in piece) - min(x for x, _ in piece) + 1
    high = max(y for _, y in piece) - min(y for _, y in piece) + 1
    return wide > plan.most[0] or high > plan.most[1] or len(piece) > plan.most[2]


def best_of_all_stretches(plan: Plan, upright: Places, level: Places) -> tuple[int, ...]:
    """The best score of any stretches of lines at some places."""
    all_of_them = stretches_of(plan, upright, level)
    chosen = chain.from_iterable(combinations(all_of_them, count) for count in range(len(all_of_them) + 1))
    return min(scored for kept in chosen if (scored := score_stretches(plan, (upright, level), kept)) is not None)
