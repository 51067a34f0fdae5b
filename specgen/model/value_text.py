"""Formats typed values as text, in one unit system or in both."""

import datetime
import re
from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from specgen.model.field import Field
from specgen.model.project import View
from specgen.model.series import join_series
from specgen.quantities.format import format_both, format_decimal, format_first
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS


def value_text(value: Any, field: Field | None = None, first: str = "ip", both: bool = True) -> str:
    """`adhesive and mechanical`, `5/8 in (15.9 mm)`, `yes`, `E1, E2`, `March 1, 2027`, `6:00 a.m.`.

    A quantity stands in the unit of the `first` system, and with `both` in that of the other one beside it.
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Quantity):
        if value.dimension == "angle" and value.text.isalpha():
            return compass(value.text)
        return (format_both if both else format_first)(value, *units_of(value, field), first)
    if isinstance(value, (int, Fraction, float)):
        return format_decimal(value, 8)
    if isinstance(value, (tuple, list, set, frozenset)):
        entries = sorted(map(str, value)) if isinstance(value, (set, frozenset)) else sort_members(value)
        return ", ".join(value_text(entry, field, first, both) for entry in entries) or "none"
    if isinstance(value, datetime.time):
        return f"{value.hour % 12 or 12}:{value.minute:02} {'a.m.' if value.hour < 12 else 'p.m.'}"
    if isinstance(value, datetime.date):
        return long_date(value)
    if isinstance(value, View):
        return value.mark
    text = str(value)
    return words(text) if field is not None and "choice" in (field.kind, field.of) else text


def sort_members(entries: Sequence[Any]) -> Sequence[Any]:
    """The entries of a list; members as the project has them, as their order in a list says nothing."""
    if not all(isinstance(entry, View) for entry in entries):
        return entries
    return sorted(entries, key=lambda one: one.project.members[one.path[:-1]].index(one.mark))


_PARTED_SIGN = re.compile(r"(?<=\d) %")
_DAYS = re.compile(r"(?<![\d.,/-])(\d[\d.,]*) d\b")
_POINTS = {"N": "north", "E": "east", "S": "south", "W": "west"}


def compass(point: str) -> str:
    """A compass point in words: SW is southwest, NNE is north-northeast."""
    said = [_POINTS[letter] for letter in point]
    return said[0] if len(said) == 1 else "".join(said) if len(said) == 2 else f"{said[0]}-{said[1]}{said[2]}"


def raw_text(value: Any, field: Field | None = None, first: str = "ip") -> str:
    """Same as `value_text`, but a choice, a date, and a time keep the word of the file."""
    if isinstance(value, str):
        return value
    if isinstance(value, datetime.time):
        return value.strftime("%H:%M")
    if isinstance(value, datetime.date):
        return value.isoformat()
    if isinstance(value, (tuple, list)) and all(isinstance(v, str) for v in value):
        return ", ".join(value)
    return value_text(value, field, first)


# Choices whose words differ from their names.
_SAID = {
    "mockup_submittal": "submittal, mockup",
    "work_submittal": "submittal, work",
    "existing_coated": "existing coated wall",
    "eps": "EPS",
    "xps": "XPS",
    "wrb": "water-resistive barrier (WRB)",
    "sds": "safety data sheet",
    "v": "V profile",
    "cross_hatch": "cross-hatch",
    "us_osha": "US OSHA",
    "high_impact": "high-impact",
    "ufgs_013300": "UFGS 01 33 00",
    "dispersion": "dispersion-based",
    "cement_based": "cement-based",
    "cement_added": "cement added on site",
    "cement_blended": "cement blended in",
    "osb": "OSB",
    "one_way": "one-way",
    "adhesive_full_bed": "full-bed adhesive",
    "adhesive_notched_trowel": "notched-trowel adhesive",
    "adhesive_ribbon_and_dab": "ribbon-and-dab adhesive",
    "foam": "foam",
    "conventional_pressure_fed": "conventional, pressure fed",
    "hvlp": "high volume, low pressure",
    "air_assisted_airless": "air-assisted airless",
    "self_adhered_sheet": "self-adhered sheet",
    "fluid_applied": "fluid-applied",
    "closed_cell": "closed-cell",
    "open_cell": "open-cell",
    "eifs_to_eifs": "EIFS to EIFS",
    "icf": "insulated concrete forms",
    "aac": "autoclaved aerated concrete",
    "glass_mat_gypsum": "glass-mat gypsum",
    "paper_faced_gypsum": "paper-faced gypsum",
    "kick_out_flashing": "kick-out flashing",
    "floor_line_flashing": "floor-line flashing",
    "iso_cup": "ISO flow cup",
    "ph_strips": "pH strips",
    "zahn_4_cup": "Zahn No. 4 cup",
    "cold_formed_steel": "cold-formed steel",
    "eifs_source": "EIFS manufacturer",
    "finish_source": "finish manufacturer",
    "wrb_source": "WRB manufacturer",
    "fan_flat": "flat fan",
    "outrigger": "outrigger scaffold",
    "sealant_source": "sealant manufacturer",
}
_SAID |= {f"asce_7_{year}": f"ASCE 7-{year}" for year in ("02", "05", "10", "16", "22")}
_SAID |= {f"zahn_{n}": f"Zahn No. {n}" for n in range(1, 6)} | {"ford_4": "Ford No. 4"}
_SAID |= {f"iso_{n}": f"ISO {n} mm" for n in range(3, 7)}
_MONTHS = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
]
_SAID |= {name[:3].lower(): name for name in _MONTHS}


def long_date(date: datetime.date) -> str:
    """`March 1, 2027`."""
    return f"{_MONTHS[date.month - 1]} {date.day}, {date.year}"


def words(choice: str) -> str:
    """A choice as words: `notched_trowel` is read as notched trowel."""
    return _SAID.get(choice) or choice.replace("_", " ")


def part_twins(found: str, wanted: str) -> tuple[str, str]:
    """Two figures without their other units where these print alike: `8.1 mph` and `8 mph`, not twice `(3.6 m/s)`."""
    (one, _, twin), (other, _, other_twin) = found.partition(" ("), wanted.partition(" (")
    return (one, other) if twin and twin == other_twin and one != other else (found, wanted)


def close_percent(text: str) -> str:
    """A text whose percentages stand as on paper: `79%`, where a rule or a person writes `79 %`."""
    return _PARTED_SIGN.sub("%", text)


def write_units(text: str) -> str:
    """A text of a rule with its units as on paper: `79%`, `1 day`, `14 days`, where it has `79 %`, `14 d`."""
    return _DAYS.sub(lambda days: f"{days[1]} day{'' if days[1] == '1' else 's'}", close_percent(text))


class Listed(tuple[str, ...]):
    """Values as a sentence lists them: `{found}` by commas, `{found:and}` and `{found:or}` with that word."""

    def __format__(self, spec: str) -> str:
        return join_series(self, spec) if spec else ", ".join(self)


def count(number: int, noun: str) -> str:
    """`1 stop`, `11 stops`."""
    return f"{number} {noun}{'' if number == 1 else 's'}"


def units_of(value: Quantity, field: Field | None) -> tuple[str, str]:
    """The two units a quantity is printed in: those of its field, else its own and the usual counterpart."""
    if field is not None and field.unit_ip and UNITS.get(field.unit_ip, UNITS["m"]).dimension == value.dimension:
        return field.unit_ip, field.unit_si
    own = value.unit
    other = _OTHER.get(own, own)
    return (own, other) if UNITS[own].system != "si" else (other, own)


_PAIRS = [
    ("in", "mm"),
    ("ft", "m"),
    ("mil", "um"),
    ("ft2", "m2"),
    ("F", "C"),
    ("F apart", "C apart"),
    ("psi", "kPa"),
    ("psf", "Pa"),
    ("mph", "m/s"),
    ("in/s", "mm/s"),
    ("fc", "lx"),
    ("in-lb", "J"),
    ("scfm", "L/s"),
    ("cfm", "L/s"),
    ("gal", "L"),
    ("fl oz", "mL"),
    ("/F", "/C"),
    ("R", "RSI"),
    ("in 12", "in 100"),
]
_OTHER = dict(_PAIRS) | {b: a for a, b in _PAIRS}
