"""The small language in which the schema and the standards say when something holds.

Terms joined by `and` and `or` (`and` binds tighter): `PATH = value`, `!=`, `in {a, b}`, `not in`,
`has a`, `has {a, b}` (any), `>`, `>=`, `<`, `<=` against a number, a quantity or `4 x PATH`,
`PATH is given`, `is not given`, `is empty`, `is not empty`, `count COLLECTION > 1`.
A star that also stands in the path it is judged for means the same member, any other star any
member (of the same elevation, where both stand on one). A term whose value is absent does not hold.
"""

import re
from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import cache
from typing import Any, NamedTuple, Protocol

from specgen.model.field import Path, Schema
from specgen.quantities.comparison import equal, less, more
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import Quantity, dimension_of

Look = Callable[[str], Any]


class Facts(Protocol):
    """What a condition is held against: the values and members of a project by path, and their schema."""

    @property
    def schema(self) -> Schema:
        """The fields there are."""

    @property
    def values(self) -> Mapping[Path, Any]:
        """The values given."""

    @property
    def members(self) -> Mapping[Path, tuple[str, ...]]:
        """The marks of each collection given."""

    def get(self, path: Path) -> Any:
        """The value at a path, or None."""

    def given(self, path: Path) -> bool:
        """Whether a path is given."""


_TERM = re.compile(
    r"(?P<count>count )?(?P<path>[a-z_][\w.*]*) (?:(?P<state>is not given|is given|is not empty|is empty)"
    r"|(?P<relation>not in|in|has|=|!=|<=|>=|<|>) (?P<right>.+))"
)


class Term(NamedTuple):
    """One comparison of a condition."""

    path: Path
    relation: str
    right: tuple[str, ...]
    counted: bool


class ConditionError(ValueError):
    """A condition is not written in the language above."""


@cache
def parse_condition(text: str) -> tuple[tuple[Term, ...], ...]:
    """The alternatives of a condition, each a run of terms; raises ConditionError."""
    return tuple(tuple(_term(part) for part in side.split(" and ")) for side in text.split(" or "))


def _term(text: str) -> Term:
    match = _TERM.fullmatch(text.strip())
    if not match:
        raise ConditionError(f"{text!r} is no term of a condition")
    right = (match["right"] or "").strip()
    values = tuple(v.strip() for v in right.strip("{}").split(",")) if right.startswith("{") else (right,)
    return Term(tuple(match["path"].split(".")), match["state"] or match["relation"], values, bool(match["count"]))


def holds(text: str, project: Facts, path: Path = (), look: Look | None = None) -> bool:
    """Whether a condition holds at a path; `look` answers `calc.` names where there are any."""
    return any(all(_holds(term, project, path, look) for term in side) for side in parse_condition(text))


def _holds(term: Term, project: Facts, path: Path, look: Look | None) -> bool:
    if term.path[0] == "calc":
        return look is not None and _yes(look(term.path[1])) == term.right[0]
    if term.counted:
        return _compare(len(project.members.get(term.path, ())), term.relation, int(term.right[0]))
    places = _bound(term.path, project, path)
    if term.relation in ("is given", "is not given"):
        return any(project.given(p) for p in places) == (term.relation == "is given")
    return any(_value_holds(term, project, p, path) for p in places)


def _yes(value: Any) -> str:
    return {True: "yes", False: "no"}.get(value, str(value)) if isinstance(value, bool) else str(value)


def _bound(pattern: Path, project: Facts, path: Path) -> list[Path]:
    """The paths a pattern stands for, its stars bound to the members the judged path goes through."""
    paths: list[Path] = [()]
    for name in pattern:
        if name != "*":
            paths = [p + (name,) for p in paths]
        else:
            paths = [p + (mark,) for p in paths for mark in _marks(p, project, path)]
    return paths


def _marks(collection: Path, project: Facts, path: Path) -> tuple[str, ...]:
    depth = len(collection)
    if path[:depth] == collection and len(path) > depth:
        return (path[depth],)
    marks = project.members.get(collection, ())
    face = _face(project, path)
    if face is None or "elevation" not in project.schema.node((*collection, "*")).children:
        return marks
    return tuple(mark for mark in marks if project.values.get((*collection, mark, "elevation"), face) == face)


def _face(project: Facts, path: Path) -> str | None:
    """The elevation a judged member stands on: things on one elevation are told of that elevation only."""
    if len(path) < 2:
        return None
    return path[1] if path[0] == "elevations" else project.values.get((*path[:2], "elevation"))


def _value_holds(term: Term, project: Facts, at: Path, path: Path) -> bool:
    value = project.get(at)
    if value is None:
        return False
    if term.relation == "is empty":
        return not value
    if term.relation == "is not empty":
        return bool(value)
    if term.relation == "has":
        return any(str(entry) in term.right for entry in value)
    if term.relation in ("in", "not in"):
        return (_yes(value) in term.right) == (term.relation == "in")
    if term.relation in ("=", "!=") and not isinstance(value, Quantity):
        return (_yes(value) == term.right[0]) == (term.relation == "=")
    return _compare(value, term.relation, _right(term.right[0], value, project, at, path))


def _right(text: str, value: Any, project: Facts, at: Path, path: Path) -> Any:
    times = re.fullmatch(r"(\d+) x ([\w.*]+)", text)
    if times:
        other = project.get(_bound(tuple(times[2].split(".")), project, path)[0])
        return None if other is None else int(times[1]) * other
    if isinstance(value, Quantity):
        made = project.schema.node(at).field
        assert made is not None
        return parse_quantity(text, dimension_of(made.dimension, made.unit_ip))
    return Fraction(text)


def _compare(value: Any, relation: str, limit: Any) -> bool:
    if limit is None:
        return False
    return {
        "=": lambda: equal(value, limit),
        "!=": lambda: not equal(value, limit),
        "<": lambda: less(value, limit),
        ">": lambda: more(value, limit),
        "<=": lambda: not more(value, limit),
        ">=": lambda: not less(value, limit),
    }[relation]()
