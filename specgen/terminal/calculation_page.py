"""The manual of a calculation on the command line: its keys with units, ranges and defaults, and a call to copy."""

import shlex
from collections.abc import Callable, Iterator
from typing import Any

from specgen.computing.arguments import direct, list_other_names
from specgen.model.field import dotted_path
from specgen.model.value_text import value_text
from specgen.quantities.format import format_quantity, format_unit
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import APART, SAME_UNITS, UNITS
from specgen.resolving.provider import Argument, Provider

# The least and the most a key may be.
FindSpan = Callable[[Argument, Provider], tuple[Any, Any]]
_READ_ON = "specgen calc lists the calculations; specgen fields PATH tells of a field"


def format_calculation(provider: Provider, find_span: FindSpan) -> str:
    """What a calculation is, its keys, the fields it reads in a project, and an example of each way to call it."""
    return "\n".join(_tell(provider, find_span)) + "\n"


def _tell(provider: Provider, find_span: FindSpan) -> Iterator[str]:
    yield f"{provider.name}  {provider.title}"
    others = list_other_names(provider)
    if provider.keys:
        yield from ("", "keys:")
        for key in provider.keys:
            yield f"  {key.name}  {key.about}"
            yield f"      {'; '.join(_describe(key, provider, find_span))}"
            yield from (f"      also written {other}" for other, name in others.items() if name == key.name)
        if not _gives_moment(provider):
            yield "  unit  the unit of the result"
            yield "      may be left out"
    if provider.compute is not None:
        yield from ("", "fields that --from reads in a project:")
        yield from dict.fromkeys(f"  {dotted_path(path)}" for path in provider.patterns())
    yield from ("", "examples:")
    if provider.keys:
        yield f"  specgen calc {provider.name} {provider.example}"
    if provider.compute is not None:
        yield f"  specgen calc {provider.name} --from project.yaml"
    yield from ("", "read on:", f"  {_READ_ON}")


def _gives_moment(provider: Provider) -> bool:
    """Whether a calculation answers with a day or a moment, which has no unit: as its example does."""
    pairs = dict(pair.split("=", 1) for pair in shlex.split(provider.example))
    return bool(direct(provider, pairs).moment)


def _describe(key: Argument, provider: Provider, find_span: FindSpan) -> Iterator[str]:
    """Kind, range and default of a key."""
    if key.choices or key.read is None:
        yield _name_kind(key)
    if key.bare:
        yield f"a number alone is in {format_unit(key.bare)}"
    if key.span and not key.choices and key.dimension not in ("word", "yes_no"):
        least, most = (_format_end(key, end) for end in find_span(key, provider))
        yield f"{least} to {most}" if least and most else f"at least {least}" if least else f"at most {most}"
    if key.default is None:
        yield "must be given"
    elif key.default == "":
        yield "may be left out"
    else:
        metric = f", {key.default_si} in metric work" if key.default_si not in ("", key.default) else ""
        yield f"{key.default}{metric} where it is not given"


def _name_kind(key: Argument) -> str:
    """What is written for a key: a quantity with its units, or what else there is."""
    if key.choices:
        return f"one of {', '.join(key.choices)}"
    if key.dimension in _KINDS:
        return _KINDS[key.dimension]
    # A difference of temperatures is written in plain degrees.
    units = [
        format_unit(unit) for unit in UNITS if UNITS[unit].dimension == SAME_UNITS.get(key.dimension, key.dimension)
    ]
    return f"{key.dimension.replace('_', ' ')} in {', '.join(unit.removesuffix(APART) for unit in units)}"


_KINDS = {"number": "a number", "percent": "a percentage, such as 50%", "yes_no": "yes or no", "word": "a word"}


def _format_end(key: Argument, end: Any) -> str:
    """One end of a range; empty for none."""
    if end is None:
        return ""
    if isinstance(end, Quantity):
        return format_quantity(end, end.unit)
    return f"{value_text(end)}{'%' if key.dimension == 'percent' else ''}"
