"""Measures that differ by place and figure alone, such as those of hot months, told as one."""

import re
from collections.abc import Iterable, Sequence
from itertools import groupby, takewhile

from specgen.documents.measures import Measure
from specgen.documents.no_break import sign_figure
from specgen.quantities.format import format_unit
from specgen.quantities.units import UNITS

_PROJECT = ("project",)
_MARKS = ".,;:"
# What parts words: not the space between a figure and its degrees.
_BETWEEN = re.compile(r" (?!°)")
# A figure whose unit stands behind all of them.
_BARE = re.compile(r"-?\d(?:[\d.,/-]*\d)?")
_UNITS = frozenset((*map(format_unit, UNITS), "days"))
_LONGEST = max(len(unit.split(" ")) for unit in _UNITS)
# Words that differ otherwise are names, which are told whole.
_FIGURE = re.compile(r"-?\d[\d.,/-]*( ?[^\d\s]+)?")


def join_alike(measures: Iterable[Measure]) -> tuple[Measure, ...]:
    """The same, with one for those of places without a mark that share clauses, measure, party, and work."""
    joined: list[Measure] = []
    for _, group in groupby(measures, key=lambda one: (one.codes, one.remedy, one.by, one.before, one.sources)):
        alike = list(group)
        apart = any(one.collection or one.subjects == _PROJECT for one in alike)
        joined += alike if apart or len(alike) == 1 else _join(alike)
    return tuple(joined)


def _join(alike: list[Measure]) -> list[Measure]:
    told = join_messages([(", ".join(one.subjects), one.message) for one in alike])
    if not told:
        return alike
    return [alike[0]._replace(subjects=tuple(name for one in alike for name in one.subjects), message=told)]


def join_messages(messages: Sequence[tuple[str, str]]) -> str:
    """`Days reach 85 °F (July), 83 °F (August); in the sun ...`: one sentence, the words that differ with their place.

    Empty where the messages differ at no one point, or by more than a figure.
    """
    words = [_BETWEEN.split(message) for _, message in messages]
    shortest = min(map(len, words))
    first = _count_alike(zip(*words, strict=False))
    last = min(_count_alike(zip(*(reversed(one) for one in words), strict=False)), shortest - first)
    differing = [" ".join(one[first : len(one) - last]) for one in words]
    if first + last == 0 or not all(map(_FIGURE.fullmatch, differing)):
        return ""
    before, after = words[0][:first], words[0][len(words[0]) - last :]
    unit, after = _take_unit(after) if all(map(_BARE.fullmatch, differing)) else ("", after)
    differing = [f"{one}{unit}" for one in differing]
    mark = differing[0][-1:] if differing[0][-1:] in _MARKS and len({one[-1:] for one in differing}) == 1 else ""
    said = ", ".join(
        f"{sign_figure(one.removesuffix(mark))} ({place})" for (place, _), one in zip(messages, differing, strict=True)
    )
    return " ".join([*before, said + mark, *after])


def _take_unit(words: list[str]) -> tuple[str, list[str]]:
    """The unit behind the figures, with its space and mark, which then stands at each of them, and the words after."""
    for length in range(min(_LONGEST, len(words)), 0, -1):
        unit = " ".join(words[:length])
        if unit.rstrip(_MARKS) in _UNITS:
            return f" {unit}", words[length:]
    return "", words


def _count_alike(columns: Iterable[tuple[str, ...]]) -> int:
    return len(list(takewhile(lambda column: len(set(column)) == 1, columns)))
