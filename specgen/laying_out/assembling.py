"""A layout put together from lines: panels with their marks, runs of joints, and what it scores."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from specgen.laying_out.breaking import break_runs, split_at_roofs
from specgen.laying_out.cutting import Box, Cell, cut_box
from specgen.laying_out.face import LETTERS, Corner, Face, Opening
from specgen.laying_out.measuring import Shape, measure, trace
from specgen.laying_out.merging import Piece, join_across
from specgen.laying_out.runs import Run, find_runs, runs_around
from specgen.laying_out.scoring import Wishes, score
from specgen.model.layout import AESTHETIC, ElevationLayout, JointRun, Panel, Point, Proposal


def assemble(
    face: Face,
    upright: tuple[int, ...],
    level: tuple[int, ...],
    wishes: Wishes,
    proposal: Proposal = "given",
    *,
    left_out: frozenset[Run] = frozenset(),
    notes: tuple[str, ...] = (),
) -> ElevationLayout:
    """The layout of an elevation by lines in ticks; `left_out` are runs of them at which no joint is cut.

    Roofs and ledges are counted here alone: lines are sought as if there were none.
    """
    pieces = list(name_pieces(face, split_at_roofs(face, cut_face(face, upright, level, left_out))))
    runs = break_runs(face, drop_runs(line_runs(face, upright, level), left_out))
    shapes = [measure(cells) for _, cells in pieces]
    return ElevationLayout(
        elevation=face.mark,
        width=face.meters(face.width),
        height=face.meters(face.height),
        edge=_points(face, face.edge),
        openings=tuple(_opening(face, one) for one in face.openings),
        vertical_lines=tuple(map(face.meters, upright)),
        horizontal_lines=tuple(map(face.meters, level)),
        panels=tuple(_panel(face, *piece, shape) for piece, shape in zip(pieces, shapes, strict=True)),
        joints=tuple(_joints(face, upright, level, runs)),
        proposal=proposal,
        score=score(face, shapes, runs, keep_whole(upright, level, left_out), wishes),
        notes=notes,
    )


def cut_face(
    face: Face, upright: tuple[int, ...], level: tuple[int, ...], left_out: frozenset[Run] = frozenset()
) -> list[Piece]:
    """The pieces between lines and movement joints, by columns from the left and rows from below."""
    columns, rows = cuts(face, upright, level)
    pieces: list[Piece] = []
    for column, (left, right) in enumerate(pairwise(columns)):
        near = face.near(left, right)
        for row, (low, high) in enumerate(pairwise(rows)):
            box: Box = (left, low, right, high)
            pieces += [((column, row), cells) for cells in cut_box(face, box, near)]
    return join_across(pieces, left_out) if left_out else pieces


def cuts(face: Face, upright: tuple[int, ...], level: tuple[int, ...]) -> tuple[list[int], list[int]]:
    """Where an elevation is cut each way: at lines, at movement joints and at its ends."""
    columns = {0, face.width, *upright, *(joint.at for joint in face.upright)}
    rows = {0, face.height, *level, *(joint.at for joint in face.level)}
    return sorted(columns), sorted(rows)


def line_runs(face: Face, upright: tuple[int, ...], level: tuple[int, ...]) -> list[Run]:
    """The runs of the aesthetic joints; a line on a movement joint is none."""
    moving = {(True, joint.at) for joint in face.upright} | {(False, joint.at) for joint in face.level}
    lines = [(True, at) for at in upright] + [(False, at) for at in level]
    return [run for line in lines if line not in moving for run in find_runs(face, *line)]


def keep_whole(
    upright: tuple[int, ...], level: tuple[int, ...], left_out: frozenset[Run]
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The lines of each way of which no run is left out: a wish is met by no part of a line."""
    stopped = {(run.upright, run.at) for run in left_out}
    kept = (tuple(at for at in lines if (way, at) not in stopped) for way, lines in ((True, upright), (False, level)))
    return next(kept), next(kept)


def drop_runs(runs: list[Run], left_out: frozenset[Run]) -> list[Run]:
    """What is left of runs without some parts of them."""
    kept = []
    for run in runs:
        start = run.start
        for part in sorted(p for p in left_out if (p.upright, p.at) == (run.upright, run.at)):
            if run.start <= part.start and part.end <= run.end:
                if start < part.start:
                    kept.append(run._replace(start=start, end=part.start))
                start = part.end
        if start < run.end:
            kept.append(run._replace(start=start))
    return kept


def name_pieces(face: Face, pieces: list[Piece]) -> Iterator[tuple[str, list[Cell]]]:
    """Each piece with its mark, `E1-A3`: the letter of its column and its row from below.

    Several of one box are told apart by a small letter, from the left and from below.
    """
    in_box: dict[tuple[int, int], list[list[Cell]]] = {}
    for at, cells in pieces:
        in_box.setdefault(at, []).append(cells)
    for (column, row), parts in in_box.items():
        for number, cells in enumerate(sorted(parts)):
            part = LETTERS[number % len(LETTERS)].lower() if len(parts) > 1 else ""
            yield f"{face.mark}-{name_column(column, face.letters)}{row + 1}{part}", cells


def name_column(number: int, letters: str = LETTERS) -> str:
    """The letters of a column: A to Z without those that are left out, then AA."""
    name = ""
    while number >= 0:
        number, place = divmod(number, len(letters))
        name, number = letters[place] + name, number - 1
    return name


def _joints(face: Face, upright: tuple[int, ...], level: tuple[int, ...], runs: list[Run]) -> Iterator[JointRun]:
    names = {(True, at): f"{face.mark}-V{n}" for n, at in enumerate(upright, 1)}
    names |= {(False, at): f"{face.mark}-H{n}" for n, at in enumerate(level, 1)}
    for run in runs:
        yield _joint(face, names[run.upright, run.at], AESTHETIC, run)
    for upward, joints in ((True, face.upright), (False, face.level)):
        for joint in joints:
            yield from (_joint(face, joint.mark, joint.kind, run) for run in find_runs(face, upward, joint.at))
    for around in face.around:
        yield from (_joint(face, around.mark, around.kind, run) for run in runs_around(face, around))


def _joint(face: Face, mark: str, kind: str, run: Run) -> JointRun:
    return JointRun(mark, kind, *map(face.meters, run.corners))


def _panel(face: Face, mark: str, cells: list[Cell], shape: Shape) -> Panel:
    outline, holes = trace(cells)
    low = min(min(cell.low_left, cell.low_right) for cell in cells)
    x, y = face.meters(cells[0].left), face.meters(low)
    width, height, least = (face.meters(side) for side in (shape.width, shape.height, shape.least))
    area, inner = Fraction(shape.area) / face.scale**2, tuple(_points(face, hole) for hole in holes)
    return Panel(mark, _points(face, outline), inner, x, y, width, height, least, area)


def _points(face: Face, corners: tuple[Corner, ...]) -> tuple[Point, ...]:
    return tuple((face.meters(x), face.meters(y)) for x, y in corners)


def _opening(face: Face, one: Opening) -> tuple[str, Fraction, Fraction, Fraction, Fraction]:
    sides = (one.left, one.low, one.right - one.left, one.high - one.low)
    x, y, width, height = map(face.meters, sides)
    return one.mark, x, y, width, height
