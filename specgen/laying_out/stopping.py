"""Lines that stop at openings: runs are left out where they would cut off a piece too narrow."""

from specgen.laying_out.assembling import cut_face, line_runs
from specgen.laying_out.face import Face
from specgen.laying_out.measuring import Shape, measure
from specgen.laying_out.merging import Pieces
from specgen.laying_out.runs import Run
from specgen.laying_out.scoring import is_over


def find_left_out(face: Face, upright: tuple[int, ...], level: tuple[int, ...]) -> frozenset[Run]:
    """The runs without which fewer pieces are too narrow and none more is past a limit.

    A run goes from one opening, edge or movement joint to the next, so that what is left of its line ends there.
    """
    pieces, left_out = Pieces(cut_face(face, upright, level)), set()
    runs = [part for run in line_runs(face, upright, level) for part in _break_at_joints(face, run)]
    # The shortest first: least of a line is lost.
    for run in sorted(runs, key=lambda run: (run.length, run)):
        groups = pieces.across(run)
        before = [measure(pieces.cells({one})) for group in groups for one in group]
        if not any(_is_narrow(face, shape) for shape in before):
            continue
        after = [measure(pieces.cells(group)) for group in groups]
        if _count(face, after) < _count(face, before):
            left_out.add(run)
            for group in groups:
                pieces.join(group)
    return frozenset(left_out)


def _break_at_joints(face: Face, run: Run) -> list[Run]:
    """The parts of a run between the movement joints it crosses."""
    crossing = face.level if run.upright else face.upright
    places = [run.start, *sorted(j.at for j in crossing if run.start < j.at < run.end), run.end]
    return [run._replace(start=a, end=b) for a, b in zip(places, places[1:], strict=False)]


def _is_narrow(face: Face, shape: Shape) -> bool:
    return shape.least < face.limits.least_side


def _count(face: Face, shapes: list[Shape]) -> tuple[int, int]:
    """Pieces past a limit, and those too narrow."""
    over = sum(is_over(shape, face.limits) for shape in shapes)
    return over, sum(_is_narrow(face, shape) for shape in shapes)
