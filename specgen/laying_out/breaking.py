"""What of a layout the water details break: a roof below cuts panels and grooves, and a groove stops at a ledge."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from specgen.laying_out.cutting import Cell, cut_part, join_slabs, make_cell
from specgen.laying_out.face import Corner, Face, Length, Roof
from specgen.laying_out.merging import Piece
from specgen.laying_out.runs import Run, leave_out


def split_at_roofs(face: Face, pieces: list[Piece]) -> list[Piece]:
    """The pieces with what roofs cut apart told apart; the wall goes on above each roof where its board ends."""
    for roof in face.roofs:
        pieces = [(at, part) for at, cells in pieces for part in _split(cells, roof)]
    return pieces


def _split(cells: list[Cell], roof: Roof) -> list[list[Cell]]:
    if not any(_meets(cell, roof) for cell in cells):
        return [cells]
    places = sorted({place for cell in cells for place in _places(cell, roof)})
    slabs = [
        [part for cell in cells if cell.left <= start and cell.right >= end for part in _clear(cell, roof, start, end)]
        for start, end in pairwise(places)
    ]
    return join_slabs([sorted(slab, key=lambda cell: (cell.low_left, cell.low_right)) for slab in slabs])


def _meets(cell: Cell, roof: Roof) -> bool:
    """Whether a roof passes through the box around a cell."""
    left, right = max(cell.left, roof.line.left), min(cell.right, roof.line.right)
    if left >= right:
        return False
    heights = [*(roof.line.at(x) for x in (left, right)), *(roof.over(x) for x in (left, right))]
    low, high = min(cell.low_left, cell.low_right), max(cell.high_left, cell.high_right)
    return min(heights) < high and max(heights) > low


def _places(cell: Cell, roof: Roof) -> Iterator[Length]:
    """Where a cell begins and ends, where the roof does in it, and where their sides cross."""
    yield from (cell.left, cell.right)
    left, right = max(cell.left, roof.line.left), min(cell.right, roof.line.right)
    if left >= right:
        return
    yield from (left, right)
    part = cut_part(cell, left, right)
    for low, high in ((part.low_left, part.low_right), (part.high_left, part.high_right)):
        for line in (roof.line.at, roof.over):
            before, behind = line(left) - low, line(right) - high
            if before * behind < 0:
                yield left + Fraction((right - left) * before) / (before - behind)


def _clear(cell: Cell, roof: Roof, start: Length, end: Length) -> Iterator[Cell]:
    """What is left of a cell between two places: all of it beside the roof, else what lies below and above it."""
    part = cut_part(cell, start, end)
    low, high = (part.low_left, part.low_right), (part.high_left, part.high_right)
    if start < roof.line.left or end > roof.line.right:
        yield part
        return
    under: Corner = (min(high[0], roof.line.at(start)), min(high[1], roof.line.at(end)))
    over: Corner = (max(low[0], roof.over(start)), max(low[1], roof.over(end)))
    yield from make_cell(start, end, low, under)
    yield from make_cell(start, end, over, high)


def break_runs(face: Face, runs: list[Run]) -> list[Run]:
    """The runs of grooves, each broken where it meets a roof and where it meets a ledge."""
    if not face.roofs and not face.ledges:
        return runs
    return [run._replace(start=start, end=end) for run in runs for start, end in _list_stretches(face, run)]


def _list_stretches(face: Face, run: Run) -> Iterator[tuple[Length, Length]]:
    taken = [*_at_roofs(face, run), *_at_ledges(face, run)]
    return leave_out(run.start, run.end, taken)


def _at_ledges(face: Face, run: Run) -> Iterator[tuple[Length, Length]]:
    """What of a run ledges take that it crosses or runs along: their edge stands where the groove would be."""
    for one in face.ledges:
        across, along = ((one.left, one.right), (one.low, one.high))[:: 1 if run.upright else -1]
        if across[0] <= run.at <= across[1] and along[0] < run.end and along[1] > run.start:
            yield along


def _at_roofs(face: Face, run: Run) -> Iterator[tuple[Length, Length]]:
    """What of a run roofs take that it crosses."""
    for roof in face.roofs:
        line = roof.line
        if run.upright:
            taken = (line.at(run.at), roof.over(run.at)) if line.left < run.at < line.right else None
        else:
            taken = _at_height(roof, run.at)
        if taken and taken[0] < run.end and taken[1] > run.start:
            yield taken


def _at_height(roof: Roof, y: int) -> tuple[Length, Length] | None:
    """From where to where a height lies between a roof and the end of the board above it."""
    line = roof.line
    if line.at_left == line.at_right:
        return (line.left, line.right) if line.at_left <= y <= line.at_left + roof.clear else None
    # Where the line itself and the end of the board pass the height, held to the ends of the roof.
    rise = Fraction(line.at_right - line.at_left, line.right - line.left)
    ends = [line.left + (y - line.at_left - by) / rise for by in (0, roof.clear)]
    start: Length = max(min(ends), Fraction(line.left))
    end: Length = min(max(ends), Fraction(line.right))
    return (start, end) if start <= end else None
