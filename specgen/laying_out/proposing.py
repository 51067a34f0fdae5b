"""Lines proposed for an elevation and those it meets, and what is to be said of them."""

from specgen.laying_out.assembling import assemble
from specgen.laying_out.candidates import find_places
from specgen.laying_out.describing import Described, describe, scale_of
from specgen.laying_out.saying import Words
from specgen.laying_out.search import Found, Problem, Search
from specgen.laying_out.stopping import Lines, Wall, find_stopped
from specgen.laying_out.unfolding import Part, Unfolded, find_group, given_neighbors, unfold
from specgen.model.layout import ElevationLayout
from specgen.model.typed_views import Elevation

Offered = dict[str, tuple[ElevationLayout, ...]]


def propose(elevation: Elevation) -> tuple[ElevationLayout, ...]:
    """The layouts offered for an elevation: lines that run through, and where they force pieces that are too narrow
    and that helps, lines that stop at openings. Raises Absent."""
    group = find_group(elevation)
    key = ("proposed lines", *(one.mark for one in group))
    return elevation.project.remember(key, lambda: _propose_together(group))[elevation.mark]


def _propose_together(group: list[Elevation]) -> Offered:
    given = given_neighbors(group)
    scale = scale_of([*group, *given])
    unfolded = unfold([describe(one, scale) for one in group])
    problem = pose(unfolded, [describe(one, scale) for one in given])
    search = Search(problem)
    found = search.find()
    held = len(group) > 1 or bool(given)
    words = Words(search, found, [one.mark for one in group], group[0].project.system, held=held)
    parts = zip(unfolded.parts, group, strict=True)
    return {one.mark: _offer(part, one, search, found, words) for part, one in parts}


def pose(unfolded: Unfolded, given: list[Described]) -> Problem:
    """The problem of an unfolded face; level lines meet those that are given beyond a corner."""
    face, wishes, snap = unfolded.face, unfolded.wishes, unfolded.parts[0].described.snap
    datum = min(part.described.base for part in unfolded.parts)
    level = set(find_places(face, wishes, snap, upright=False))
    fixed = {joint.at for joint in face.level}
    for one in given:
        low = one.base - datum
        met = {at + low for at in one.level if 0 < at + low < face.height}
        level = {at for at in level if not low < at < low + one.face.height or at in fixed} | met
        fixed |= met
    return Problem(
        face,
        wishes,
        find_places(face, wishes, snap, upright=True),
        tuple(sorted(level | fixed)),
        frozenset(joint.at for joint in face.upright if 0 < joint.at < face.width),
        frozenset(at for at in fixed if 0 < at < face.height),
    )


def _offer(part: Part, elevation: Elevation, search: Search, found: Found, words: Words) -> tuple[ElevationLayout, ...]:
    """The layouts of one elevation of an unfolded face."""
    face, wishes = part.described.face, part.described.wishes
    lines = _on(part, (found.upright, found.level))
    through = assemble(face, *lines, wishes, "through")
    if not through.score.slivers:
        return (words.note(part, through),)
    problem = search.problem
    sides = ((0, "left_meets"), (face.width, "right_meets"))
    corners = frozenset(at for at, side in sides if elevation.get(side) is not None)
    wall = Wall(face, wishes, *_on(part, (problem.upright, problem.level)), corners)
    best = find_stopped(wall, [lines, *_free_starts(part, wall, search)])
    stopped = assemble(face, best.upright, best.level, wishes, "stopped", left_out=best.left_out)
    if (stopped.score.over_limits, stopped.score.slivers) >= (through.score.over_limits, through.score.slivers):
        return (words.note(part, through),)
    return words.note(part, through, stopped), words.note(part, stopped, through)


def _free_starts(part: Part, wall: Wall, search: Search) -> list[tuple[Lines, Lines]]:
    """Lines to begin with that are best but for narrow panels, as runs left out may do away with those."""
    if wall.corners or not search.is_small or not wall.face.is_rectangle:
        return []
    found = Search(search.problem, slivers=False).find()
    return [_on(part, (found.upright, found.level))]


def _on(part: Part, lines: tuple[Lines, Lines]) -> tuple[Lines, Lines]:
    """What of the lines of an unfolded face lies within one elevation, those on movement joints left out."""
    face = part.described.face
    upright, level = ({joint.at for joint in joints} for joints in (face.upright, face.level))
    return (
        tuple(at - part.left for at in lines[0] if 0 < at - part.left < face.width and at - part.left not in upright),
        tuple(at - part.low for at in lines[1] if 0 < at - part.low < face.height and at - part.low not in level),
    )
