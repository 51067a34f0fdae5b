"""Who gives the figures of the calculations that bear no letter: the project's own, by party."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.calculations import CalculationValues, gather_calculations
from specgen.documents.comparisons import conclude
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.origins import find_origin, follow
from specgen.documents.parties import find_name, tell_party
from specgen.documents.sheet_steps import symbols_of
from specgen.model.field import Path, dotted_path
from specgen.model.working import InputRow, Working

# Stands with its figure: no calculation prints it, only the pressure of the air that follows from it.
_ALTITUDE = "site.altitude"
_UNNAMED = ", not named: entered by the applicator, to be confirmed"
# Fields that a calculation reads beside its inputs: sizes that it adds up, and the words that its method goes by.
_BESIDE = {
    "board-thickness": ("walls.*.insulation.r_value",),
    "peak-sun": (_ALTITUDE,),
    "wall-wind": ("site.exposure", "site.risk_category", "building.enclosure", "elevations.*.base_above_grade"),
    "coating-quantity": ("mockup.width", "mockup.height", "aesthetic_joint.width"),
    "earliest-start": ("schedule.submit_on", "schedule.color_sample_order_on", "schedule.work_start"),
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party with the figures that it gives, each once."""
    given: dict[str, dict[str, None]] = {}
    for calculation in gather_calculations(context):
        for path in _paths(context, calculation):
            field = context.project.schema.field_at(path)
            if field is not None and path in context.project.values:
                figure = f", {context.display(path).text}" if dotted_path(path) == _ALTITUDE else ""
                given.setdefault(field.owed_by, {})[field.label + figure] = None
    lines = tuple((_tell_giver(context, role), "; ".join(sorted(given[role]))) for role in sorted(given))
    return TableView(("Given by", "Values without a letter"), lines, (28, 72))


def _tell_giver(context: DocumentContext, role: str) -> str:
    """The party; of one that nobody has named yet, that its figures are the applicator's until it confirms them."""
    path = find_name(context, role)
    unnamed = bool(path) and context.project.get(path) is None and role != "applicator"
    return tell_party(context, role) + (_UNNAMED if context.is_marked and unnamed else "")


def _paths(context: DocumentContext, calculation: CalculationValues) -> Iterator[Path]:
    """The fields of a calculation's figures: its inputs, the limits it is held against, and what it reads beside."""
    for member, working in calculation.workings.items():
        yield from _beside(context, calculation, member)
        concluded = conclude(context, calculation.provider, member)
        capacities = (one.comparison.capacity for one in concluded if one.comparison is not None)
        held = [row for capacity in capacities if capacity is not None for row in capacity.inputs]
        for row in (*_inputs_used(working), *held):
            path = follow(context.project, row.origin, member)
            if path is not None and not find_origin(context, member, row).source:
                yield path


def _inputs_used(working: Working) -> Iterator[InputRow]:
    """The inputs that pages print: a shear of none enters no formula."""
    used = symbols_of(working.steps)
    return (row for row in working.inputs if row.value or row.symbol in used)


def _beside(context: DocumentContext, calculation: CalculationValues, member: Path) -> Iterator[Path]:
    """The limits of the checks, where the project gives them without a source, and the fields read beside inputs."""
    provider = calculation.provider
    patterns = (*(check.limit_from for check in provider.checks), *_BESIDE.get(provider.name, ()))
    for pattern in filter(None, patterns):
        path: Any = follow(context.project, pattern, member)
        if path is not None and not context.display(path).source:
            yield path
