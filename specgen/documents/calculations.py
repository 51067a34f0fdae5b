"""The calculations of a project as a document prints them: by group, by calculation, by the form of their sum."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.absence import Absent
from specgen.model.block import Equation
from specgen.model.field import Path
from specgen.model.problem import Refused
from specgen.model.source import Source
from specgen.model.working import Lookup, Step, Working
from specgen.quantities.format import format_decimal, format_unit
from specgen.resolving.provider import GROUPS, Provider

Instances = dict[Path, Working]


@dataclass(frozen=True)
class Waiting:
    """A value that could not be computed: the fields it waits for, or why its figures do not fit."""

    provider: Provider
    member: Path
    paths: tuple[Path, ...]
    why: str = ""


@dataclass(frozen=True)
class Computed:
    """All values of one calculation: workings, answers of look-ups, and what waits."""

    provider: Provider
    workings: Instances
    lookups: dict[Path, Lookup]
    waiting: tuple[Waiting, ...]

    @property
    def forms(self) -> tuple[Instances, ...]:
        """The workings by the form of their sum: same inputs, same lines, same units."""
        made: dict[Any, Instances] = {}
        for member, working in self.workings.items():
            made.setdefault(form(working), {})[member] = working
        return tuple(made.values())


def computed(context: DocumentContext) -> Iterator[Computed]:
    """Every calculation there is, in the order of the groups."""
    found = [p for p in map(context.resolve.find, context.resolve.names) if p.compute is not None and p.printed]
    for provider in sorted(found, key=lambda p: (list(GROUPS).index(p.group), p.order, p.name)):
        yield _computed(context, provider)


def _computed(context: DocumentContext, provider: Provider) -> Computed:
    workings: Instances = {}
    lookups: dict[Path, Lookup] = {}
    waiting: list[Waiting] = []
    try:
        members = context.resolve.members(provider)
    except Absent as absent:
        return Computed(provider, {}, {}, (Waiting(provider, (), (absent.path,)),))
    for member in members:
        try:
            value = context.resolve(member, provider.name)
        except Absent as absent:
            paths = dict.fromkeys((*context.resolve.missing(member, provider.name), absent.path))
            waiting.append(Waiting(provider, member, tuple(paths)))
        except Refused as refused:
            waiting.append(Waiting(provider, member, (), "; ".join(p.message for p in refused.problems)))
        else:
            if isinstance(value, Working):
                workings[member] = value
            elif isinstance(value, Lookup):
                lookups[member] = value
    return Computed(provider, workings, lookups, tuple(waiting))


def form(working: Working) -> Any:
    """What two workings have in common that are written with the same lines."""
    inputs = tuple((given.symbol, given.name, given.unit) for given in working.inputs)
    return inputs, tuple((step.symbol, step.name, step.expression, step.unit) for step in working.steps)


def equation(step: Step) -> Equation:
    """A line of a working as a block."""
    figure = format_decimal(step.value, 6)
    return Equation(step.name, step.symbol, step.expression, step.substitution, figure, format_unit(step.unit))


def sources(workings: Instances) -> tuple[Source, ...]:
    """The sources of several workings, each once."""
    return tuple(dict.fromkeys(source for working in workings.values() for source in working.source))


def shared_notes(workings: Instances) -> tuple[str, ...]:
    """The notes that all of several workings bear."""
    first, *others = workings.values()
    return tuple(note for note in first.notes if all(note in other.notes for other in others))
