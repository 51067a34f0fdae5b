"""Viscosity cups: the formula of each, the times it holds for, and how far two laboratories differ."""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from specgen.computing.inputs import given_input
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.source import Source
from specgen.model.working import InputRow
from specgen.quantities.format import format_decimal, format_quantity
from specgen.quantities.parse import QuantityError
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit
from specgen.standards import find_source

PATTON = find_source("cup_ranges").quote("K and c of dip cups")
FORD = (find_source("ford_formulas").quote("K and c of Ford cups"), find_source("ford_times").quote("their times"))
ISO_2431 = find_source("iso_cups").quote("a and b of the flow cups, 30 to 100 s")
# The trade's range of a Zahn cup, and how far two laboratories differ: of their mean, 95 % of the time.
ZAHN_LEAST, ZAHN_MOST, ZAHN_SPREAD = "cup.zahn_range_least", "cup.zahn_range_most", "cup.between_cups"
WARMTH = {
    "zahn": "Measured at {77 °F|25 °C}. Viscosity may fall 5 % for each {1 °F|0.6 °C} of warming (ASTM D4212).",
    "shell": "Measured at {77 °F|25 °C}. Viscosity may fall 5 % for each {1 °F|0.6 °C} of warming (ASTM D4212).",
    "ford": "Measured at {77 °F|25 °C}.",
    "iso": "Measured at {73.4 °F|23 °C}.",
}
NEWTONIAN = "The formula is for oils. A coating that thins under shear has no single viscosity: compare cup times only."


def time_input() -> Any:
    """The key of a calculation for the time that a cup takes."""
    return given_input(
        "",
        "",
        "time",
        about="time until the stream breaks",
        bare="s",
        span=("0.1 s", "3600 s"),  # method's own: no cup takes longer
    )


@dataclass(frozen=True, slots=True)
class Cup:
    """A cup: viscosity in mm²/s is K (t - c), or for a curved one a t - b / t, from `least` to `most` seconds.

    A time that is None is that of the limits for Zahn cups.
    """

    mark: str
    title: str
    slope: float
    offset: float
    own_least: int | None = None
    own_most: int | None = None
    formula: tuple[Source, ...] = (PATTON,)
    curved: bool = False

    def viscosity(self, seconds: float | Fraction) -> float:
        """Kinematic viscosity in mm²/s of a time in seconds."""
        time = float(seconds)
        return self.slope * time - self.offset / time if self.curved else self.slope * (time - self.offset)

    @property
    def family(self) -> str:
        """`zahn`, `ford`, `iso` or `shell`."""
        return self.mark.partition("_")[0]

    @property
    def least(self) -> Fraction | int:
        """The shortest time, in seconds, that the formula holds for."""
        return self.own_least or _limit_seconds(ZAHN_LEAST)

    @property
    def most(self) -> Fraction | int:
        """The longest time, in seconds, that the formula holds for."""
        return self.own_most or _limit_seconds(ZAHN_MOST)

    @property
    def spread(self) -> float | None:
        """The share of their mean by which two laboratories may differ, None where no figure is known."""
        return float(find_limit(ZAHN_SPREAD).value) / 100 if self.family == "zahn" else None

    @property
    def sources(self) -> tuple[Source, ...]:
        """The sources of the formula and, where it is known, of the spread."""
        return (*self.formula, zahn_source()) if self.family == "zahn" else self.formula


def _limit_seconds(name: str) -> Fraction:
    seconds: Fraction = find_limit(name).value.to("s")
    return seconds


def zahn_source() -> Source:
    """The source of the range and the spread of Zahn cups."""
    spread, least, most = (find_limit(name) for name in (ZAHN_SPREAD, ZAHN_LEAST, ZAHN_MOST))
    return spread.source.quote(
        f"{format_decimal(least.value.to('s'), 6)} to {format_quantity(most.value, 's')}; "
        "two laboratories with new Zahn cups of one set may differ by "
        f"{format_decimal(spread.value, 6)} % of their mean"
    )


# Number, K, c, shortest and longest time in seconds.
_ZAHN = ((1, 1.1, 29, 35), (2, 3.5, 14, None), (3, 11.7, 7.5, None), (4, 14.8, 5, None), (5, 23, 0, None))
_FORD = ((1, 0.49, 35, 55), (2, 1.44, 18, 40), (3, 2.31, 6.58, 20), (4, 3.85, 4.49, 20), (5, 12.1, 2, 20))
_SHELL = (
    ("1", 0.226, 13),
    ("2", 0.576, 5),
    ("2.5", 0.925, 3),
    ("3", 1.51, 2),
    ("3.5", 2.17, 1.5),
    ("4", 3.45, 1),
    ("5", 6.5, 1),
    ("6", 16.2, 0.5),
)
_ISO = ((3, 0.443, 200), (4, 1.37, 200), (5, 3.28, 220), (6, 6.90, 570))
_ALL = [
    *(Cup(f"zahn_{n}", f"Zahn No. {n}", k, c, t) for n, k, c, t in _ZAHN),
    *(Cup(f"ford_{n}", f"Ford No. {n}", k, c, t, 100, FORD) for n, k, c, t in _FORD),
    *(Cup(f"iso_{n}", f"ISO {n} mm", a, b, 30, 100, (ISO_2431,), curved=True) for n, a, b in _ISO),
    *(Cup(f"shell_{n.replace('.', '_')}", f"Shell No. {n}", k, c, 20, 80) for n, k, c in _SHELL),
]
CUPS = {cup.mark: cup for cup in _ALL}
_WRITTEN = re.compile(
    r"(zahn|ford|iso|shell)[\s_-]*(?:cup[\s_-]*)?(?:no\.?|number|#)?[\s_-]*"
    r"(\d)((?:[._]5|½|[\s-]*1/2)?)\s*(?:mm)?\s*(?:cup)?"
)


def read_cup(text: str) -> Cup:
    """The cup written as `zahn_4`, `zahn 4`, `Zahn No. 4` or `Shell 2-1/2`; raises QuantityError."""
    match = _WRITTEN.fullmatch(text.strip().lower())
    mark = f"{match[1]}_{match[2]}{'_5' if match[3] else ''}" if match else text
    if mark not in CUPS:
        raise QuantityError(f"cup {text!r} is not known", f"one of {', '.join(CUPS)}")
    return CUPS[mark]


def tell_range(cup: Cup) -> str:
    """`20 to 80 s`."""
    return f"{format_decimal(cup.least, 6)} to {format_decimal(cup.most, 6)} s"


def require_time(cup: Cup, seconds: Quantity) -> None:
    """Raises Refused where a time lies outside the range of a cup's formula."""
    if not cup.least <= seconds.to("s") <= cup.most:
        raise refuse(
            f"{format_decimal(seconds.to('s'), 6)} s is outside the range of the cup {cup.title}",
            f"its formula holds from {tell_range(cup)}",
        )


def require_viscosity(cup: Cup, viscosity: float) -> None:
    """Raises Refused where a viscosity in mm²/s gives a time outside the range of a cup's formula."""
    least, most = cup.viscosity(cup.least), cup.viscosity(cup.most)
    # A round trip through a formula may move the last bit of a float.
    if not least * (1 - 1e-9) <= viscosity <= most * (1 + 1e-9):
        raise refuse(
            f"{format_decimal(viscosity, 4)} mm²/s is outside the range of the cup {cup.title}",
            f"it measures from {format_decimal(least, 3)} to {format_decimal(most, 4)} mm²/s, {tell_range(cup)}",
        )


def formula_rows(cup: Cup, tail: str = "") -> tuple[InputRow, ...]:
    """The constants of a cup's formula; `tail` keeps those of two cups apart."""
    straight = (("K", "factor of (time − offset)", "mm²/s²"), ("c", "offset of the time", "s"))
    curved = (("a", "factor of the time", "mm²/s²"), ("b", "factor of 1 / time, subtracted", "mm²"))
    return tuple(
        InputRow(f"{symbol}{tail}", f"{cup.title} cup, {what}", value, unit, source=cup.sources[0])
        for (symbol, what, unit), value in zip(curved if cup.curved else straight, (cup.slope, cup.offset), strict=True)
    )


def time_row(cup: Cup, symbol: str, seconds: Quantity) -> InputRow:
    """The line of a time of a cup."""
    return InputRow(symbol, f"time of the cup {cup.title}", seconds.number("s"), "s")


def express_viscosity(cup: Cup, time: str, tail: str = "") -> str:
    """The expression of the viscosity for the symbol of a time."""
    return f"a{tail} * {time} - b{tail} / {time}" if cup.curved else f"K{tail} * ({time} - c{tail})"


def express_time(cup: Cup, viscosity: str, tail: str = "") -> str:
    """The expression of the time for the symbol of a viscosity."""
    if cup.curved:
        return f"({viscosity} + sqrt({viscosity}^2 + 4 * a{tail} * b{tail})) / (2 * a{tail})"
    return f"{viscosity} / K{tail} + c{tail}"


def add_band(working: WorkingBuilder, cup: Cup, time: str) -> tuple[str, ...]:
    """Adds the times another laboratory may read; the symbols added, none where no spread is known."""
    if cup.spread is None:
        return ()
    working.step("t_s", "shortest time of another laboratory", f"{time} * (2 - p) / (2 + p)", "s")
    working.step("t_l", "longest time of another laboratory", f"{time} * (2 + p) / (2 - p)", "s")
    return ("t_s", "t_l")


def spread_rows(cup: Cup) -> tuple[InputRow, ...]:
    """The spread between laboratories as an input, where one is known."""
    return () if cup.spread is None else (InputRow("p", "spread between laboratories, of the mean", cup.spread, ""),)


def tell_notes(*cups: Cup) -> tuple[str, ...]:
    """What must be known with a figure of these cups."""
    told = [NEWTONIAN, *dict.fromkeys(WARMTH[cup.family] for cup in cups)]
    told += [f"No figure for the spread of the cup {cup.title} is known here." for cup in cups if cup.spread is None]
    if any(cup.spread is not None for cup in cups):
        told.append("Use one numbered cup from mockup to last pail; cups are not made to a uniform specification.")
    return tuple(told)


def list_sources(*cups: Cup) -> tuple[Source, ...]:
    """The sources of the formulas of these cups, each once."""
    return tuple(dict.fromkeys(source for cup in cups for source in cup.sources))
