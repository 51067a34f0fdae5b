"""The keys of a calculation from text, as the command line gives them."""

from collections import Counter
from collections.abc import Mapping
from typing import Any

from specgen.computing.guards import require_in_range
from specgen.model.problem import Problem, Refused, refuse
from specgen.model.suggest import suggest
from specgen.model.working import Working
from specgen.quantities.format import format_unit
from specgen.quantities.parse import QuantityError
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import APART, UNITS, find_unit
from specgen.reading.choices import refuse_choice
from specgen.reading.conversion import InvalidValue, convert, with_unit
from specgen.resolving.provider import Argument, Provider

# Keys for which `none` says something: no rounding, no limit to hold the result against, no days off.
_MAY_BE_NONE = {"round_up", "limit", "days_off"}


def direct(provider: Provider, pairs: Mapping[str, str]) -> Working:
    """The working of a calculation for keys and values in text; `unit` picks the unit of the result.

    Raises Refused with every unknown key, missing key and unfit value at once.
    """
    if provider.direct is None:
        raise refuse(f"{provider.name} is looked up for a project", f"specgen calc {provider.name} --from FILE")
    pairs, problems = _name_keys(provider, pairs)
    problems += [
        Problem(f"{key.name} must be given", key.about)
        for key in provider.keys
        if key.default is None and pairs.get(key.name, "") in ("", "none")
    ]
    values: dict[str, Any] = {}
    for key in provider.keys:
        text = pairs.get(key.name)
        try:
            values[key.name] = _value(key, text) if text else None
            _require_in_span(key, values[key.name], provider)
        except Refused as refused:
            problems += refused.problems
        except (InvalidValue, QuantityError) as error:
            problems.append(Problem(f"{key.name}: {error.message}", error.hint))
    if problems:
        raise Refused(*problems)
    system = _system(pairs, values)
    for key in provider.keys:
        usual = key.default_si if system == "si" and key.default_si else key.default
        if usual and not pairs.get(key.name):
            values[key.name] = _value(key, usual)
    return _in_unit(provider.direct(**values, system=system), pairs.get("unit", ""))


def _name_keys(provider: Provider, pairs: Mapping[str, str]) -> tuple[dict[str, str], list[Problem]]:
    """The texts by the keys they are meant for, a key also by the name of its field, and what is no key or is twice."""
    keys = [*(key.name for key in provider.keys), "unit"]
    meant = list_other_names(provider)
    named: dict[str, str] = {}
    written: dict[str, str] = {}
    problems: list[Problem] = []
    for name, text in pairs.items():
        key = name if name in keys else meant.get(name, "")
        if not key:
            problems.append(Problem(f"{name!r} is not a key of {provider.name}", _suggest_key(name, keys, meant)))
        elif key in named:
            problems.append(Problem(f"{written[key]} and {name} are the same key", "give one of the two"))
        else:
            named[key], written[key] = text, name
    return named, problems


def list_other_names(provider: Provider) -> dict[str, str]:
    """The key that each other name stands for; a name that is a key itself, or fits two, stands for none."""
    keys = {key.name for key in provider.keys}
    said = Counter(other for key in provider.keys for other in key.also)
    return {other: key.name for key in provider.keys for other in key.also if other not in keys and said[other] == 1}


def _suggest_key(name: str, keys: list[str], meant: Mapping[str, str]) -> str:
    """The nearest key; where only its other name is near, the key with it; else all keys."""
    own, other = suggest(name, keys), suggest(name, meant)
    return other if own.startswith("known") and other.startswith("did") else own


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
        raise InvalidValue(*refuse_choice(key.field, text))
    return value


def _require_in_span(key: Argument, value: Any, provider: Provider) -> None:
    """Raises Refused where a value leaves the range of its key."""
    if value is None or key.choices or not key.span or key.dimension in ("word", "yes_no"):
        return
    least, most = find_span(key, provider)
    require_in_range(key.name, value, least, most, " %" if key.dimension == "percent" else "")


def find_span(key: Argument, provider: Provider) -> tuple[Any, Any]:
    """The least and the most a key may be: as its method says, or as the field that gives it in a project."""
    ends = key.span
    if isinstance(ends, str):
        # Loaded here, so that a sum whose method tells its own ranges reads no schema.
        from specgen.reading.schema import project_schema

        schema = project_schema()
        # A star in place of a section stands for each of those that have the field.
        first = provider.sections[0] if ends.startswith("*") else "*"
        field = schema.node(schema.follow(tuple(ends.replace("*", first, 1).split(".")))).field
        assert field is not None
        ends = (field.least, field.most)
    least, most = (_end(key, end) if isinstance(end, str) else end for end in ends)
    return least, most


def _end(key: Argument, text: str) -> Any:
    return convert(key.field, with_unit(text, key.bare) if key.bare else text)


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
    if not unit or unit == working.unit and not working.moment:
        return working
    if working.moment:
        raise refuse(f"the result cannot be given in {asked!r}", "it is a day or a moment: leave unit out")
    dimension = UNITS[working.unit].dimension if working.unit in UNITS else ""
    known = [name for name, row in UNITS.items() if row.dimension == dimension]
    if unit not in known:
        hint = suggest(asked, known) if known else "it has no unit"
        raise refuse(f"the result cannot be given in {asked!r}", hint)
    result = working.quantity.number(unit)
    note = f"The result is given in {_unit_word(unit)}, the steps in {_unit_word(working.unit)}."
    return working._replace(result=result, unit=unit, notes=(*working.notes, note))
