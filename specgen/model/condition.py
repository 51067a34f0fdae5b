"""The condition language of the schema, the standards and the clauses of rules.

Terms joined by `and` and `or` (`and` binds tighter), with parentheses and `not (...)` around a part of them:
`PATH = value`, `!=`, `in {a, b}`, `not in`, `has a`, `has {a, b}` (any), `>`, `>=`, `<`, `<=` against a number, a
quantity or `4 x PATH`, `PATH is given`, `is not given`, `is empty`, `is not empty`, `count COLLECTION > 1`.
"""

import re
from collections.abc import Callable, Iterator
from functools import cache
from typing import Literal, NamedTuple

from specgen.model.field import Path

_WORD = re.compile(r"\{[^{}]*\}|limit\([\w.]+\)|[()]|[^\s(){}]+")
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


class Joined(NamedTuple):
    """Parts that must `all` hold, of which `any` must hold, or of which `none` may."""

    how: Literal["all", "any", "none"]
    parts: tuple["Condition", ...]


Condition = Term | Joined


class ConditionError(ValueError):
    """A text is not a valid condition."""


@cache
def parse_condition(text: str) -> Condition:
    """The parsed condition of a text; raises ConditionError."""
    words = _WORD.findall(text)
    condition = _any(words)
    if words:
        raise ConditionError(f"{text!r}: nothing is open at {words[0]!r}")
    return condition


def terms(condition: Condition) -> Iterator[Term]:
    """The terms of a condition, in the order of its text."""
    if isinstance(condition, Term):
        yield condition
    else:
        for part in condition.parts:
            yield from terms(part)


def truth(condition: Condition, of_term: Callable[[Term], bool | None]) -> bool | None:
    """Whether a condition holds, by the truth of its terms; None if unknown terms leave it open."""
    if isinstance(condition, Term):
        return of_term(condition)
    settles, open_ = condition.how != "all", False
    for part in condition.parts:
        found = truth(part, of_term)
        if found is settles:
            return condition.how == "any"
        open_ |= found is None
    return None if open_ else condition.how != "any"


def open_terms(condition: Condition, of_term: Callable[[Term], bool | None]) -> Iterator[Term]:
    """The unknown terms that leave a condition open, without those of parts already settled."""
    if truth(condition, of_term) is not None:
        return
    if isinstance(condition, Term):
        yield condition
    else:
        for part in condition.parts:
            yield from open_terms(part, of_term)


def _any(words: list[str]) -> Condition:
    parts = [_all(words)]
    while words[:1] == ["or"]:
        del words[0]
        parts.append(_all(words))
    return parts[0] if len(parts) == 1 else Joined("any", tuple(parts))


def _all(words: list[str]) -> Condition:
    parts = [_unit(words)]
    while words[:1] == ["and"]:
        del words[0]
        parts.append(_unit(words))
    return parts[0] if len(parts) == 1 else Joined("all", tuple(parts))


def _unit(words: list[str]) -> Condition:
    """A part in parentheses, its negation, or a term."""
    if words[:2] == ["not", "("]:
        del words[0]
        return Joined("none", (_unit(words),))
    if words[:1] != ["("]:
        return _term(words)
    del words[0]
    inner = _any(words)
    if words[:1] != [")"]:
        raise ConditionError(f"a parenthesis is not closed{f' before {words[0]!r}' if words else ''}")
    del words[0]
    return inner


def _term(words: list[str]) -> Term:
    end = next((n for n, word in enumerate(words) if word in ("and", "or", "(", ")")), len(words))
    text = " ".join(words[:end])
    del words[:end]
    match = _TERM.fullmatch(text)
    if not match:
        raise ConditionError(f"{text!r} is no term of a condition")
    right = match["right"] or ""
    values = tuple(v.strip() for v in right.strip("{}").split(",")) if right.startswith("{") else (right,)
    return Term(tuple(match["path"].split(".")), match["state"] or match["relation"], values, bool(match["count"]))
