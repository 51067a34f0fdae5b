"""Which steps of a working a sheet shows: those that its result rests on."""

import re
from collections.abc import Iterable

from specgen.documents.context import DocumentContext
from specgen.documents.page_figures import settle
from specgen.model.working import Step, Working
from specgen.resolving.provider import Provider

_NAME = re.compile(r"[A-Za-z_]\w*")


def steps_shown(provider: Provider, working: Working) -> list[Step]:
    """The steps that the result, the columns and what is bought rest on; all of a working by layers."""
    if provider.layered:
        return list(working.steps)
    wanted = {provider.buy, *provider.columns}
    wanted |= {step.symbol for step in working.steps if step.value == working.result and step.unit == working.unit}
    shown: list[Step] = []
    for step in reversed(working.steps):
        if step.symbol in wanted:
            shown.insert(0, step)
            wanted |= set(_NAME.findall(step.expression))
    return shown


def symbols_of(steps: Iterable[Step]) -> set[str]:
    """The symbols in the formulas of steps."""
    return {name for step in steps for name in _NAME.findall(step.expression)}


def steps_worked(context: DocumentContext, step: Step) -> str:
    """The value of a step as it prints."""
    return settle(step.value, step.unit, context.first)
