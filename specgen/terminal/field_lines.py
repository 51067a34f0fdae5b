"""The lines of one field in a project file: what is asked, why and of whom, how to write it, and an empty key."""

import re
import textwrap
from collections.abc import Iterable, Iterator

from specgen.model.field import Field
from specgen.model.figure_text import figures_asked
from specgen.model.value_text import words
from specgen.quantities.format import format_decimal, format_quantity
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.quantities.quantity import find_dimension
from specgen.quantities.two_systems import tell_in
from specgen.standards import load_limits

WIDTH = 100
# The marks that examples and starters give to members, by collection.
MARKS = {
    "walls": "W1",
    "elevations": "E1",
    "joints": "J1",
    "sealants": "S1",
    "colors": "C1",
    "guns": "G1",
    "hoses": "H1",
    "people": "P1",
    "instruments": "M1",
    "attachments": "A1",
    "crews": "red",
    "openings": "A",
    "floor_lines": "F1",
    "joint_needs": "N1",
    "access": "X1",
    "shade": "X1",
    "deviations": "DV1",
    "comments": "CM1",
    "details": "D1",
    "items": "I1",
    "rates": "gloss",
}
_UNITS = {"h": "hours", "d": "days", "year": "years", "min": "minutes", "month": "months"}
_LENGTH = re.compile(r"\d[\d./-]* ft\b")
# What YAML takes for more than text: signs that open something else, and signs that end a plain text.
_OPENS, _ENDS = (*"[]{}&*!|>'\"%@`#,", "- ", "? "), (": ", " #")


def format_field_lines(field: Field, name: str, indent: int, units: str) -> list[str]:
    """The comment of a field and below it `name:` without a value, `indent` blanks in; `units` is ip or si."""
    return [*format_comment(_comment(field, units), indent), f"{' ' * indent}{name}:"]


def format_comment(texts: Iterable[str], indent: int) -> list[str]:
    """Each text as a comment of lines that end within the width; what follows on stands two blanks in."""
    sign = f"{' ' * indent}# "
    return [
        line
        for text in texts
        for line in textwrap.wrap(
            text, WIDTH, initial_indent=sign, subsequent_indent=f"{sign}  ", break_long_words=False
        )
    ]


def _comment(field: Field, units: str) -> Iterator[str]:
    asked = _ask(field, units)
    why = f" {field.why[:1].upper()}{field.why[1:]}" if asked.endswith("?") else f": {field.why}"
    yield f"{asked}{why}" + (f" ({words(field.owed_by)})" if field.owed_by else "")
    if field.condition:
        yield f"only if {_shorten_condition(field)}"
    yield _form(field, units)
    usual = default_text(field, units)
    if usual:
        yield f"left empty: {usual}"


def _ask(field: Field, units: str) -> str:
    """The question of a field without the form of its answer, which follows; its name, where none is asked."""
    question, sign, _ = tell_in(field.asks, units).partition("?")
    return question + sign if sign and not field.values and not figures_asked(field.asks) else field.label


def _shorten_condition(field: Field) -> str:
    """The condition, with the fields of the same member named as they stand beside it."""
    stars = [depth for depth, name in enumerate(field.path) if name == "*"]
    beside = ".".join(field.path[: stars[-1] + 1]) + "." if stars else ""
    return field.condition.replace(beside, "") if beside else field.condition


def _form(field: Field, units: str) -> str:
    """How the value is written: choices, or an example with its unit."""
    example = example_text(field, units)
    if field.values and field.kind == "list":
        return f"any of {', '.join(field.values)}; such as {example}"
    if field.values:
        return f"one of {', '.join(field.values)}"
    if field.kind == "yes_no":
        return "yes or no"
    counted = _counted(field)
    return f"such as {example}{f', in {counted}' if counted else ''}"


def _counted(field: Field) -> str:
    """What a plain number counts: hours, days; empty where it counts nothing that lasts."""
    return _UNITS[field.unit_ip] if field.kind in ("number", "integer") and field.unit_ip else ""


def example_text(field: Field, units: str) -> str:
    """The example of a field as it is typed behind its key, a quantity in the given unit system."""
    text = field.example
    if field.to:
        return f"[{MARKS[field.to]}]" if field.kind == "list" else MARKS[field.to]
    if units == "si" and field.kind == "quantity":
        return _to_si(field, text)
    if field.kind == "percent":
        return f"{text.removesuffix('%').strip()}%"
    if field.kind == "list":
        return _LENGTH.sub(lambda length: _to_metric(length[0]), text) if units == "si" else text
    return _quote(text)


def _to_metric(length: str) -> str:
    """A length within a list in meters, that points and lines on an elevation agree with its width and height."""
    return f"{format_decimal(parse_quantity(length, 'length').to('m'), 2)} m"


def _to_si(field: Field, text: str) -> str:
    try:
        quantity = parse_quantity(text, find_dimension(field.dimension, field.unit_ip))
    except QuantityError:
        return text
    return f"{format_decimal(quantity.to(field.unit_si), 2)} {field.unit_si}"


def _quote(text: str) -> str:
    """A text in single quotes, where YAML would not read it as it stands."""
    plain = not text.startswith(_OPENS) and not any(sign in text for sign in _ENDS) and not text.endswith(":")
    return text if plain else "'" + text.replace("'", "''") + "'"


def metric_default(field: Field) -> str:
    """The figure that is the default of metric work, where it is another than that of inch-pound work; else nothing."""
    limits = (limit for limit in load_limits().values() if limit.bounds == field.path and limit.value_si is not None)
    return next((format_quantity(row.value_si, row.value_si.unit) for row in limits if row.value_si is not None), "")


def default_text(field: Field, units: str) -> str:
    """What holds while a field is not given: a figure in the given unit system, or how it follows; else nothing."""
    if field.kind == "quantity" and field.default and units == "si":
        return metric_default(field) or _to_si(field, field.default)
    if field.kind == "percent" and field.default:
        return f"{field.default}%"
    return f"{field.default} {_counted(field)}".rstrip() if field.default else field.derived
