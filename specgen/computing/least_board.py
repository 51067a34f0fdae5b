"""Least insulation board of a wall of a project: the sum of board-thickness by the name that rules ask for."""

from dataclasses import replace

from ..vocabulary.project import View
from ..vocabulary.provider import Ask, Provider
from ..vocabulary.working import Working


def for_wall(wall: View, ask: Ask) -> Working:
    """The least board of a wall, in inches or millimeters."""
    made: Working = ask("board-thickness")
    return replace(made, name="least-board")


PROVIDER = Provider(
    "least-board",
    "Least board of a wall",
    ("walls",),
    for_wall,
    needs=("board-thickness",),
    units=("in", "mm"),
)
