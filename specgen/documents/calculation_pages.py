"""The calculations as a template lays them out: groups, calculations, and the forms their sums take."""

from dataclasses import dataclass
from itertools import groupby
from typing import Any

from specgen.documents.calculations import Computed, Instances, computed, equation, shared_notes, sources
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.views.workings import against, figure, inputs, mark, marks, members, result, told
from specgen.model.block import Equation
from specgen.quantities.format import format_unit
from specgen.resolving.provider import GROUPS


@dataclass(frozen=True)
class FormPage:
    """Members whose sums have the same lines: `mark` is worked in full, the others stand in `members`."""

    mark: str
    others: str
    inputs: TableView
    lines: tuple[Equation, ...]
    result: str
    governs: str
    beside: tuple[str, ...]
    against: tuple[list[Any], ...]
    members: tuple[TableView, ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True)
class CalculationPage:
    """A calculation with its forms, what its sum does not cover, and its sources."""

    title: str
    forms: tuple[FormPage, ...]
    notes: tuple[str, ...]
    sources: tuple[DisplayValue, ...]


@dataclass(frozen=True)
class GroupPage:
    """The calculations of one group."""

    title: str
    calculations: tuple[CalculationPage, ...]


def calculation_pages(context: DocumentContext) -> tuple[GroupPage, ...]:
    """Every calculation that the project's data allow, by group."""
    found = [one for one in computed(context) if one.workings]
    return tuple(
        GroupPage(GROUPS[group], tuple(_calculation(context, one) for one in run))
        for group, run in groupby(found, key=lambda one: one.provider.group)
    )


def _calculation(context: DocumentContext, one: Computed) -> CalculationPage:
    forms = tuple(_form(context, one, workings) for workings in one.forms)
    notes = shared_notes(one.workings)
    legends = tuple(DisplayValue(source.legend, source.legend, source) for source in sources(one.workings))
    return CalculationPage(one.provider.title, forms, notes, legends)


def _form(context: DocumentContext, one: Computed, workings: Instances) -> FormPage:
    (member, working), *others = workings.items()
    shared = shared_notes(one.workings)
    return FormPage(
        mark(member),
        marks([mark(other) for other, _ in others]),
        inputs(context, member, working),
        tuple(equation(step) for step in working.steps),
        result(context, working),
        working.governing_case,
        tuple(
            f"{equation(step).title}: {figure(step.value)} {format_unit(step.unit)}".strip()
            for step in working.secondary_steps
        ),
        tuple(told(context, held) for held in against(context, one.provider)[member]),
        members(context, one.provider, workings, shared) if others else (),
        () if others else tuple(note for note in working.notes if note not in shared),
    )
