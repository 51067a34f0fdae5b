"""A limit in words as the span of figures it allows: `maximum 1/8 in`, `27 s to 33 s`, `62 within 5`, `12 or less`.

Words that hold more than one figure of one kind are no span: nothing is guessed from them.
"""

import re
from enum import Enum
from fractions import Fraction
from typing import Any, NamedTuple

from specgen.quantities.number import QuantityError, parse_number, plain_text, read_number
from specgen.quantities.parse import parse_any_quantity
from specgen.quantities.quantity import Quantity

_MOST = re.compile(
    r"(?:max(?:imum|\.)?|at most|no more than|not more than|up to|<=|≤)\s*(.+)"
    r"|(.+?),?\s*(?:max(?:imum|\.)?|at most|or less)",
    re.IGNORECASE,
)
_LEAST = re.compile(
    r"(?:min(?:imum|\.)?|at least|no less than|not less than|>=|≥)\s*(.+)"
    r"|(.+?),?\s*(?:min(?:imum|\.)?|at least|or more)",
    re.IGNORECASE,
)
_EITHER_WAY = re.compile(r"(.+?)\s*(?:\bwithin\b|\+/-|±|\bplus or minus\b)\s*(.+)", re.IGNORECASE)
_FROM_TO = re.compile(r"(.+?)\s+to\s+(.+)", re.IGNORECASE)
_LONGEST = 60  # characters; what is longer says more than a figure
_COUNTED = re.compile(r"\s*(?:gloss units|units|GU|%)$", re.IGNORECASE)


class Strictness(Enum):
    """How one limit stands to another."""

    STRICTER = "stricter"
    SAME = "same"
    LOOSER = "looser"


class Span(NamedTuple):
    """The figures a limit allows, in the base unit of a dimension; None for an end that is not bounded.

    A figure alone has both ends the same: which side of it is right is not said.
    """

    least: Fraction | None
    most: Fraction | None
    dimension: str = ""
    """Empty for bare numbers."""

    @property
    def is_one_figure(self) -> bool:
        """Whether it is a figure alone."""
        return self.least == self.most

    def lies_in(self, other: "Span") -> bool:
        """Whether another span allows all that this one allows."""
        over = other.least is None or (self.least is not None and self.least >= other.least)
        return over and (other.most is None or (self.most is not None and self.most <= other.most))


def span_of(least: Any, most: Any) -> Span:
    """The span between two values, quantities or numbers; None for an end that is not bounded."""
    ends = [
        end.amount if isinstance(end, Quantity) else None if end is None else Fraction(end) for end in (least, most)
    ]
    dimensions = [end.dimension for end in (least, most) if isinstance(end, Quantity)]
    return Span(ends[0], ends[1], dimensions[0] if dimensions else "")


def read_span(text: str) -> Span | None:
    """The span that a limit in words means; None where it is not one figure, or one span of figures, alone."""
    plain = _COUNTED.sub("", plain_text(text))
    if len(plain) > _LONGEST:
        return None
    for pattern in (_MOST, _LEAST):
        if found := pattern.fullmatch(plain):
            one = _read_figure(found[1] or found[2])
            least, most = (None, one) if pattern is _MOST else (one, None)
            return Span(least and least[0], most and most[0], one[1]) if one else None
    for pattern in (_EITHER_WAY, _FROM_TO):
        if found := pattern.fullmatch(plain):
            return _read_pair(found[1], found[2], pattern is _EITHER_WAY)
    figure = _read_figure(plain)
    return Span(figure[0], figure[0], figure[1]) if figure else None


def take_side(own: Span, others: tuple[Span, ...]) -> Span | None:
    """A limit on the side of those it stands beside, where it is a figure alone; None where they have no one side."""
    if not others or any(other.dimension != own.dimension for other in others):
        return None
    if not own.is_one_figure:
        return own
    sides = {(other.least is None, other.most is None) for other in others}
    if len(sides) > 1 or sides == {(False, False)}:
        return None
    without_least, without_most = sides.pop()
    return own._replace(least=None if without_least else own.least, most=None if without_most else own.most)


def compare_limits(own: Span, others: tuple[Span, ...]) -> Strictness | None:
    """How a limit stands to those it would replace; None where neither covers the other, or no side is known."""
    sided = take_side(own, others)
    if sided is None:
        return None
    if all(sided == other for other in others):
        return Strictness.SAME
    if all(sided.lies_in(other) for other in others):
        return Strictness.STRICTER
    return Strictness.LOOSER if all(other.lies_in(sided) for other in others) else None


def strip_count(text: str) -> str:
    """A limit in words without the name of what is counted: `62 within 5` for `62 within 5 gloss units`."""
    return _COUNTED.sub("", text.strip())


def _read_pair(first: str, second: str, either_way: bool) -> Span | None:
    """A span between two figures, or a figure with its tolerance; the unit may stand behind the second alone."""
    begin, end = _read_figure(first), _read_figure(second)
    if end and end[1] and (begin is None or not begin[1]):
        begin = _read_figure(f"{first.strip()} {_unit_behind(second)}")
    if begin is None or end is None or begin[1] != end[1]:
        return None
    if not either_way:
        return Span(begin[0], end[0], end[1]) if begin[0] < end[0] else None
    # A tolerance on a temperature is a difference, and is read as one nowhere here.
    return None if end[1] == "temperature" else Span(begin[0] - end[0], begin[0] + end[0], end[1])


def _unit_behind(text: str) -> str:
    read = read_number(plain_text(text))
    return read.behind.strip() if read else ""


def _read_figure(text: str) -> tuple[Fraction, str] | None:
    """A figure in the base unit of its dimension, with that dimension; None where the text is none."""
    plain = _COUNTED.sub("", text.strip())
    try:
        return parse_number(plain), ""
    except QuantityError:
        pass
    try:
        quantity = parse_any_quantity(plain)
    except QuantityError:
        return None
    return quantity.amount, quantity.dimension
