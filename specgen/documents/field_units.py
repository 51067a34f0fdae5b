"""The unit that an answer is wanted in, from the dimension of its field and the system of the project."""

import re

from specgen.model.field import Field
from specgen.quantities.format import format_unit

# Units whose printed sign asks nobody.
_WORDS = {
    "h": "hours",
    "d": "days",
    "year": "years",
    "min": "minutes",
    "month": "months",
    "s": "seconds",
    "deg": "degrees",
    "mil": "mils",
    "in 12": "in per 12 in",
}
# Units that stand in a question, where `in` by itself is no unit to a reader.
_SPELLED = {"in": "inches", "mm": "millimeters", "ft": "feet", "m": "meters"}
_COUNTED = ("quantity", "number", "integer", "percent")
_PER = "/"
# The range of what has no unit and is a part of a whole.
_SHARE = ("0", "1")


def name_unit(field: Field, system: str) -> str:
    """`cfm`, `degrees`, `%`, `0 to 1`; empty for what is counted or named. A list has the unit of its entries."""
    kind = field.of or field.kind
    if kind not in _COUNTED:
        return ""
    if kind == "percent":
        return "%"
    if field.kind == "number" and (field.least, field.most) == _SHARE:
        return " to ".join(_SHARE)
    unit = field.unit_si if system == "si" else field.unit_ip
    said = _WORDS.get(unit) or format_unit(unit)
    return f"per {said.removeprefix(_PER)}" if said.startswith(_PER) else said


def add_unit(asked: str, field: Field, system: str) -> str:
    """The words of a question with its unit, `Compressor air flow, cfm`, unless they say it already."""
    unit = name_unit(field, system)
    if not asked.endswith("?"):
        return with_unit_of(asked, unit)
    return f"{with_unit_of(asked[:-1], spell_unit(unit))}?"


def with_unit_of(asked: str, unit: str) -> str:
    """`Compressor air flow, cfm`; the words alone where they say the unit: `Days for review`, `R-value`."""
    said = re.search(rf"(?<!\w){re.escape(unit)}(?!\w)", asked, re.IGNORECASE if unit in _WORDS.values() else 0)
    return f"{asked}, {unit}" if unit and not said else asked


def spell_unit(unit: str) -> str:
    """The unit as a question has it: `in inches`."""
    return f"in {_SPELLED[unit]}" if unit in _SPELLED else unit
