"""Pieces put together across runs at which no joint is cut."""

from specgen.laying_out.cutting import Cell, merge_cells
from specgen.laying_out.face import Length
from specgen.laying_out.runs import Run

Piece = tuple[tuple[int, int], list[Cell]]  # column and row from the lower left, and its cells
Side = tuple[bool, Length]  # an upright or a level line, and where


class Pieces:
    """Pieces by number, and those that lie on either side of a line; pieces put together share a number."""

    def __init__(self, pieces: list[Piece]) -> None:
        self._pieces = pieces
        self._root = list(range(len(pieces)))
        self._members: dict[int, list[int]] = {number: [number] for number in range(len(pieces))}
        self._before: dict[Side, list[tuple[Cell, int]]] = {}
        self._behind: dict[Side, list[tuple[Cell, int]]] = {}
        for number, (_, cells) in enumerate(pieces):
            for cell in cells:
                self._before.setdefault((True, cell.right), []).append((cell, number))
                self._behind.setdefault((True, cell.left), []).append((cell, number))
                if cell.high_left == cell.high_right:
                    self._before.setdefault((False, cell.high_left), []).append((cell, number))
                if cell.low_left == cell.low_right:
                    self._behind.setdefault((False, cell.low_left), []).append((cell, number))

    def across(self, run: Run) -> list[set[int]]:
        """The pieces that would be one without a run, group by group."""
        side = (run.upright, run.at)
        before = [(c, self._find(n)) for c, n in self._before.get(side, ()) if _lies_along(c, run)]
        behind = [(c, self._find(n)) for c, n in self._behind.get(side, ()) if _lies_along(c, run)]
        groups: list[set[int]] = []
        for one, number in before:
            for other, beyond in behind:
                if number != beyond and _face_each_other(one, other, run):
                    joined = [group for group in groups if group & {number, beyond}]
                    groups = [group for group in groups if group not in joined]
                    groups.append({number, beyond}.union(*joined))
        return groups

    def cells(self, group: set[int]) -> list[Cell]:
        """The cells of some pieces as of one."""
        found = [cell for one in group for number in self._members[one] for cell in self._pieces[number][1]]
        return merge_cells(found) if sum(len(self._members[one]) for one in group) > 1 else found

    def join(self, group: set[int]) -> None:
        """Make one of some pieces."""
        first, *others = sorted(group)
        for other in others:
            for number in self._members[other]:
                self._root[number] = first
            self._members[first] += self._members.pop(other)

    def all(self) -> list[Piece]:
        """The pieces as they are now, each at the column and row of its lower left part."""
        found = [(min(self._pieces[n][0] for n in self._members[one]), self.cells({one})) for one in self._members]
        return sorted(found, key=lambda piece: piece[0])

    def _find(self, number: int) -> int:
        return self._root[number]


def join_across(pieces: list[Piece], left_out: frozenset[Run]) -> list[Piece]:
    """The pieces with those put together that lie on both sides of a run left out."""
    joined = Pieces(pieces)
    for run in sorted(left_out):
        for group in joined.across(run):
            joined.join(group)
    return joined.all()


def _lies_along(cell: Cell, run: Run) -> bool:
    if run.upright:
        low, high = min(cell.low_left, cell.low_right), max(cell.high_left, cell.high_right)
        return low < run.end and high > run.start
    return cell.left < run.end and cell.right > run.start


def _face_each_other(before: Cell, behind: Cell, run: Run) -> bool:
    """Whether two cells share a stretch of a run."""
    if run.upright:
        low, high = max(before.low_right, behind.low_left), min(before.high_right, behind.high_left)
    else:
        low, high = max(before.left, behind.left), min(before.right, behind.right)
    return max(low, run.start) < min(high, run.end)
