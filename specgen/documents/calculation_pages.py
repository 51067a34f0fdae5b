"""The calculations as templates print them: groups of sheets, each given, criteria, calculation, conclusion."""

from dataclasses import dataclass, replace
from itertools import groupby
from typing import Any

from specgen.documents.calculations import (
    CalculationValues,
    Instances,
    equal_in_all,
    equation,
    gather_calculations,
    number_sheets,
    shared_notes,
    sources,
    weigh,
)
from specgen.documents.column_symbols import name_symbols
from specgen.documents.comparisons import Conclusion, conclude, state
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue, Record
from specgen.documents.layer_table import first_of_each, layers, of_layers
from specgen.documents.members import full_name, mark, marks, name_sheets
from specgen.documents.page_figures import CONSTANT_DIGITS, INCH_OF_MERCURY, figure
from specgen.documents.sheet_steps import steps_shown, steps_worked, symbols_of
from specgen.documents.views.workings import (
    Numbers,
    constants,
    formulas,
    given,
    given_in_line,
    in_columns,
    members,
    result,
    said_by_all,
    step_key,
    steps_in_full,
    total,
)
from specgen.model.block import Equation
from specgen.model.field import Path
from specgen.model.source import Kind
from specgen.model.working import InputRow, Step, Working
from specgen.resolving.provider import GROUPS, Provider

Concluded = dict[Path, tuple[Conclusion, ...]]


@dataclass(frozen=True, kw_only=True)
class Sheet(Record):
    """A calculation: the member that governs is worked in full, the others stand in a table."""

    number: int  # by which other sheets name it
    title: str  # of the calculation
    member: str  # the one that is worked in full; empty where all stand in the table, or the project has one
    similar: str  # marks of the others that are held against the same
    informed: str  # marks of those that nothing is held against, where it is of the member in full
    given: TableView  # inputs of the member in full, with their sources
    given_in_line: list[Any]  # the same, where they are few or all members stand in the table
    constants: list[Any]  # of the method, as far as the formulas of the sheet use them
    criteria: tuple[str, ...]  # what is held against what
    steps: TableView  # of the member in full
    formulas: list[Any]  # where all stand in the table; else those of other members that the steps do not show
    formulas_of: str  # the marks of these other members
    result: str  # of the member in full
    beside: tuple[str, ...]  # further results of it
    total: str  # of the results of all members, where they add up to one that is wanted
    conclusions: tuple[list[Any], ...]  # demand, limit, ratio and status
    members: tuple[TableView, ...]  # tables of all members
    symbols: list[Any]  # what the symbols at their heads mean
    layers: tuple[tuple[str, TableView], ...]  # of walls: the mark, and the table of its layers
    notes: tuple[str, ...]  # assumptions and limits
    sources: tuple[DisplayValue, ...]  # of the method, as their letters print; none for what the formulas alone show
    lines: tuple[Equation, ...]  # the steps of the member in full, each as a display of its own


@dataclass(frozen=True)
class GroupPage(Record):
    """The sheets of one group."""

    title: str
    sheets: tuple[Sheet, ...]


def calculation_pages(context: DocumentContext) -> tuple[GroupPage, ...]:
    """Every calculation that the project has data for, by group."""
    with_workings = [calculation for calculation in gather_calculations(context) if calculation.workings]
    writer = SheetWriter(context, number_sheets(context), {}, {})
    return tuple(
        GroupPage(GROUPS[group], tuple(writer.write(calculation) for calculation in run))
        for group, run in groupby(with_workings, key=lambda calculation: calculation.provider.group)
    )


@dataclass
class SheetWriter:
    """Writes the sheets in their order; `known` holds the formulas of earlier sheets by the sheet they stand on."""

    context: DocumentContext
    numbers: Numbers
    known: dict[Any, int]
    told: dict[str, int]  # notes by the sheet they stand on

    def write(self, calculation: CalculationValues) -> Sheet:
        """The sheet of a calculation."""
        provider, context = calculation.provider, self.context
        calculation, concluded, member = self._govern(calculation)
        working, several = (workings := calculation.workings)[member], len(calculation.workings) > 1
        tabled = bool(provider.columns) and (several or len(working.inputs) > MOST_GIVEN)
        alike, informed = _sort_others(workings, member, concluded)
        rows, shown = self._given(calculation, member, tabled), self._steps(calculation, working)
        (unlike, more), said = self._other_steps(calculation, shown), said_by_all(workings)
        more = more if tabled or unlike else _list_behind(working, rows, shown, concluded[member])
        in_line = tabled or len(rows) + len(said) <= FEW
        told = members(context, provider, workings, concluded) if several or tabled else ()
        sheet = Sheet(
            number=self.numbers[provider.name],
            title=provider.title,
            member="" if tabled or not member else full_name(context, member),
            similar="" if tabled else marks(alike),
            informed="" if tabled else marks(informed),
            given=given(context, member, [] if in_line else rows, () if in_line else said, self.numbers),
            given_in_line=given_in_line(context, member, rows, said, self.numbers) if in_line else [],
            constants=self._constants(workings, member, shown + more),
            criteria=tuple(f"{one.check.demand} against {one.check.limit}" for one in concluded[member]),
            steps=steps_in_full(context, [] if tabled else shown, self.known, provider.layered),
            formulas=formulas(shown + more if tabled else more),
            formulas_of="" if tabled else marks([mark(other) for other in unlike]),
            result=result(context, provider, working),
            beside=() if tabled else self._beside(calculation, working, concluded[member]),
            total=total(context, workings) if provider.adds and several else "",
            conclusions=tuple(state(context, one, several) for one in _governing_each(workings, concluded)),
            members=told if tabled or any(len(view) > 1 for view in told) else (),
            symbols=name_symbols(provider, workings) if several else [],
            layers=tuple((mark(m), layers(context, m, w)) for m, w in workings.items()) if provider.layered else (),
            notes=self._notes_of(provider, workings, member, shown),
            sources=_letters(provider.title, workings),
            lines=tuple(map(equation, working.steps)),
        )
        if not tabled:
            for step in shown:
                self.known.setdefault(step_key(step), sheet.number)
        return sheet

    def _govern(self, calculation: CalculationValues) -> tuple[CalculationValues, Concluded, Path]:
        """The calculation with its capacities, the conclusions of its members, and the member that governs."""
        concluded = {member: conclude(self.context, calculation.provider, member) for member in calculation.workings}
        workings = {member: _with_capacities(w, concluded[member]) for member, w in calculation.workings.items()}
        return replace(calculation, workings=workings), concluded, find_governing(workings, concluded)

    def _notes_of(self, provider: Provider, workings: Instances, member: Path, shown: list[Step]) -> tuple[str, ...]:
        """The notes of a sheet: those that all its members share, and what is to be said of units."""
        notes = shared_notes(workings) if len(workings) > 1 else workings[member].notes
        of_each = (ALIKE,) if provider.layered else ()
        return self._notes((*notes, *of_each, *self._tell_units(shown)), self.numbers[provider.name])

    def _given(self, calculation: CalculationValues, member: Path, tabled: bool) -> list[InputRow]:
        """Inputs of the member and its capacities, without the constants and what the tables show."""
        workings, provider = calculation.workings, calculation.provider
        apart = {row.symbol for row in (*constants(workings), *in_columns(provider, workings))}
        rows = [row for row in workings[member].inputs if row.symbol not in apart]
        used = {name for working in workings.values() for name in symbols_of(working.steps)}
        rows = [row for row in rows if row.value or row.symbol in used]  # no shear enters no formula
        resting = used if tabled else symbols_of(steps_shown(provider, workings[member]))
        # What another calculation gives and no step shown takes is not given here.
        rows = [row for row in rows if row.symbol in resting or row.origin not in self.context.resolve.names]
        if tabled:
            rows = [row for row in rows if len(workings) > 1 and equal_in_all(workings, row)]
        if tabled or provider.layered:
            rows = [row for row in rows if not of_layers(row)]
        return rows

    def _constants(self, workings: Instances, member: Path, steps: list[Step]) -> list[Any]:
        """The constants in the formulas of steps; a factor of one without a unit says nothing."""
        used = symbols_of(steps)
        rows = [row for row in constants(workings) if row.symbol in used and (row.value != 1 or row.unit)]
        return given_in_line(self.context, member, rows, (), self.numbers, CONSTANT_DIGITS)

    def _tell_units(self, steps: list[Step]) -> tuple[str, ...]:
        """What an inch-pound set says of steps in SI."""
        units = {step.unit for step in steps if self.context.first == "ip"}
        return tuple(told for unit, told in TOLD_UNITS.items() if unit in units)

    def _notes(self, notes: tuple[str, ...], number: int) -> tuple[str, ...]:
        """The notes that no earlier sheet tells, and which sheets tell the others."""
        earlier = sorted({self.told[note] for note in notes if note in self.told})
        fresh = tuple(note for note in notes if note not in self.told)
        self.told |= dict.fromkeys(fresh, number)
        known = (f"As {name_sheets(earlier)}.",) if earlier else ()
        return (*known, *map(self.context.tell, fresh))

    def _steps(self, calculation: CalculationValues, working: Working) -> list[Step]:
        shown = steps_shown(calculation.provider, working)
        return first_of_each(shown) if calculation.provider.layered else shown

    def _other_steps(self, calculation: CalculationValues, shown: list[Step]) -> tuple[list[Path], list[Step]]:
        """The members with formulas that a sheet does not show yet, and these steps; layers stand in tables."""
        seen, found = {step_key(step) for step in shown}, dict[Any, Step]()
        unlike: list[Path] = []
        for form in () if calculation.provider.layered else calculation.forms:
            steps = self._steps(calculation, next(iter(form.values())))
            fresh = [step for step in steps if step_key(step) not in seen and not _is_shorter_sum(step, shown)]
            if fresh:
                unlike += form
                found |= {step_key(step): step for step in fresh}
        return unlike, list(found.values())

    def _beside(
        self, calculation: CalculationValues, working: Working, concluded: tuple[Conclusion, ...]
    ) -> tuple[str, ...]:
        """Further results that neither a step on the sheet nor a comparison shows."""
        shown = {step.symbol for step in steps_shown(calculation.provider, working)}
        # A margin below a limit stands in the comparison with it.
        shown |= {"M"} if concluded else set()
        compared = {one.check.demand for one in concluded}
        return tuple(
            f"{step.name} {steps_worked(self.context, step)}"
            for step in working.secondary_steps
            if step.symbol not in shown and step.name not in compared
        )


def _list_behind(
    working: Working, rows: list[InputRow], shown: list[Step], concluded: tuple[Conclusion, ...]
) -> list[Step]:
    """The steps to a further result that take what is given and no step shown takes: their formulas are told."""
    held = {one.check.limit for one in concluded}
    unused = {row.symbol for row in rows if row.name not in held} - symbols_of(shown)
    wanted, behind = set(working.secondary_results) - {step.symbol for step in shown}, list[Step]()
    for step in reversed(working.steps):
        if step.symbol in wanted and step not in shown:
            behind.insert(0, step)
            wanted |= symbols_of([step])
    return behind if unused & symbols_of(behind) else []


# Fewer inputs than these stand on a line; a single member with more than those has no working in full.
FEW, MOST_GIVEN = 6, 9
ALIKE = "The other layers follow the same formulas; their values stand in the tables."
# What is said of the units of a method in SI, by a unit of its steps.
IN_SI = "Steps in SI, as the method is published"
TOLD_UNITS = {
    "W/m2": f"{IN_SI}: 1\u00a0Btu/(h·sq\u00a0ft) = 3.155\u00a0W/m².",
    "Pa": f"{IN_SI}: 1\u00a0in.\u00a0Hg = {figure(INCH_OF_MERCURY)}\u00a0Pa.",
}


def _with_capacities(working: Working, concluded: tuple[Conclusion, ...]) -> Working:
    """The working with the inputs of the capacities that its result is held against."""
    capacities = (one.comparison.capacity for one in concluded if one.comparison is not None)
    known = {row.symbol for row in working.inputs}
    rows = (row for capacity in capacities if capacity is not None for row in capacity.inputs)
    return working._replace(inputs=(*working.inputs, *(row for row in rows if row.symbol not in known)))


def _is_shorter_sum(step: Step, shown: list[Step]) -> bool:
    """Whether a step adds some of the terms that one shown adds: two openings in place of four."""
    terms = set(step.expression.split(" + "))
    return any(_kind(one) == _kind(step) and terms <= set(one.expression.split(" + ")) for one in shown)


def _kind(step: Step) -> str:
    return step.name.partition(",")[0]


def _letters(title: str, workings: Instances) -> tuple[DisplayValue, ...]:
    """The sources of workings as their letters; what is computed or the project's own needs none."""
    told = (source for source in sources(workings) if source.kind not in (Kind.COMPUTED, Kind.PROJECT))
    return tuple(DisplayValue("", source.legend, source, about=f"Method of {title}") for source in told)


def find_governing(workings: Instances, concluded: Concluded) -> Path:
    """The member that uses most of its limit; without a limit the one with the greatest result."""
    compared = {m: [one.use for one in each if one.comparison is not None] for m, each in concluded.items()}
    if any(compared.values()):
        return max(workings, key=lambda member: (max(compared[member], default=-1.0), weigh(workings[member])))
    return max(workings, key=lambda member: (abs(float(workings[member].result)), weigh(workings[member])))


def _sort_others(workings: Instances, member: Path, concluded: Concluded) -> tuple[list[str], list[str]]:
    """The marks of the members not worked in full: those similar to it, and those that nothing is held against."""
    compared = {m for m, each in concluded.items() if any(one.comparison is not None for one in each)}
    others = [other for other in workings if other != member]
    informed = [other for other in others if member in compared and other not in compared]
    return [mark(other) for other in others if other not in informed], list(map(mark, informed))


def _governing_each(workings: Instances, concluded: Concluded) -> list[Conclusion]:
    """For each comparison the member that governs it, and one that is not compared yet."""
    by_check: dict[tuple[int, bool], list[Conclusion]] = {}
    for each in concluded.values():
        for one in each:
            by_check.setdefault((id(one.check), one.comparison is None), []).append(one)
    return [max(each, key=lambda one: (one.use, weigh(workings[one.member]))) for each in by_check.values()]
