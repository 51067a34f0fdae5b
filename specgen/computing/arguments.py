"""The keys of a calculation from text, as the command line gives them."""

import math
from collections.abc import Callable, Mapping
from typing import Any

from specgen.model.problem import Problem, Refused, refuse
from specgen.model.suggest import suggest
from specgen.model.working import Working
from specgen.quantities.format import format_unit
from specgen.quantities.parse import QuantityError
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import APART, UNITS, find_unit
from specgen.reading.conversion import InvalidValue, convert, with_unit
from specgen.resolving.provider import Argument, Provider

# Keys for which `none` says something: no rounding, no limit to hold the result against.
_MAY_BE_NONE = {"round_up", "limit"}


def direct(provider: Provider, pairs: Mapping[str, str]) -> Working:
    """The working of a calculation for keys and values in text; `unit` picks the unit of the result.

    Raises Refused with every unknown key, missing key and unfit value at once.
    """
    if provider.direct is None:
        raise refuse(f"{provider.name} is looked up for a project", f"specgen calc {provider.name} --from FILE")
    keys = {key.name: key for key in provider.keys}
    problems = [
        Problem(f"{name!r} is no key of {provider.name}", suggest(name, [*keys, "unit"]))
        for name in pairs
        if name not in keys and name != "unit"
    ]
    problems += [
        Problem(f"{key.name} must be given", key.about)
        for key in provider.keys
        if key.default is None and pairs.get(key.name, "") in ("", "none")
    ]
    values: dict[str, Any] = {}
    for key in provider.keys:
        text = pairs.get(key.name) or key.default
        try:
            values[key.name] = _value(key, text) if text else None
        except (InvalidValue, QuantityError) as error:
            problems.append(Problem(f"{key.name}: {error.message}", error.hint))
    if problems:
        raise Refused(*problems)
    return _in_unit(_within_reach(provider.direct, values, _system(pairs, values)), pairs.get("unit", ""))


def _within_reach(sum_of: Callable[..., Any], values: Mapping[str, Any], system: str) -> Working:
    """The working, where its figures are not so large that nothing can be computed with them."""
    try:
        working: Working = sum_of(**values, system=system)
    except OverflowError:
        raise _too_large() from None
    if not all(math.isfinite(step.value) for step in working.steps):
        raise _too_large()
    return working


def _too_large() -> Refused:
    return refuse("a figure is too large to compute with", "look for a slip in a number or a unit")


def _value(key: Argument, text: str) -> Any:
    """The value of a key; raises InvalidValue, or QuantityError where the key reads a form of its own."""
    if text == "none":
        if key.name not in _MAY_BE_NONE and key.default != "":
            raise InvalidValue(f"{key.name} cannot be none", key.about)
        return None
    if key.read is not None:
        return key.read(text)
    value = convert(key.field, with_unit(text, key.bare) if key.bare else text)
    # The rules of a file say this by Cerberus, whose loading would take longer than the sum.
    if key.choices and value not in key.choices:
        raise InvalidValue(f"{text!r} is no choice", suggest(text, key.choices))
    return value


def _system(pairs: Mapping[str, str], values: Mapping[str, Any]) -> str:
    """The unit system of the first quantity that was given; inches and pounds where none was."""
    for name in pairs:
        value = values.get(name)
        if isinstance(value, Quantity) and UNITS[value.unit].system != "both":
            return UNITS[value.unit].system
    return "ip"


def _unit_word(unit: str) -> str:
    """The unit within a sentence, where `in` would be read as the preposition."""
    return "inches" if unit == "in" else format_unit(unit)


def _in_unit(working: Working, unit: str) -> Working:
    """The working with its result in the unit asked for; its steps stay in the unit of the sum."""
    asked, unit = unit, find_unit(unit) or unit
    if working.unit.endswith(APART) and unit in ("F", "C"):
        unit += APART
    if not unit or unit == working.unit:
        return working
    dimension = UNITS[working.unit].dimension if working.unit in UNITS else ""
    known = [name for name, row in UNITS.items() if row.dimension == dimension]
    if unit not in known:
        hint = suggest(asked, known) if known else "it has no unit"
        raise refuse(f"the result cannot be given in {asked!r}", hint)
    result = working.quantity.number(unit)
    note = f"The result is given in {_unit_word(unit)}, the steps in {_unit_word(working.unit)}."
    return working._replace(result=result, unit=unit, notes=(*working.notes, note))
