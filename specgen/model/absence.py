"""Absent values, and three-valued logic: the given values may settle a question or leave it open."""

from collections.abc import Callable, Iterable
from functools import partial
from typing import Any, TypeVar, overload

from specgen.model.field import Path, dotted_path

A = TypeVar("A")
B = TypeVar("B")
C = TypeVar("C")
Value = TypeVar("Value")


class Absent(Exception):
    """A value was asked for that the project does not give; `paths` are all missing fields, `path` is the first."""

    def __init__(self, *paths: Path) -> None:
        super().__init__(*map(dotted_path, paths))
        self.path, self.paths = paths[0], paths


def all_known(*tests: Callable[[], Any]) -> bool:
    """Whether all tests hold; one that fails settles it. Raises Absent if only missing values could decide."""
    return _settle(tests, settles=False)


def any_known(*tests: Callable[[], Any]) -> bool:
    """Whether any test holds; one that does settles it. Raises Absent if only missing values could decide."""
    return _settle(tests, settles=True)


def any_of(members: Iterable[A], test: Callable[[A], Any]) -> bool:
    """As `any_known` of a test on each member, asked one by one until one settles it."""
    return _settle((partial(test, member) for member in members), settles=True)


def _settle(tests: Iterable[Callable[[], Any]], *, settles: bool) -> bool:
    """`settles` if any test returns it; else its opposite, or Absent if a value is missing."""
    missing: list[Path] = []
    for test in tests:
        try:
            if bool(test()) is settles:
                return settles
        except Absent as absent:
            missing += absent.paths
    if missing:
        raise Absent(*dict.fromkeys(missing))
    return not settles


@overload
def read_all(a: Callable[[], A], b: Callable[[], B], /) -> tuple[A, B]: ...
@overload
def read_all(a: Callable[[], A], b: Callable[[], B], c: Callable[[], C], /) -> tuple[A, B, C]: ...
@overload
def read_all(*reads: Callable[[], Any]) -> tuple[Any, ...]: ...
def read_all(*reads: Callable[[], Any]) -> tuple[Any, ...]:
    """The values that a question needs together; raises Absent with all missing paths."""
    values: list[Any] = []
    missing: list[Path] = []
    for read in reads:
        try:
            values.append(read())
        except Absent as absent:
            missing += absent.paths
    if missing:
        raise Absent(*dict.fromkeys(missing))
    return tuple(values)


def if_given(read: Callable[[], Value]) -> Value | None:
    """The value that `read` returns, or None if it is absent."""
    try:
        return read()
    except Absent:
        return None
