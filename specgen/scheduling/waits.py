"""The waits behind a step on an elevation: what dries, cures or is planned to wait, with where its hours stand."""

from collections.abc import Iterator
from datetime import timedelta
from fractions import Fraction
from typing import NamedTuple

from specgen.computing.calendars import to_stretch
from specgen.model.absence import Absent
from specgen.model.field import dotted_path
from specgen.model.project import Project
from specgen.model.source import Kind, Source
from specgen.model.standard import Standards
from specgen.model.typed_views import Description
from specgen.resolving.drying import find_drying, list_applying
from specgen.resolving.limits_in_force import limit_in_force

_SEALANT_ROW = {True: "sealant.before_gloss", False: "sealant.pull_cure"}
_HOURS_OF_DAY = 24


class Wait(NamedTuple):
    """A stretch of the clock behind a step, and the source of its hours."""

    length: timedelta
    source: Source | None


class Gap(NamedTuple):
    """A wait that the project plans from one step to another."""

    mark: str
    to_step: str
    wait: Wait


def find_wait(project: Project, standards: Standards, step: str, wall: str) -> Wait | None:
    """What dries or cures behind a step on a wall; None where nothing does.

    Raises Absent where no hours are told.
    """
    paths = list_applying(project, step, wall)
    if not paths:
        return None
    drying = find_drying(project, standards, step, wall)
    if drying is None:
        raise Absent(*paths)
    return Wait(to_stretch(drying.hours), drying.source)


def find_tape_stay(project: Description) -> timedelta | None:
    """How long masking tape may stay on a wall; None where no tape tells it."""
    listed = project.accessories if project.accessories.is_given() else ()
    told = [days for one in listed if one.get("kind") == "masking_tape" and (days := one.get("most_days")) is not None]
    return to_stretch(Fraction(min(told)) * _HOURS_OF_DAY) if told else None


def is_sealed_first(project: Description) -> bool:
    """Whether all sealants are installed before the gloss."""
    sealants = list(project.sealants) if project.sealants.is_given() else []
    return bool(sealants) and all(sealant.get("sequence") == "before_gloss" for sealant in sealants)


def find_sealant_cure(project: Description, standards: Standards) -> Wait:
    """The longest cure of any sealant: before the gloss that follows it, else before its hand pull."""
    first = is_sealed_first(project)
    name, unit = ("cure_hours", 1) if first else ("pull_cure_days", _HOURS_OF_DAY)
    sealants = list(project.sealants) if project.sealants.is_given() else []
    told = [(Fraction(sealant.get(name)), sealant) for sealant in sealants if sealant.get(name) is not None]
    if told:
        hours, sealant = max(told, key=lambda one: one[0])
        path = (*sealant.path, name)
        if path in project.project.values:
            return Wait(to_stretch(hours * unit), Source(Kind.PROJECT, dotted_path(path)))
    figure = limit_in_force(project.project, standards.limits[_SEALANT_ROW[first]])
    return Wait(to_stretch(Fraction(figure.value) * unit), figure.source)


def list_gaps(project: Description, step: str, drying: Wait | None) -> Iterator[Gap]:
    """The planned waits behind a step that are longer than what dries behind it."""
    if not project.schedule.gaps.is_given():
        return
    for gap in project.schedule.gaps:
        hours, to_step = gap.get("hours"), gap.get("to_step")
        if gap.get("from_step") != step or hours is None or to_step is None:
            continue
        length = to_stretch(Fraction(hours))
        if drying is None or length > drying.length:
            source = Source(Kind.PROJECT, dotted_path((*gap.path, "hours")))
            yield Gap(gap.mark, to_step, Wait(length, source))
