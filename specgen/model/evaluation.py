"""Evaluates conditions of the schema and the standards for a project.

A star that is also in the path being judged means the same member; any other star means any member (of the same
elevation, if both have one). A term whose value is absent does not hold.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any, Protocol

from specgen.model.condition import Term, parse_condition, truth
from specgen.model.field import Path, Schema, bind_path
from specgen.model.record import COLLECTIONS
from specgen.quantities.comparison import equal, less, more
from specgen.quantities.number import parse_number
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import Quantity, find_dimension

Look = Callable[[str], Any]
_TIMES = re.compile(r"(\d+) x ([\w.*]+)")


class Facts(Protocol):
    """What a condition is evaluated on: the values and members of a project by path, and their schema."""

    @property
    def schema(self) -> Schema:
        """The schema of the fields."""

    @property
    def values(self) -> Mapping[Path, Any]:
        """The given values by path."""

    @property
    def members(self) -> Mapping[Path, tuple[str, ...]]:
        """The marks of each given collection."""

    def get(self, path: Path) -> Any:
        """The value at a path, or None."""

    @property
    def answers(self) -> dict[tuple[Term, Path, str | None], bool]:
        """Terms on any member, by their bound path and elevation, with their answers: each is worked out once."""

    def is_given(self, path: Path) -> bool:
        """Whether a path is given."""

    def count_members(self, path: Path) -> int:
        """How many members a collection has."""

    def find_referring(self, collection: Path, name: str, mark: str) -> tuple[str, ...]:
        """The members of a given collection whose reference `name` is `mark` or missing."""


def evaluate(text: str, facts: Facts, path: Path = (), look: Look | None = None) -> bool:
    """Whether a condition holds at a path; `look` answers `calc.` names, if any."""
    return bool(truth(parse_condition(text), lambda term: _holds(term, facts, path, look)))


def _holds(term: Term, facts: Facts, path: Path, look: Look | None) -> bool:
    if term.path[0] == "calc":
        return look is not None and word_of(look(term.path[1])) == term.right[0]
    if term.counted:
        return compare(facts.count_members(term.path), term.relation, int(term.right[0]))
    if term.path[0] in COLLECTIONS:  # where `log.step` is that of the entry itself
        term = term._replace(path=(term.path[0], "*", term.path[-1]))
    # Asked at one of many members, a term on any member of another collection has one answer for all of them.
    shared = (term, bind_path(term.path, path), _face(facts, path))
    if "*" not in shared[1] or _TIMES.fullmatch(term.right[0]):
        return _any_holds(term, facts, path)
    if shared not in facts.answers:
        facts.answers[shared] = _any_holds(term, facts, path)
    return facts.answers[shared]


def _any_holds(term: Term, facts: Facts, path: Path) -> bool:
    """Whether a term holds at any of the paths that its pattern matches."""
    places = _bind(term.path, facts, path)
    if term.relation in ("is given", "is not given"):
        return any(facts.is_given(p) for p in places) == (term.relation == "is given")
    return any(_value_holds(term, facts, p, path) for p in places)


def word_of(value: Any) -> str:
    """A value as conditions write it: yes or no for a truth value."""
    return ("yes" if value else "no") if isinstance(value, bool) else str(value)


def _bind(pattern: Path, facts: Facts, path: Path) -> list[Path]:
    """The paths that match a pattern, its stars bound to the members on the path being judged."""
    paths: list[Path] = [()]
    for name in pattern:
        if name != "*":
            paths = [p + (name,) for p in paths]
        else:
            paths = [p + (mark,) for p in paths for mark in _marks(p, facts, path)]
    return paths


def _marks(collection: Path, facts: Facts, path: Path) -> tuple[str, ...]:
    depth = len(collection)
    if path[:depth] == collection and len(path) > depth:
        return (path[depth],)
    face = _face(facts, path)
    if face is None or "elevation" not in facts.schema.node((*collection, "*")).children:
        return facts.members.get(collection, ())
    return facts.find_referring(collection, "elevation", face) if collection in facts.members else ()


def _face(facts: Facts, path: Path) -> str | None:
    """The elevation of the member being judged, as members on one elevation are compared within it only."""
    if len(path) < 2:
        return None
    if path[0] in COLLECTIONS:
        noted = "elevation" in facts.schema.node((path[0], "*")).children
        face = facts.get((*path[:2], "elevation")) if noted else None
        return None if face is None else str(face)
    return path[1] if path[0] == "elevations" else facts.values.get((*path[:2], "elevation"))


def _value_holds(term: Term, facts: Facts, at: Path, path: Path) -> bool:
    value = facts.get(at)
    if value is None:
        return False
    if term.relation in WORDS_OR_LISTS or (term.relation in ("=", "!=") and not isinstance(value, Quantity)):
        return holds_of_word(value, term)
    return compare(value, term.relation, _right(term.right[0], value, facts, at, path))


WORDS_OR_LISTS = ("is empty", "is not empty", "has", "in", "not in")


def holds_of_word(value: Any, term: Term) -> bool:
    """Whether a word, a truth value or a list of words meets a term."""
    if term.relation in ("is empty", "is not empty"):
        return bool(value) == (term.relation == "is not empty")
    if term.relation == "has":
        return any(str(entry) in term.right for entry in value)
    return (word_of(value) in term.right) == (term.relation in ("in", "="))


def _right(text: str, value: Any, facts: Facts, at: Path, path: Path) -> Any:
    times = _TIMES.fullmatch(text)
    if times:
        other = facts.get(_bind(tuple(times[2].split(".")), facts, path)[0])
        return None if other is None else int(times[1]) * other
    if isinstance(value, Quantity):
        field = facts.schema.node(at).field
        assert field is not None
        return parse_quantity(text, find_dimension(field.dimension, field.unit_ip))
    return parse_number(text)


def compare(value: Any, relation: str, limit: Any) -> bool:
    """Whether a value meets a relation to a limit, within the tolerance of a conversion; False without a limit."""
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
