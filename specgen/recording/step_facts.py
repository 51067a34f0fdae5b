"""What a step asks for on a wall before the next: hours, coats, and whose release."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from typing import NamedTuple

from specgen.model.field import Path, dotted_path
from specgen.model.project import Project
from specgen.model.source import Basis, Kind, Source
from specgen.model.standard import Standards, Step
from specgen.model.status import Hours, Party
from specgen.recording.site_entries import hours_after
from specgen.resolving.drying import BETWEEN, DRYING, Drying, find_drying
from specgen.resolving.limits_in_force import maker_source
from specgen.scheduling.applying import list_steps
from specgen.scheduling.releases import find_releasing_role, name_releaser

# Of this step alone an entry tells its coat.
_COATS: dict[str, Path] = {"gloss": ("gloss", "coats")}
_BETWEEN_COATS: dict[str, Path] = {"gloss": ("gloss", "touch_dry_hours")}
_MOST_HOURS: dict[str, Path] = {name: (name, "most_recoat_hours") for name in ("primer", "gloss")}


class Between(NamedTuple):
    """The least hours between two coats of a step, None where they are not known, and the coats it has."""

    coats: int
    hours: Hours | None


@dataclass(frozen=True)
class StepFacts:
    """What a step asks for on one wall."""

    step: Step
    hours: Hours | None  # before the next step; None where nothing dries, or where they are not known
    dries: bool
    between: Between
    most_hours: Fraction | None  # within which the next coat follows
    releaser: Party | None  # of a hold point
    in_order: bool  # whether its beginning shows that the steps before it are over

    def dry_from(self, ended: datetime | None) -> datetime | None:
        """When work that ended at a moment is dry; None where nothing dries or the hours are not known."""
        return None if ended is None or self.hours is None else hours_after(ended, self.hours.hours)

    @property
    def holds(self) -> bool:
        """Whether the next step waits for a release."""
        return self.step.point == "H"


def list_facts(project: Project, standards: Standards, wall: str) -> tuple[StepFacts, ...]:
    """The facts of each step that a wall takes, in the order of the work."""
    return tuple(_list_facts(project, standards, wall))


def _list_facts(project: Project, standards: Standards, wall: str) -> Iterator[StepFacts]:
    for step in list_steps(project, standards, wall):
        name = step.releases or step.name
        dries = name in DRYING or name in BETWEEN
        hours = _find_hours(project, standards, name, wall) if dries else None
        most = project.get(_MOST_HOURS[name]) if name in _MOST_HOURS else None
        coats = 1 if name not in _COATS else max(int(project.get(_COATS[name]) or 1), 1)
        yield StepFacts(
            step=step,
            hours=hours,
            dries=dries,
            between=Between(coats, _find_between(project, name)),
            most_hours=None if most is None else Fraction(most),
            releaser=_find_releaser(project, step),
            in_order=_is_in_order(project, step, dries),
        )


def _find_hours(project: Project, standards: Standards, step: str, wall: str) -> Hours | None:
    drying = find_drying(project, standards, step, wall)
    if drying is None:
        return None
    return Hours(drying.hours, _say_where(drying))


def _say_where(drying: Drying) -> str:
    """Where hours stand: `primer.dry_hours`, with whose figure it is where the project does not give it itself."""
    source, field = drying.source, dotted_path(drying.path)
    if source.kind is Kind.PROJECT:
        return field
    of_other = source.kind in (Kind.ANSWER, Kind.MAKER) and field
    return f"{field}, {_say_source(source)}" if of_other else _say_source(source)


def _find_between(project: Project, step: str) -> Hours | None:
    path = _BETWEEN_COATS.get(step)
    hours = project.get(path) if path else None
    return None if path is None or hours is None else Hours(Fraction(hours), _tell_field(project, path))


def _tell_field(project: Project, path: Path) -> str:
    """`primer.dry_hours`, with the manufacturer's document where its figure is that."""
    behind = f", {_say_source(maker_source(project, path))}" if path in project.from_maker else ""
    return f"{dotted_path(path)}{behind}"


def _say_source(source: Source) -> str:
    return str(Basis((source,)))


def _find_releaser(project: Project, step: Step) -> Party | None:
    if step.point != "H":
        return None
    return Party(find_releasing_role(project, step), name_releaser(project, step))


def _is_in_order(project: Project, step: Step, dries: bool) -> bool:
    """Whether a step stands in the chain: preparation and cleaning recur, and sealant may go before the gloss."""
    if step.name == "sealant":
        sealants = project.members.get(("sealants",), ())
        return not any(project.get(("sealants", mark, "sequence")) == "before_gloss" for mark in sealants)
    return not step.once and (step.point in "HW" or dries)
