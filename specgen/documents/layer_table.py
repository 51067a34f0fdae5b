"""The layers of a wall as one table, and the steps that are the same for each layer."""

import re
from collections.abc import Sequence
from typing import Any

from specgen.documents.context import DocumentContext, TableView
from specgen.documents.origins import find_origin
from specgen.documents.page_figures import figure, measure, name_unit, vapor_pressure, vapor_unit
from specgen.model.block import Value
from specgen.model.field import Path
from specgen.model.working import InputRow, Step, Working

_NUMBER = re.compile(r"(?<=_)\d+\b")


def layers(context: DocumentContext, member: Path, working: Working) -> TableView:
    """One row for each layer, at its outer side: R-value, permeance, temperature, vapor pressure, saturation.

    The coating, the last of them, has no R-value and the temperature of the layer below it.
    """
    system = context.first
    given = {row.symbol: row for row in working.inputs}
    known = {step.symbol: step for step in working.steps}
    rows: list[tuple[Any, ...]] = [("Inner face", "", "", *_state(known, 0, system))]
    for number in range(1, sum(symbol.startswith("Z_") for symbol in known)):
        layer, open_to = given.get(f"R_{number}"), given[f"W_{number}"]
        name = open_to.name.removeprefix("permeance, ")
        own = _own(context, member, layer) if layer is not None else "", _own(context, member, open_to)
        rows.append((name[:1].upper() + name[1:], *own, *_state(known, number, system)))
    units = given["R_1"].unit, name_unit(given["W_1"].unit, system), name_unit(known["T_0"].unit, system)
    pressure = vapor_unit(system)
    heads = (
        "Layer, outer side",
        f"R-value{'' if units[0] == 'R' else f', {name_unit(units[0], system)}'}",
        f"Permeance, {units[1]}",
        f"Temperature, {units[2]}",
        f"Vapor pressure, {pressure}",
        f"Saturation, {pressure}",
        "Relative humidity",
    )
    return TableView(heads, tuple(rows), (26, 10, 13, 14, 13, 12, 12))


def _own(context: DocumentContext, member: Path, row: InputRow) -> Value:
    """A figure of a layer with the mark of its source."""
    return Value(figure(row.value, 3), find_origin(context, member, row).source, about=row.name)


def _state(known: dict[str, Step], number: int, system: str) -> tuple[str, ...]:
    """Temperature, vapor pressure, saturation and relative humidity at the outer side of a layer."""
    below = number if f"T_{number}" in known else number - 1
    temperature, vapor, full = known[f"T_{below}"], known[f"p_{number}"], known[f"s_{below}"]
    share = f"{100 * vapor.value / full.value:.0f}%" if vapor.value <= full.value else "condenses"
    return (
        measure(temperature.value, temperature.unit, system, 3).partition("\u00a0")[0],
        vapor_pressure(vapor.value, system),
        vapor_pressure(full.value, system),
        share,
    )


def of_layers(row: InputRow | Step) -> bool:
    """Whether an input or a step is that of one layer, which the table of layers shows."""
    return bool(_NUMBER.search(row.symbol))


def first_of_each(steps: Sequence[Step]) -> list[Step]:
    """The steps without those that another repeats for a further layer."""
    found: dict[tuple[str, str], Step] = {}
    for step in steps:
        found.setdefault((_NUMBER.sub("n", step.symbol), _NUMBER.sub("n", step.expression)), step)
    return list(found.values())
