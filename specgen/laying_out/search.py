"""The search for lines: each direction in turn by shortest paths, then paths of one direction in order of a bound."""

from bisect import bisect_left
from typing import NamedTuple

from specgen.laying_out.costs import Costs
from specgen.laying_out.face import Face, Length
from specgen.laying_out.paths import Graph, find_all_shortest, find_shortest, rank_paths
from specgen.laying_out.scoring import Wishes, count_unmirrored

Lines = tuple[int, ...]
# Work of the search, counted in strips so that the same project always has the same answer.
_MOST_ROUNDS = 4
_MOST_SMALL = 1000
_MOST_BOUND = 100_000  # strips looked at for the bound
_MOST_RANKED = 12_000  # strips and rows looked at for ranked paths
_MOST_STEPS = 20_000
_MOST_TIES = 300
_MOST_GRANTED = 60


class Problem(NamedTuple):
    """A face, what is wished of it, and the places at which lines may run; `fixed` ones are always cut."""

    face: Face
    wishes: Wishes
    upright: Lines
    level: Lines
    fixed_upright: frozenset[int]
    fixed_level: frozenset[int]


class Key(NamedTuple):
    """What lines are compared by, the most important first; lengths in ticks."""

    over: int
    slivers: int
    missed: int
    past_wish: int
    length: int
    inequality: float
    asymmetry: int


class Found(NamedTuple):
    """The best lines found, and the least over, slivers, missed, past_wish and length that any lines could have."""

    upright: Lines
    level: Lines
    key: Key
    bound: tuple[int, int, int, int, int]

    @property
    def is_proved(self) -> bool:
        """Whether no lines over the same places do better, but for what makes panels alike."""
        return self.key[:5] <= self.bound


class Search:
    """Finds lines for one problem; every step is counted."""

    def __init__(self, problem: Problem, *, slivers: bool = True) -> None:
        self.problem, self.costs = problem, Costs(problem.face, problem.wishes, slivers=slivers)
        face = problem.face
        self._places = {True: (0, *problem.upright, face.width), False: (0, *problem.level, face.height)}
        self._fixed = {True: problem.fixed_upright, False: problem.fixed_level}
        self._most = {True: face.limits.max_width, False: face.limits.max_height}
        self._strips = {way: _count_strips(self._places[way], self._most[way]) for way in (True, False)}
        self._rows: dict[tuple[int, int, frozenset[int]], int] = {}
        self._known: dict[tuple[Lines, Lines], Key] = {}

    def find(self) -> Found:
        """The best lines found and the bound they are held against."""
        best = self._alternate()
        bound = self._bound_apart(best)
        if self._strips[True] * self._strips[False] <= _MOST_BOUND:
            best, bound = self._rank(best)
        if not self.is_small:
            best = self._grant(best)
        return Found(*best, self.key(*best), bound)

    def key(self, upright: Lines, level: Lines) -> Key:
        """What lines are compared by."""
        known = self._known.get((upright, level))
        if known is None:
            known = self._known[upright, level] = self._judge(upright, level)
        return known

    @property
    def is_small(self) -> bool:
        """Whether there is time for several starts and for questions beside them."""
        return self._strips[True] + self._strips[False] <= _MOST_SMALL

    def force(self, upright: bool, at: int, found: Found) -> tuple[tuple[int, int, int, int, int], Length] | None:
        """The digits of the best lines of one direction that run at a place too, and the least side of any panel.

        None where no line may run there.
        """
        if at not in self._places[upright]:
            return None
        other = found.level if upright else found.upright
        graph = self._graph(upright, other)
        cost, lines = find_shortest(graph._replace(fixed=graph.fixed | {at}))
        cost += sum(self.costs.line(not upright, line) for line in other)
        ways = (lines, other) if upright else (other, lines)
        columns, rows = (0, *ways[0], self.problem.face.width), (0, *ways[1], self.problem.face.height)
        return self.decode(cost), min(least for *_, least in self.costs.all_sides(columns, rows))

    def add(self, upright: bool, at: int, lines: tuple[Lines, Lines]) -> tuple[int, int, Length]:
        """How many more panels are past a limit and too narrow with one line more, and the least side beside it."""
        face, costs = self.problem.face, self.costs
        own, other = lines if upright else lines[::-1]
        cuts = (0, *other, face.height if upright else face.width)
        number = bisect_left(own, at)
        before = own[number - 1] if number else 0
        behind = own[number] if number < len(own) else face.width if upright else face.height
        whole = list(costs.strip_sides(upright, before, behind, cuts))
        parts = [side for ends in ((before, at), (at, behind)) for side in costs.strip_sides(upright, *ends, cuts)]
        (over, narrow), (more_over, more_narrow) = costs.count_faults(whole), costs.count_faults(parts)
        return more_over - over, more_narrow - narrow, min(least for *_, least in parts)

    def _grant(self, best: tuple[Lines, Lines]) -> tuple[Lines, Lines]:
        """Lines with those wished for that do no harm, the most wished for first; thinned places may miss some."""
        lines = {True: best[0], False: best[1]}
        wishes = self.problem.wishes
        wanted = [(-times, True, at) for at, times in wishes.upright]
        # Level lines may be held to those that are given beyond a corner.
        wanted += [(-times, False, at) for at, times in wishes.level if at in self._places[False]]
        for _, way, at in sorted(wanted)[:_MOST_GRANTED]:
            if at not in lines[way] and max(self.add(way, at, (lines[True], lines[False]))[:2]) <= 0:
                lines[way] = tuple(sorted((*lines[way], at)))
        return lines[True], lines[False]

    def _judge(self, upright: Lines, level: Lines) -> Key:
        costs, face = self.costs, self.problem.face
        cost = self._cost(upright, level)
        sides = costs.all_sides((0, *upright, face.width), (0, *level, face.height))
        areas = [area for _, _, area, _ in sides]
        unlike = float(max(areas) - min(areas)) if areas else 0.0
        return Key(*self.decode(cost), unlike, count_unmirrored(face.width, upright, {*upright}))

    def _cost(self, upright: Lines, level: Lines) -> int:
        graph, places = self._graph(True, level), (0, *upright, self.problem.face.width)
        strips = sum(graph.strip(a, b) for a, b in zip(places, places[1:], strict=False))
        return strips + sum(map(graph.line, upright)) + sum(self.costs.line(False, at) for at in level)

    def decode(self, cost: int) -> tuple[int, int, int, int, int]:
        """A cost as its digits: panels over, slivers, missed, past the wish, length."""
        c = self.costs
        rest, digits = cost + c.all_wanted(), []
        for place in (c.over, c.sliver, c.missed, c.past, c.length):
            digit, rest = divmod(rest, place)
            digits.append(digit)
        return digits[0], digits[1], digits[2], digits[3], digits[4]

    def _graph(self, upright: bool, others: Lines) -> Graph:
        face, costs = self.problem.face, self.costs
        cuts = (0, *others, face.height if upright else face.width)
        return Graph(
            self._places[upright],
            self._fixed[upright],
            lambda start, end: costs.strip(upright, start, end, cuts),
            lambda at: costs.line(upright, at),
            self._most[upright],
            costs.over,
        )

    def _alternate(self) -> tuple[Lines, Lines]:
        """Lines of each direction in turn, from several starts, until neither gets better."""
        best: tuple[Lines, Lines] | None = None
        for first, start in self._starts():
            pair = self._settle(first, start)
            if best is None or self.key(*pair) < self.key(*best):
                best = pair
        assert best is not None
        return best

    def _starts(self) -> list[tuple[bool, Lines]]:
        """Lines to begin with: of either direction, the fewest joints that keep to the limits by themselves."""
        starts = [(way, self._spread(way)) for way in (True, False)]
        if not self.is_small:
            return starts[1:]
        wanted = {True: self.problem.wishes.upright, False: self.problem.wishes.level}
        return starts + [(way, self._spread(way, frozenset(at for at, _ in wanted[way]))) for way in (True, False)]

    def _spread(self, upright: bool, wanted: frozenset[int] = frozenset()) -> Lines:
        """The lines of one direction by themselves: the shortest that leave no clear stretch past a limit."""
        return find_shortest(self._graph_apart(upright, wanted))[1]

    def _graph_apart(self, upright: bool, wanted: frozenset[int]) -> Graph:
        most, costs = self._most[upright], self.costs

        def strip(start: int, end: int) -> int:
            # The square of its side makes alike what is free.
            return (costs.over if costs.is_past(upright, start, end, most) else 0) + (end - start) ** 2

        fixed = self._fixed[upright] | wanted.intersection(self._places[upright])
        return Graph(self._places[upright], fixed, strip, lambda at: costs.line(upright, at), most, costs.over)

    def _settle(self, way: bool, lines: Lines) -> tuple[Lines, Lines]:
        """Better lines of the one direction, then of the other, as long as that helps."""
        pair, best = {way: lines}, None
        for _ in range(_MOST_ROUNDS if self.is_small else _MOST_ROUNDS - 1):
            way = not way
            pair[way] = find_shortest(self._graph(way, pair[not way]))[1]
            if len(pair) == 2:
                cost = self._cost(pair[True], pair[False])
                if best is not None and cost >= best:
                    break
                best = cost
        return pair[True], pair[False]

    def _needed(self, best: tuple[Lines, Lines], bound: tuple[int, int, int, int, int]) -> dict[bool, frozenset[int]]:
        """The lines that better ones need too: all wanted ones, where the best so far miss none."""
        key, wishes = self.key(*best), self.problem.wishes
        if key[:2] != bound[:2] or key.missed:
            return {True: frozenset(), False: frozenset()}
        return {True: frozenset(at for at, _ in wishes.upright), False: frozenset(at for at, _ in wishes.level)}

    def _bound_apart(self, best: tuple[Lines, Lines]) -> tuple[int, int, int, int, int]:
        """A bound from each direction by itself: no layout has less of its joints."""
        needed = self._needed(best, (0, 0, 0, 0, 0))
        costs = self.costs
        granted = costs.all_wanted()
        total = 0
        for way in (True, False):
            cost, lines = find_shortest(self._graph_apart(way, needed[way]))
            total += costs.main(cost + sum(costs.granted(way, at) for at in lines)) * costs.length
        return self.decode(total - granted)

    def _rank(self, best: tuple[Lines, Lines]) -> tuple[tuple[Lines, Lines], tuple[int, int, int, int, int]]:
        """Level lines in the order of a bound, each with its best upright ones, until none can be better."""
        bound = self.decode(
            find_shortest(self._graph_bound(self._needed(best, (-1, -1, 0, 0, 0))))[0] - self._granted()
        )
        needed = self._needed(best, bound)
        graph = self._graph_bound(needed)
        work = 0
        for cost, level in rank_paths(graph, _MOST_STEPS):
            bound = self.decode(cost - self._granted())
            if bound > self.key(*best)[:5]:
                return best, self.key(*best)[:5]
            if work > _MOST_RANKED:
                return best, bound
            ties = list(find_all_shortest(self._graph(True, level), self.costs.length, _MOST_TIES))
            work += self._strips[True] + len(ties) * (len(level) + 1)
            best = min((best, *((upright, level) for upright in ties)), key=lambda pair: self.key(*pair))
        return best, max(bound, self.key(*best)[:5]) if work <= _MOST_RANKED else bound

    def _granted(self) -> int:
        """What upright lines could grant at most; the bound of the level ones leaves it out."""
        return sum(self.costs.granted(True, at) for at, _ in self.problem.wishes.upright)

    def _graph_bound(self, needed: dict[bool, frozenset[int]]) -> Graph:
        """Level lines, each row between them with the upright lines that are best for it alone."""
        costs, places = self.costs, self._places[True]
        fixed = self._fixed[True] | needed[True].intersection(places)

        def row(low: int, high: int) -> int:
            known = self._rows.get((low, high, fixed))
            if known is not None:
                return known
            graph = Graph(
                places,
                fixed,
                lambda start, end: costs.strip(True, start, end, (low, high)),
                lambda at: costs.line_within(at, low, high),
                self._most[True],
                costs.over,
            )
            cost = self._rows[low, high, fixed] = find_shortest(graph)[0]
            return cost

        return Graph(
            self._places[False],
            self._fixed[False] | needed[False].intersection(self._places[False]),
            row,
            lambda at: costs.line(False, at),
            self._most[False],
            costs.over,
        )


def _count_strips(places: Lines, most: int) -> int:
    """About how many strips a shortest path looks at."""
    if len(places) <= 48:
        return len(places) * (len(places) - 1) // 2
    first = count = 0
    for last, at in enumerate(places):
        while places[first] < at - most:
            first += 1
        count += last - first + 1
    return count
