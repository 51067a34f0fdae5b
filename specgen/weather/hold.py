"""How long warmth and dryness must last behind a step: as long as the trade asks for, and until the step is dry."""

from collections.abc import Iterable
from math import ceil
from typing import NamedTuple

from specgen.model.project import Project
from specgen.model.source import Source
from specgen.model.standard import Standards
from specgen.resolving.drying import find_drying
from specgen.resolving.limits_in_force import limit_in_force

# Adhesive and base coat, which set; the coats behind them have a row of their own.
EIFS_STEPS = ("boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass")
# What dries by its manufacturer's hours alone, and what weather no longer reaches once it is in.
_BY_MAKER, _NONE = "wrb", "sealant"


class Hold(NamedTuple):
    """Whole hours behind a step, and whose they are: those usual in the trade, or the longer ones of its drying."""

    hours: int
    source: Source
    dries: bool = False  # whether they are those of its drying


def find_hold(project: Project, standards: Standards, step: str, walls: Iterable[str]) -> Hold:
    """The hours behind a step on some walls: those usual in the trade, or its drying where that is longer."""
    usual = limit_in_force(project, standards.limits["weather.hold_eifs" if step in EIFS_STEPS else "weather.hold"])
    longest = Hold(0 if step in (_BY_MAKER, _NONE) else int(usual.value), usual.source)
    for wall in walls if step != _NONE else ():
        drying = find_drying(project, standards, step, wall)
        if drying is not None and drying.hours > longest.hours:
            longest = Hold(ceil(drying.hours), drying.source, dries=True)
    return longest
