"""The calculations as templates print them: groups, calculations, and the forms of their workings."""

from dataclasses import dataclass
from itertools import groupby
from typing import Any

from specgen.documents.calculations import (
    CalculationValues,
    Instances,
    equation,
    gather_calculations,
    shared_notes,
    sources,
)
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue, Record
from specgen.documents.views.workings import describe_check, figure, inputs, limit_checks, mark, marks, members, result
from specgen.model.block import Equation
from specgen.model.source import Kind, Source
from specgen.quantities.format import format_unit
from specgen.resolving.provider import GROUPS


@dataclass(frozen=True, kw_only=True)
class FormPage(Record):
    """Members whose workings have the same steps: one is printed in full, the others in tables."""

    mark: str  # of the member whose working is printed in full
    others: str  # marks of the other members, in words
    inputs: TableView  # inputs of the working, with their origins
    lines: tuple[Equation, ...]  # steps of the working
    result: str  # as it prints, with its unit
    governs: str  # the governing case, if there are several
    beside: tuple[str, ...]  # secondary results, one sentence each
    against: tuple[list[Any], ...]  # limit checks of the member, as cells
    members: tuple[TableView, ...]  # tables of the other members; empty for a single one
    remarks: tuple[str, ...]  # notes of a single member that are not shared


@dataclass(frozen=True, kw_only=True)
class CalculationPage(Record):
    """A calculation with its forms, the limits of the method, and its sources."""

    title: str  # of the calculation
    forms: tuple[FormPage, ...]  # one for each set of steps
    notes: tuple[str, ...]  # shared by all members
    sources: tuple[DisplayValue, ...]  # of the method, as they print


@dataclass(frozen=True)
class GroupPage(Record):
    """The calculations of one group."""

    title: str
    calculations: tuple[CalculationPage, ...]


def calculation_pages(context: DocumentContext) -> tuple[GroupPage, ...]:
    """Every calculation that the project has data for, by group."""
    with_workings = [calculation for calculation in gather_calculations(context) if calculation.workings]
    return tuple(
        GroupPage(GROUPS[group], tuple(_calculation(context, calculation) for calculation in run))
        for group, run in groupby(with_workings, key=lambda calculation: calculation.provider.group)
    )


def _calculation(context: DocumentContext, calculation: CalculationValues) -> CalculationPage:
    forms = tuple(_form(context, calculation, workings) for workings in calculation.forms)
    notes = shared_notes(calculation.workings)
    legends = tuple(_cite(context, calculation, source) for source in sources(calculation.workings))
    return CalculationPage(
        title=calculation.provider.title, forms=forms, notes=tuple(map(context.tell, notes)), sources=legends
    )


def _cite(context: DocumentContext, calculation: CalculationValues, source: Source) -> DisplayValue:
    """A source of the method as it prints; one that is not verified bears the mark."""
    cited = context.cite(source)
    if cited.kind is not Kind.UNVERIFIED:
        return DisplayValue(cited.legend, cited.legend)
    said = context.tell(source.reference) or "trade practice"
    return DisplayValue(said, said, source, about=f"Method of {calculation.provider.title}")


def _form(context: DocumentContext, calculation: CalculationValues, workings: Instances) -> FormPage:
    (member, working), *others = workings.items()
    shared = shared_notes(calculation.workings)
    return FormPage(
        mark=mark(member),
        others=marks([mark(other) for other, _ in others]),
        inputs=inputs(context, member, working),
        lines=tuple(equation(step) for step in working.steps),
        result=result(context, working),
        governs=working.governing_case,
        beside=tuple(
            f"{equation(step).title}: {figure(step.value)} {format_unit(step.unit)}".strip()
            for step in working.secondary_steps
        ),
        against=tuple(describe_check(context, check) for check in limit_checks(context, calculation.provider)[member]),
        members=members(context, calculation.provider, workings, shared) if others else (),
        remarks=() if others else tuple(context.tell(note) for note in working.notes if note not in shared),
    )
