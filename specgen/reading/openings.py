"""Openings of one elevation that overlap, where their places are known."""

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from specgen.model.field import Path
from specgen.model.project import Project

_SIDES = ("x", "y", "width", "height")


class _Opening(NamedTuple):
    """The edges of an opening in base units of length, and its number in the file."""

    left: Fraction
    right: Fraction
    foot: Fraction
    head: Fraction
    number: int
    path: Path


def find_overlapping(project: Project, face: Path) -> Iterator[tuple[Path, str, str]]:
    """Each opening that lies over an earlier one of the file: its path, a message, a hint; edges may touch."""
    openings = sorted(_placed_openings(project, face))
    told: set[Path] = set()
    for n, one in enumerate(openings):
        # They stand from left to right: behind the first one that begins beyond the right edge none overlaps.
        for m in range(n + 1, len(openings)):
            other = openings[m]
            if other.left >= one.right:
                break
            if one.foot < other.head and other.foot < one.head:
                first, second = (one, other) if one.number < other.number else (other, one)
                if second.path not in told:
                    told.add(second.path)
                    where = f"{first.path[-1]} in line {project.place(first.path).line}"
                    yield second.path, f"the opening overlaps {where}", "move one of the two or correct its size"


def _placed_openings(project: Project, face: Path) -> Iterator[_Opening]:
    for number, mark in enumerate(project.members.get((*face, "openings"), ())):
        path = (*face, "openings", mark)
        sides = [project.values[*path, name].amount for name in _SIDES if (*path, name) in project.values]
        if len(sides) == len(_SIDES):
            x, y, width, height = sides
            yield _Opening(x, x + width, y, y + height, number, path)
