"""What a calculation is made for: a demand held against a limit or a capacity."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any, NamedTuple

from specgen.model.working import Working
from specgen.quantities.comparison import Outcome, Sense, compare
from specgen.quantities.quantity import Quantity

# The use of a limit that leaves nothing: of a margin that is gone, or a supply of none.
NOTHING_LEFT = 10**9


class Comparison(NamedTuple):
    """A demand, the limit it is held against, and how the limit was reached where it is computed itself."""

    demand: Quantity | int  # a count has no unit
    sense: Sense  # AT_MOST or AT_LEAST
    limit: Quantity | int
    strict: bool = False  # whether a demand on the limit itself is outside
    capacity: Working | None = None  # the working of the limit
    words: tuple[str, str] = ("", "")  # demand and limit as they print where their unit does not tell them: dates

    @property
    def outcome(self) -> Outcome:
        """Whether the demand lies on the right side of the limit."""
        if self.strict and self.demand == self.limit:
            return Outcome.OUTSIDE
        return compare(self.demand, self.sense, self.limit)

    @property
    def use(self) -> Fraction:
        """How much of the limit is used: 1 at the limit, more beyond it."""
        over, under = map(_amount, (self.demand, self.limit))
        if self.sense is Sense.AT_LEAST:
            over, under = under, over
        return over / under if under > 0 else Fraction(NOTHING_LEFT if over > 0 else 0)

    @property
    def ratio(self) -> Fraction | None:
        """The use of the limit, where a ratio says something: none for temperatures and dates."""
        if isinstance(self.demand, Quantity) and self.demand.dimension == "temperature":
            return None
        return None if self.words[0] else self.use


def _amount(value: Quantity | int) -> Fraction:
    return value.amount if isinstance(value, Quantity) else Fraction(value)


class Check(NamedTuple):
    """A comparison that a calculation is made for; `make` asks for values by name, and None means it does not apply.

    `make` gets the view of the member and raises Absent where the project does not give the limit.
    """

    demand: str  # what is compared, in words
    limit: str  # what it is held against, in words
    codes: tuple[str, ...]  # of the clauses that judge the same; empty where none does
    make: Callable[[Any, Callable[[str], Any]], Comparison | None]
    limit_from: str = ""  # the field of the limit, or its row of the limits; empty where the sheet shows it already


def at_most(demand: Quantity | int, limit: Quantity | int, **more: Any) -> Comparison:
    """A demand that may not pass a limit."""
    return Comparison(demand, Sense.AT_MOST, limit, **more)


def at_least(demand: Quantity | int, limit: Quantity | int, **more: Any) -> Comparison:
    """A figure that may not fall below a limit."""
    return Comparison(demand, Sense.AT_LEAST, limit, **more)
