"""Marks and numbers told as ranges: `E1 to E200 (200)`."""

import re
from collections.abc import Iterable, Sequence

# Fewer than these, one after the other, are named one by one; of more pieces the number alone is told.
_LEAST_RUN, _MOST_PIECES = 3, 12
_NUMBERED = re.compile(r"(.*?)([1-9]\d{0,8})")


def join_marks(marks: Iterable[str], most: int = _MOST_PIECES) -> str:
    """Marks in their order, those that count on as a range; behind `most` pieces how many more there are."""
    pieces = [piece for run in _find_runs(marks) for piece in _tell_run(run)]
    told = ", ".join(text for text, _ in pieces[:most])
    more = sum(number for _, number in pieces[most:])
    return f"{told} and {more:,} more" if more else told


def _find_runs(marks: Iterable[str]) -> list[list[str]]:
    """The marks, in one run those of which each is the next number of the one before."""
    runs: list[list[str]] = []
    wanted: tuple[str, int] | None = None
    for mark in marks:
        numbered = _NUMBERED.fullmatch(mark)
        here = (numbered[1], int(numbered[2])) if numbered else None
        if here is not None and here == wanted:
            runs[-1].append(mark)
        else:
            runs.append([mark])
        wanted = (here[0], here[1] + 1) if here is not None else None
    return runs


def _tell_run(run: Sequence[str]) -> list[tuple[str, int]]:
    """The pieces that a run is told by, each with the number of its marks."""
    if len(run) < _LEAST_RUN:
        return [(mark, 1) for mark in run]
    return [(f"{run[0]} to {run[-1]} ({len(run):,})", len(run))]
