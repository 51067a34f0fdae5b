"""A value that is not given, and logic with three values: what is given may settle a question, or leave it open."""

from collections.abc import Callable
from typing import Any, TypeVar, overload

from specgen.model.field import Path, dotted

A = TypeVar("A")
B = TypeVar("B")
C = TypeVar("C")
Value = TypeVar("Value")


class Absent(Exception):
    """A value was asked for that the project does not give; `paths` are all that a question waits for."""

    def __init__(self, *paths: Path) -> None:
        super().__init__(*map(dotted, paths))
        self.path, self.paths = paths[0], paths


def all_known(*tests: Callable[[], Any]) -> bool:
    """Whether all tests hold; one that fails settles it. Raises Absent where only missing values could."""
    return _settled(tests, settles=False)


def any_known(*tests: Callable[[], Any]) -> bool:
    """Whether any test holds; one that does settles it. Raises Absent where only missing values could."""
    return _settled(tests, settles=True)


def _settled(tests: tuple[Callable[[], Any], ...], *, settles: bool) -> bool:
    """Whether the tests come to `settles`: the first that does decides, else a missing value leaves it open."""
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
def read_all(*reads: Callable[[], Any]) -> tuple[Any, ...]:
    """The values that a question needs together; raises Absent with all that are missing."""
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
    """The value that `read` reads, or None where it is absent."""
    try:
        return read()
    except Absent:
        return None
