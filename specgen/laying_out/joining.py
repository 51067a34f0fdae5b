"""Runs left out one by one, each with those that would end up within a panel."""

from collections.abc import Iterable

from specgen.laying_out.face import Face
from specgen.laying_out.measuring import Shape, measure
from specgen.laying_out.merging import Pieces
from specgen.laying_out.runs import Run
from specgen.laying_out.scoring import Wishes, is_over, is_past_wish


class Joining:
    """Pieces, the runs between them, and those left out so far."""

    def __init__(self, face: Face, wishes: Wishes, pieces: Pieces, runs: list[Run]) -> None:
        self._face, self._wishes, self._pieces = face, wishes, pieces
        self._pairs = {run: pieces.pairs(run) for run in runs}
        self._at: dict[int, list[Run]] = {}
        for run, pairs in self._pairs.items():
            for piece in {one for pair in pairs for one in pair}:
                self._at.setdefault(piece, []).append(run)
        self._wanted = {True: {at for at, _ in wishes.upright}, False: {at for at, _ in wishes.level}}
        self.left_out: set[Run] = set()

    @property
    def runs(self) -> Iterable[Run]:
        """All runs that may be left out."""
        return self._pairs

    def mend(self, run: Run) -> None:
        """Leave a run out if fewer pieces are then past a limit, or as many and fewer too narrow."""
        if any(self._is_faulty(one) for pair in self._pairs[run] for one in pair):
            self._leave_out(run, saving=False)

    def save(self, run: Run) -> None:
        """Leave a run out if no more pieces are then too narrow or past a limit or a wish: less joint is cut."""
        if not self._is_wanted(run):
            self._leave_out(run, saving=True)

    def _leave_out(self, run: Run, *, saving: bool) -> None:
        """Leave a run out if that mends something; to save joint, if it worsens nothing."""
        if run in self.left_out:
            return
        runs, groups = self._reach(run)
        if not groups or any(self._is_past(group) for group in groups):
            return
        before = self._count([self._pieces.shape(one) for group in groups for one in group])
        after = self._count([measure(self._pieces.cells(group)) for group in groups])
        worsens = after > before or any(map(self._is_wanted, runs))
        if (not worsens) if saving else after < before:
            self.left_out |= runs
            for group in groups:
                self._pieces.join(group)

    def _is_faulty(self, piece: int) -> bool:
        shape, limits = self._pieces.shape(self._pieces.root(piece)), self._face.limits
        return shape.least < limits.least_side or is_over(shape, limits)

    def _is_wanted(self, run: Run) -> bool:
        """Whether a line that is still whole is wished for."""
        wanted = self._wanted[run.upright]
        return run.at in wanted and not any((o.upright, o.at) == (run.upright, run.at) for o in self.left_out)

    def _reach(self, run: Run) -> tuple[set[Run], list[set[int]]]:
        """A run with those that would have one panel at both hands without it, and the pieces that become one."""
        runs, groups, new = {run}, list[set[int]](), [run]
        while new:
            for one in new:
                groups = self._unite(groups, one)
            if any(self._is_past(group) for group in groups):
                break
            new = [other for group in groups for other in self._within(group) if other not in runs]
            runs.update(new)
        return runs, groups

    def _unite(self, groups: list[set[int]], run: Run) -> list[set[int]]:
        """Groups of pieces, those at either hand of a run in one."""
        for pair in self._pairs[run]:
            ends = {self._pieces.root(piece) for piece in pair}
            if len(ends) > 1:
                joined = [group for group in groups if group & ends]
                groups = [group for group in groups if group not in joined]
                groups.append(ends.union(*joined))
        return groups

    def _within(self, group: set[int]) -> list[Run]:
        """The runs of which a stretch has pieces of one group at both hands."""
        members = {member for one in group for member in self._pieces.members(one)}
        near = {run for member in members for run in self._at.get(member, ())} - self.left_out
        return sorted(run for run in near if any(a in members and b in members for a, b in self._pairs[run]))

    def _is_past(self, group: set[int]) -> bool:
        """Whether pieces put together are past a limit although none of them is."""
        width, height = self._pieces.extent(group)
        limits = self._face.limits
        wide = width > limits.max_width or height > limits.max_height
        return wide and not any(is_over(self._pieces.shape(one), limits) for one in group)

    def _count(self, shapes: list[Shape]) -> tuple[int, int, int]:
        """Pieces past a limit, those too narrow, and those past a wish."""
        limits = self._face.limits
        over = sum(is_over(shape, limits) for shape in shapes)
        narrow = sum(shape.least < limits.least_side for shape in shapes)
        return over, narrow, sum(is_past_wish(shape, self._wishes) for shape in shapes)
