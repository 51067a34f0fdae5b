"""Filters and tests of templates, each bounded in what it makes, and comparison of single values."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from jinja2 import Undefined

from specgen.documents.display_values import DisplayValue
from specgen.documents.template_mistakes import Mistake
from specgen.documents.template_values import (
    NOTHING,
    check_defined,
    count_entries,
    entries_of,
    single,
    words_of_value,
)
from specgen.documents.template_views import Pages

MOST_JOINED = 100_000  # characters


@dataclass(frozen=True)
class Named:
    """A filter or test by its name; `takes` is the least and most number of values between its brackets."""

    run: Callable[..., Any]
    takes: tuple[int, int] = (0, 0)

    def __call__(self, *given: Any) -> Any:
        """What the filter makes, or what the test answers."""
        return self.run(*given)


def check_length(length: int) -> None:
    """Raise Mistake for a text that is longer than any paragraph."""
    if length > MOST_JOINED:
        raise Mistake(f"it joins more than {MOST_JOINED:,} characters", "a document needs less; shorten it")


def _text(value: Any) -> str:
    text = words_of_value(value)
    check_length(len(text))
    return text


def _join(value: Any, between: Any = "") -> Iterator[Any]:
    """The entries of a list with words between them, to be joined by the sandbox."""
    for number, entry in enumerate(entries_of(value)):
        if number:
            yield between
        yield entry


def _list(value: Any) -> Iterator[Any]:
    """The entries of a list as a sentence names them: `a`, `a and b`, `a, b, and c`."""
    entries = list(entries_of(value))
    for number, entry in enumerate(entries):
        if number:
            yield ", " if number < len(entries) - 1 else " and " if number == 1 else ", and "
        yield entry


def _pick(value: Any, last: bool) -> Any:
    entries = list(entries_of(value))
    if not entries:
        raise Mistake("the list is empty and has no such entry", "ask {% if %} before it")
    return entries[-1 if last else 0]


def compare_all(left: Any, *steps: Any) -> bool:
    """Whether each comparison of `a < b < c` holds; raises Mistake for what cannot be compared."""
    for name, right in zip(steps[::2], steps[1::2], strict=True):
        if not _COMPARED[name](left, right):
            return False
        left = right
    return True


def _equal(left: Any, right: Any) -> bool:
    one, other = single(left), single(right)
    return one is not NOTHING and other is not NOTHING and bool(one == other)


def _holds(place: Any, value: Any) -> bool:
    """Whether a value is an entry of a list, a mark of a collection, or a part of a text."""
    check_defined(place)
    if isinstance(place, str) and isinstance(value, str):
        return value in place
    if isinstance(place, range):
        return single(value) in place
    if isinstance(place, Pages):
        return any(_equal(name, value) for name in place.names_within())
    if isinstance(place, DisplayValue) and isinstance(place.raw, str):
        return not place.open and str(single(value)) in place.raw
    return any(_equal(entry, value) for entry in entries_of(place))


def _order(holds: Callable[[Any, Any], bool]) -> Callable[[Any, Any], bool]:
    def compare(left: Any, right: Any) -> bool:
        one, other = single(left), single(right)
        if one is NOTHING or other is NOTHING:
            return False
        try:
            return holds(one, other)
        except (TypeError, ValueError):
            raise Mistake("these two have no order", "compare numbers with numbers, lengths with lengths") from None

    return compare


_COMPARED: dict[str, Callable[[Any, Any], bool]] = {
    "eq": _equal,
    "ne": lambda left, right: not _equal(left, right),
    "lt": _order(lambda left, right: bool(left < right)),
    "lteq": _order(lambda left, right: bool(left <= right)),
    "gt": _order(lambda left, right: bool(left > right)),
    "gteq": _order(lambda left, right: bool(left >= right)),
    "in": lambda left, right: _holds(right, left),
    "notin": lambda left, right: not _holds(right, left),
}


def _divides(value: Any, by: Any) -> bool:
    if not isinstance(value, int) or not isinstance(by, int) or not by:
        raise Mistake("only whole numbers are even, odd or divided", "ask it of a count, such as loop.index")
    return value % by == 0


# Filters that make words: what they make is counted.
MAKERS: dict[str, Callable[[Any], str]] = {
    "capitalize": lambda value: _text(value).capitalize(),
    "lower": lambda value: _text(value).lower(),
    "string": _text,
    "trim": lambda value: _text(value).strip(),
    "upper": lambda value: _text(value).upper(),
}
JOINS = Named(_join, (0, 1))
LISTS = Named(_list)
FILTERS: dict[str, Named] = {
    "first": Named(lambda value: _pick(value, False)),
    "last": Named(lambda value: _pick(value, True)),
    "length": Named(count_entries),
}
TESTS: dict[str, Named] = {
    "defined": Named(lambda value: not isinstance(value, Undefined)),
    "given": Named(lambda value: not getattr(value, "open", False)),
    "none": Named(lambda value: value is None),
    "string": Named(lambda value: isinstance(value, str)),
    "number": Named(lambda value: isinstance(value, (int, float))),
    "even": Named(lambda value: _divides(value, 2)),
    "odd": Named(lambda value: not _divides(value, 2)),
    "divisibleby": Named(_divides, (1, 1)),
    "in": Named(lambda value, place: _holds(place, value), (1, 1)),
    **{name: Named(_COMPARED[name], (1, 1)) for name in ("eq", "ne", "lt", "gt")},
    "le": Named(_COMPARED["lteq"], (1, 1)),
    "ge": Named(_COMPARED["gteq"], (1, 1)),
}


def unpack(entry: Any, wide: int) -> Any:
    """An entry that is taken apart into so many names; raises Mistake if it has not as many parts."""
    if not isinstance(entry, (list, tuple)) or len(entry) != wide:
        raise Mistake(f"this does not come apart into {wide} names", "take it whole and name its parts")
    return entry
