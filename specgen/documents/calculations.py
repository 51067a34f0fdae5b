"""The calculations of a project as a document prints them: by group, calculation and form of the working."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.absence import Absent
from specgen.model.block import Equation
from specgen.model.field import Path, dotted_path
from specgen.model.problem import Refused
from specgen.model.source import Source
from specgen.model.working import InputRow, Lookup, Step, Working
from specgen.quantities.format import format_decimal, format_unit
from specgen.resolving.provider import GROUPS, Provider

Instances = dict[Path, Working]


@dataclass(frozen=True)
class Waiting:
    """A value that could not be computed: the missing fields, or why the inputs were refused."""

    provider: Provider
    member: Path
    paths: tuple[Path, ...]
    why: str = ""


@dataclass(frozen=True)
class CalculationValues:
    """All values of one calculation: workings, look-up results, and members that still lack data."""

    provider: Provider
    workings: Instances
    lookups: dict[Path, Lookup]
    waiting: tuple[Waiting, ...]

    @property
    def forms(self) -> tuple[Instances, ...]:
        """The workings grouped by form: same inputs, same steps, same units."""
        by_form: dict[Any, Instances] = {}
        for member, working in self.workings.items():
            by_form.setdefault(form(working), {})[member] = working
        return tuple(by_form.values())


def gather_calculations(context: DocumentContext) -> Iterator[CalculationValues]:
    """Every printed calculation with its values, in the order of the groups."""
    found = [p for p in map(context.resolve.find, context.resolve.names) if p.compute is not None and p.printed]
    for provider in sorted(found, key=lambda p: (list(GROUPS).index(p.group), p.order, p.name)):
        yield _gather_values(context, provider)


def list_waiting(context: DocumentContext) -> Iterator[str]:
    """The dotted paths that calculations wait for; of a collection that is missing as a whole, none of its fields."""
    for calculation in gather_calculations(context):
        for waiting in calculation.waiting:
            yield from (dotted_path(path[: path.index("*")] if "*" in path else path) for path in waiting.paths)


def _gather_values(context: DocumentContext, provider: Provider) -> CalculationValues:
    workings: Instances = {}
    lookups: dict[Path, Lookup] = {}
    waiting: list[Waiting] = []
    try:
        members = context.resolve.members(provider)
    except Absent as absent:
        return CalculationValues(provider, {}, {}, (Waiting(provider, (), (absent.path,)),))
    for member in members:
        try:
            value = context.resolve(member, provider.name)
        except Absent as absent:
            # The same field of further members is owed as well; another one may stand in its place.
            alike = (path for path in absent.paths if path[-1] == absent.path[-1])
            paths = dict.fromkeys((*context.resolve.missing(member, provider.name), *alike))
            # What does not apply here is not asked for: no power line, no distance from it.
            if asked := tuple(filter(context.project.applies, paths)):
                waiting.append(Waiting(provider, member, asked))
        except Refused as refused:
            waiting.append(Waiting(provider, member, (), "; ".join(p.message for p in refused.problems)))
        else:
            if isinstance(value, Working):
                workings[member] = value
            elif isinstance(value, Lookup):
                lookups[member] = value
    return CalculationValues(provider, workings, lookups, tuple(waiting))


def equal_in_all(workings: Instances, row: InputRow) -> bool:
    """Whether every working has this input with this figure."""
    key = (row.symbol, row.value, row.unit)
    return all(key in {(r.symbol, r.value, r.unit) for r in working.inputs} for working in workings.values())


def number_sheets(context: DocumentContext) -> dict[str, int]:
    """The number of each calculation that has a sheet, by its name."""
    found = [calculation.provider.name for calculation in gather_calculations(context) if calculation.workings]
    return {name: number for number, name in enumerate(found, 1)}


def form(working: Working) -> Any:
    """The key that two workings share when they have the same inputs and steps."""
    inputs = tuple((row.symbol, row.name, row.unit) for row in working.inputs)
    return inputs, tuple((step.symbol, step.name, step.expression, step.unit) for step in working.steps)


def equation(step: Step) -> Equation:
    """A step of a working as an equation block."""
    figure = format_decimal(step.value, 6)
    return Equation(step.name, step.symbol, step.expression, step.substitution, figure, format_unit(step.unit))


def sources(workings: Instances) -> tuple[Source, ...]:
    """The sources of several workings, each once."""
    return tuple(dict.fromkeys(source for working in workings.values() for source in working.source))


def weigh(working: Working) -> tuple[float, ...]:
    """What tells members apart whose results round to the same: the steps in the unit of the result, last first."""
    return tuple(abs(float(step.value)) for step in reversed(working.steps) if step.unit == working.unit)


def shared_notes(workings: Instances) -> tuple[str, ...]:
    """The notes common to all of the workings."""
    first, *others = workings.values()
    return tuple(note for note in first.notes if all(note in other.notes for other in others))
