"""Lines that stop at openings: runs are left out where they would cut off a piece too narrow.

Lines are searched anew, each choice of them judged with the runs left out that are best left out of it.
"""

from collections.abc import Iterator
from typing import NamedTuple

from specgen.laying_out.assembling import cut_face, drop_runs, keep_whole, line_runs
from specgen.laying_out.face import Face
from specgen.laying_out.joining import Joining
from specgen.laying_out.merging import Pieces
from specgen.laying_out.runs import Run
from specgen.laying_out.scoring import Wishes, score
from specgen.model.layout import LayoutScore

Lines = tuple[int, ...]
# Panels cut in all the choices of lines that are tried, so that a large wall takes no longer than a small one.
_MOST_PANELS, _MOST_BY_CELLS = 4_000, 300  # those along a step or a slope take longer
_FEW = 10  # a wall of fewer than a part of these panels is small


class Stopped(NamedTuple):
    """Lines, and the runs of them at which no joint is cut."""

    upright: Lines
    level: Lines
    left_out: frozenset[Run]


class Wall(NamedTuple):
    """An elevation whose lines may stop: the places for them, and the corners at which level lines are held."""

    face: Face
    wishes: Wishes
    upright: Lines
    level: Lines
    corners: frozenset[int]  # 0 and the width, where another elevation is met

    def holds(self, run: Run) -> bool:
        """Whether a run stays because the line goes on round a corner."""
        return not run.upright and not self.corners.isdisjoint((run.start, run.end))


def find_stopped(wall: Wall, starts: list[tuple[Lines, Lines]]) -> Stopped:
    """The best lines found that may stop, beginning with some; one line more, less or elsewhere is tried each time."""
    best, panels = min((_judge(wall, *pair) for pair in starts), key=lambda each: each[0].key)
    most = _MOST_PANELS if wall.face.is_rectangle else _MOST_BY_CELLS
    tried, left = set(starts), most - panels * len(starts)
    trials = _untried(wall, best.lines, tried)
    # A large wall is judged by few lines beside those it starts with.
    while left > 0 and (pair := next(trials, None)) is not None:
        judged, panels = _judge(wall, *pair)
        left -= panels
        if judged.key < best.key:
            best, trials = judged, _untried(wall, judged.lines, tried)
    return best.lines


def _untried(wall: Wall, lines: Stopped, tried: set[tuple[Lines, Lines]]) -> Iterator[tuple[Lines, Lines]]:
    """Choices of lines near some that were not tried yet."""
    for pair in _neighbors(wall, lines.upright, lines.level):
        if pair not in tried:
            tried.add(pair)
            yield pair


class _Judged(NamedTuple):
    """Lines that may stop, and what they are compared by."""

    key: tuple[object, ...]
    lines: Stopped


def _judge(wall: Wall, upright: Lines, level: Lines) -> tuple[_Judged, int]:
    """Lines without the runs best left out, and how many panels were cut to find them."""
    whole = cut_face(wall.face, upright, level)
    tries = 2 if len(whole) * _FEW < _MOST_PANELS else 1
    judged = [_judge_in_order(wall, (upright, level), Pieces(whole), longest) for longest in (False, True)[:tries]]
    return min(judged, key=lambda one: one.key), tries * len(whole)


def _judge_in_order(wall: Wall, lines: tuple[Lines, Lines], pieces: Pieces, longest: bool) -> _Judged:
    """Lines without the runs left out in turn, the shortest or the longest first."""
    face = wall.face
    left_out = _leave_out(wall, lines, pieces, longest)
    runs = drop_runs(line_runs(face, *lines), left_out)
    drawn = {(run.upright, run.at) for run in runs}
    kept = Stopped(
        tuple(at for at in lines[0] if (True, at) in drawn),
        tuple(at for at in lines[1] if (False, at) in drawn),
        frozenset(run for run in left_out if (run.upright, run.at) in drawn),
    )
    return _Judged(_key(score(face, pieces.shapes(), runs, keep_whole(*kept), wall.wishes)), kept)


def _leave_out(wall: Wall, lines: tuple[Lines, Lines], pieces: Pieces, longest: bool) -> frozenset[Run]:
    """The runs without which fewer pieces are too narrow and none more is past a limit; their pieces are joined.

    A run goes from one opening, edge or movement joint to the next, so that what is left of its line ends there.
    """
    face = wall.face
    runs = [part for run in line_runs(face, *lines) for part in _break_at_joints(face, run)]
    joining = Joining(face, wall.wishes, pieces, [run for run in runs if not wall.holds(run)])
    for run in sorted(joining.runs, key=lambda run: (-run.length if longest else run.length, run)):
        joining.mend(run)
    for run in sorted(joining.runs, key=lambda run: (-run.length, run)):
        joining.save(run)
    return frozenset(joining.left_out)


def _key(scored: LayoutScore) -> tuple[object, ...]:
    return (
        scored.over_limits,
        scored.slivers,
        scored.missed,
        scored.past_wish,
        scored.joint_length,
        scored.inequality,
        scored.asymmetry,
    )


def _neighbors(wall: Wall, upright: Lines, level: Lines) -> Iterator[tuple[Lines, Lines]]:
    """Choices of lines that differ in one line; level ones stay where they meet those of another elevation."""
    for lines in _change(upright, wall.upright):
        yield lines, level
    if not wall.corners:
        for lines in _change(level, wall.level):
            yield upright, lines


def _change(lines: Lines, places: Lines) -> Iterator[Lines]:
    """Lines with one left out, one more, or one in another place."""
    free = [at for at in places if at not in lines]
    for at in lines:
        yield tuple(other for other in lines if other != at)
    for at in free:
        yield tuple(sorted((*lines, at)))
    for at in lines:
        rest = tuple(other for other in lines if other != at)
        # Farther than the next lines on either side it would be another line.
        before = max((other for other in rest if other < at), default=0)
        behind = min((other for other in rest if other > at), default=places[-1] + 1)
        for new in free:
            if before < new < behind:
                yield tuple(sorted((*rest, new)))


def _break_at_joints(face: Face, run: Run) -> list[Run]:
    """The parts of a run between the movement joints it crosses."""
    crossing = face.level if run.upright else face.upright
    places = [run.start, *sorted(j.at for j in crossing if run.start < j.at < run.end), run.end]
    return [run._replace(start=a, end=b) for a, b in zip(places, places[1:], strict=False)]
