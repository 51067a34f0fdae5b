"""Lines proposed for an elevation and those it meets, and what is to be said of them."""

from specgen.laying_out.assembling import assemble
from specgen.laying_out.candidates import find_places
from specgen.laying_out.describing import Described, describe, scale_of
from specgen.laying_out.saying import Words
from specgen.laying_out.search import Found, Problem, Search
from specgen.laying_out.stopping import find_left_out
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
    words = Words(search, found, [one.mark for one in group], group[0].project.system)
    return {part.described.face.mark: _offer(part, found, words) for part in unfolded.parts}


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


def _offer(part: Part, found: Found, words: Words) -> tuple[ElevationLayout, ...]:
    """The layouts of one elevation of an unfolded face."""
    described = part.described
    face, wishes = described.face, described.wishes
    moving = {joint.at for joint in face.upright}, {joint.at for joint in face.level}
    upright = tuple(at - part.left for at in found.upright if part.left < at < part.left + face.width)
    level = tuple(at - part.low for at in found.level if part.low < at < part.low + face.height)
    upright, level = (
        tuple(at for at in upright if at not in moving[0]),
        tuple(at for at in level if at not in moving[1]),
    )
    through = assemble(face, upright, level, wishes, "through")
    if not through.score.slivers:
        return (words.note(part, through),)
    left_out = find_left_out(face, upright, level)
    stopped = assemble(face, upright, level, wishes, "stopped", left_out=left_out)
    if stopped.score.slivers >= through.score.slivers:
        return (words.note(part, through),)
    return words.note(part, through, stopped), words.note(part, stopped, through)
