"""Shortest paths over the places for lines: the best lines of one direction, those of the other given."""

import heapq
from collections.abc import Callable, Iterator
from typing import NamedTuple

Cost = Callable[[int, int], int]  # of the strip between two places
LineCost = Callable[[int], int]

# Up to so many places every strip is tried; beyond, none past the first that has a panel over the limits.
_TRY_ALL = 48


class Graph(NamedTuple):
    """Places from one end to the other, those that no path may leave out, and what strips and lines cost."""

    places: tuple[int, ...]  # with both ends
    fixed: frozenset[int]
    strip: Cost
    line: LineCost
    most: int  # a strip wider than this has a panel over the limits wherever no opening divides it
    too_much: int  # the cost from which on a strip has one

    def starts(self, end: int) -> Iterator[int]:
        """The numbers of the places at which a strip that ends at one may begin, the nearest first."""
        for start in range(end - 1, -1, -1):
            yield start
            if self.places[start] in self.fixed:
                return

    def strips(self, end: int) -> Iterator[tuple[int, int]]:
        """The strips that end at a place: the number of where each begins, and its cost with that of the line."""
        line = self.line(self.places[end]) if end < len(self.places) - 1 else 0
        for number, start in enumerate(self.starts(end)):
            cost = self.strip(self.places[start], self.places[end])
            yield start, cost + line
            wide = self.places[end] - self.places[start] > self.most
            if number and wide and cost >= self.too_much and len(self.places) > _TRY_ALL:
                return


def find_shortest(graph: Graph) -> tuple[int, tuple[int, ...]]:
    """The least cost and the lines that have it."""
    best: list[tuple[int, int]] = [(0, 0)]
    for end in range(1, len(graph.places)):
        best.append(min((best[start][0] + cost, start) for start, cost in graph.strips(end)))
    lines, number = [], best[-1][1]
    while number:
        lines.append(graph.places[number])
        number = best[number][1]
    return best[-1][0], tuple(reversed(lines))


def find_all_shortest(graph: Graph, digit: int, most: int) -> Iterator[tuple[int, ...]]:
    """Lines of the least cost but for its last digits below `digit`, up to so many."""
    into: list[list[tuple[int, int]]] = [[]]
    best = [0]
    for end in range(1, len(graph.places)):
        into.append([(start, cost // digit) for start, cost in graph.strips(end)])
        best.append(min(best[start] + cost for start, cost in into[end]))
    stack: list[tuple[int, tuple[int, ...]]] = [(len(graph.places) - 1, ())]
    found = 0
    while stack and found < most:
        end, behind = stack.pop()
        for start, cost in into[end]:
            if best[start] + cost == best[end]:
                if start:
                    stack.append((start, (graph.places[start], *behind)))
                else:
                    found += 1
                    yield behind


def rank_paths(graph: Graph, most: int) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Lines in the order of their cost, the least first; gives up behind so many steps."""
    onward: list[list[tuple[int, int]]] = [[] for _ in graph.places]
    for end in range(1, len(graph.places)):
        for start, cost in graph.strips(end):
            onward[start].append((end, cost))
    last = len(graph.places) - 1
    left: list[int | None] = [None] * last + [0]
    for start in range(last - 1, -1, -1):
        ways = [cost + rest for end, cost in onward[start] if (rest := left[end]) is not None]
        left[start] = min(ways) if ways else None
    queue: list[tuple[int, int, int, tuple[int, ...]]] = [(left[0] or 0, 0, 0, ())]
    for _ in range(most):
        if not queue:
            return
        total, spent, here, lines = heapq.heappop(queue)
        if here == last:
            yield total, lines
            continue
        for end, cost in onward[here]:
            rest = left[end]
            if rest is not None:
                path = lines if end == last else (*lines, graph.places[end])
                heapq.heappush(queue, (spent + cost + rest, spent + cost, end, path))
