"""A quantity: an exact number in the base unit of its dimension, with the unit it was written in."""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from functools import total_ordering

from specgen.quantities.units import SAME_UNITS, SPELLINGS, UNITS, Unit


@total_ordering
@dataclass(frozen=True, eq=False, slots=True)
class Quantity:
    """A physical quantity; `amount` is in SI base units of `dimension` (kelvin for temperatures).

    Comparing two dimensions raises TypeError.
    """

    amount: Fraction
    dimension: str
    unit: str
    text: str = ""

    @classmethod
    def of(cls, number: Fraction | int | float | str, unit: str) -> "Quantity":
        """The quantity of `number` in `unit`, one of the names in `units.UNITS`."""
        row = UNITS[unit]
        return cls(Fraction(number) * row.factor + row.offset, row.dimension, unit)

    def to(self, unit: str) -> Fraction:
        """The exact number of this quantity in `unit`; ValueError where the dimension differs."""
        row = self._unit(unit)
        return (self.amount - row.offset) / row.factor

    def number(self, unit: str) -> float:
        """The number of this quantity in `unit` as the nearest float; ValueError where the dimension differs."""
        row = self._unit(unit)
        # One division of whole numbers rounds once, as a fraction would, and builds none.
        (over, under), (zero, of) = self.amount.as_integer_ratio(), row.offset.as_integer_ratio()
        per, part = row.factor.as_integer_ratio()
        return (over * of - zero * under) * part / (under * of * per)

    def _unit(self, unit: str) -> Unit:
        row = UNITS[unit]
        if row.dimension != self.dimension:
            raise ValueError(f"{self.dimension} cannot be given in {unit}")
        return row

    def _other(self, other: object) -> Fraction:
        if not isinstance(other, Quantity) or other.dimension != self.dimension:
            raise TypeError(f"cannot compare {self.dimension} with {other!r}")
        return other.amount

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Quantity) and (self.dimension, self.amount) == (other.dimension, other.amount)

    def __lt__(self, other: object) -> bool:
        return self.amount < self._other(other)

    def __hash__(self) -> int:
        return hash((self.dimension, self.amount))

    def __mul__(self, factor: Fraction | int) -> "Quantity":
        return Quantity(self.amount * Fraction(factor), self.dimension, self.unit)

    __rmul__ = __mul__

    def __add__(self, other: "Quantity") -> "Quantity":
        return Quantity(self.amount + self._other(other), self.dimension, self.unit)

    def __sub__(self, other: "Quantity") -> "Quantity":
        return Quantity(self.amount - self._other(other), self.dimension, self.unit)


def find_dimension(field_dimension: str, unit: str) -> str:
    """The dimension a field is read in: the one it names, else the one of its printed unit."""
    if field_dimension and field_dimension != "none":
        return SAME_UNITS.get(field_dimension, field_dimension)
    return UNITS[SPELLINGS[unit]].dimension


def subtract_temperatures(temperature: Quantity, other: Quantity) -> Quantity:
    """The difference of two temperatures, in degrees of the first one's scale."""
    unit = "F apart" if temperature.unit == "F" else "C apart"
    return Quantity(temperature.amount - other.amount, "temperature_difference", unit)


def round_quantity(quantity: Quantity, digits: int = 4) -> Quantity:
    """A computed quantity rounded for a sentence, to a few significant digits, halves up as in print."""
    exact = Fraction(quantity.to(quantity.unit))
    rounding = Context(prec=digits, rounding=ROUND_HALF_UP)
    return Quantity.of(f"{rounding.divide(Decimal(exact.numerator), Decimal(exact.denominator)):f}", quantity.unit)
