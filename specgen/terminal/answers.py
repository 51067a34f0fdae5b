"""The answers of calculations for a project: what is found, what it is held against, and whether that holds.

The texts of the figures are those that documents print; who makes an answer gives them.
"""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any, NamedTuple

from specgen.model.problem import Problem
from specgen.quantities.comparison import Outcome, Sense
from specgen.terminal.columns import align_columns

_YES, _NO = "yes", {Sense.AT_MOST: "no: exceeds", Sense.AT_LEAST: "no: falls short"}
_RIGHT, _OPEN = "yes or no", "not compared"
_MOST_NAMED = 2


class Held(NamedTuple):
    """A figure and what it is held against; while the limit is not given, `waits` names the fields it comes from."""

    demand: str  # what is compared, in words
    found: str
    limit: str  # what it is held against, in words
    wanted: str
    use: str  # the share of the limit, or the margin
    sense: Sense = Sense.AT_MOST
    outcome: Outcome = Outcome.MISSING
    clauses: tuple[str, ...] = ()
    waits: tuple[str, ...] = ()
    weight: float = 0.0  # how much of the limit is used

    @property
    def status(self) -> str:
        """`yes`, `no: exceeds`, or why nothing is compared."""
        if self.outcome is Outcome.MISSING:
            return f"{_OPEN}, pending {_list_first(self.waits)}" if self.waits else _OPEN
        return _YES if self.outcome is Outcome.WITHIN else _NO[self.sense]


class Answer(NamedTuple):
    """The answer for one member: its result, its figures by what they are called, and what they are held against."""

    member: str
    result: str = ""  # with its name, where no comparison tells it
    parts: dict[str, str] = {}  # what it is made of: the sealant, its class
    held: tuple[Held, ...] = ()
    figures: dict[str, str] = {}  # what is told besides
    waits: tuple[str, ...] = ()  # the absent fields, dotted
    problems: tuple[Problem, ...] = ()

    @property
    def without(self) -> str:
        """Why there is no answer; empty where there is one."""
        if self.waits:
            return f"pending {', '.join(self.waits)}"
        if self.problems:
            return "; ".join(map(str, self.problems))
        return "" if self.result else "does not apply"


class AnswerTable(NamedTuple):
    """All answers of one calculation; `noun` says what its members are."""

    name: str
    title: str
    noun: str
    answers: tuple[Answer, ...]


def format_table(table: AnswerTable, width: int | None = None) -> str:
    """A line for each member and comparison; below them, for each member without an answer, what it waits for.

    Where a line is longer than `width`, each of its cells has a line of its own.
    """
    if not table.answers:
        return f"{table.title}\n\nno {table.noun} in the project; add one to have it computed\n"
    answered = [answer for answer in table.answers if not answer.without]
    rows = list(_list_rows(table.noun, answered)) if answered else []
    text = _fit(rows, width)
    without = "".join(f"{answer.member}: {answer.without}\n" for answer in table.answers if answer.without)
    return "\n".join(part for part in (f"{table.title}\n", text, without) if part)


def _stack(rows: Sequence[Sequence[str]]) -> str:
    """The cells of rows below each other, each behind its head."""
    heads, *lines = rows
    blocks = (
        [
            f"{heads[0]} {line[0]}",
            *(f"  {head}: {cell}" for head, cell in zip(heads[1:], line[1:], strict=True) if cell),
        ]
        for line in lines
    )
    return "".join(f"{line}\n" for block in blocks for line in block)


def _list_rows(noun: str, answers: Sequence[Answer]) -> Iterator[list[str]]:
    parts = list(dict.fromkeys(name for answer in answers for name in answer.parts))
    figures = list(dict.fromkeys(name for answer in answers for name in answer.figures))
    apart = list(dict.fromkeys((held.demand, held.limit) for answer in answers for held in answer.held))
    heads = [*(apart[0] if len(apart) == 1 else ("found", "held against")), "use or margin", _RIGHT]
    yield [noun, *parts, *(heads if apart else []), *figures]
    for answer in answers:
        before = [answer.parts.get(name, "") for name in parts]
        behind = [answer.figures.get(name, "") for name in figures]
        sides = [_tell_sides(held, len(apart) > 1) for held in answer.held] or [[""] * len(heads)] * bool(apart) or [[]]
        yield [answer.member, *before, *sides[0], *behind]
        yield from ([answer.member, *[""] * len(parts), *more, *[""] * len(figures)] for more in sides[1:])


def _tell_sides(held: Held, named: bool) -> list[str]:
    """The cells of a comparison, its sides with their names where others stand in the same columns."""
    sides = [f"{held.demand} {held.found}", f"{held.limit} {held.wanted}"] if named else [held.found, held.wanted]
    return [*map(str.rstrip, sides), held.use, held.status]


def format_overview(tables: Iterable[AnswerTable], width: int | None = None) -> str:
    """A line for each calculation: the member nearest to its limit, what it is held against, what is missing.

    Where a line is longer than `width`, each of its cells has a line of its own.
    """
    rows = [
        ["calculation", "for", "result", "held against", _RIGHT, "missing"],
        *(_overview_row(table) for table in tables),
    ]
    return _fit(rows, width)


def _fit(rows: Sequence[Sequence[str]], width: int | None) -> str:
    """Rows in columns, or with their cells below each other where those are wider than the terminal."""
    text = align_columns(rows)
    return _stack(rows) if width is not None and max(map(len, text.splitlines()), default=0) > width else text


def _overview_row(table: AnswerTable) -> list[str]:
    answered = [answer for answer in table.answers if not answer.without]
    waits = dict.fromkeys(path for answer in table.answers for path in answer.waits)
    faults = [str(problem) for answer in table.answers for problem in answer.problems]
    missing = _list_first([*faults, *waits]) if faults or waits else ""
    if not answered:
        return [table.name, "", "" if missing else "does not apply", "", "", missing]
    held = [(one, answer) for answer in answered for one in answer.held if one.outcome is not Outcome.MISSING]
    of = f" (of {len(table.answers)})" if len(table.answers) > 1 else ""
    if not held:
        first = answered[0]
        waits |= dict.fromkeys(path for answer in answered for one in answer.held for path in one.waits)
        missing = _list_first([*faults, *waits]) if faults or waits else ""
        return [table.name, f"{first.member}{of}", first.result, "", "", missing]
    one, answer = max(held, key=lambda pair: (pair[0].outcome is Outcome.OUTSIDE, pair[0].weight))
    sides = (f"{one.demand} {one.found}", f"{one.limit} {one.wanted}")
    return [table.name, f"{answer.member}{of}", *sides, one.status, missing]


def _list_first(names: Sequence[str]) -> str:
    more = len(names) - _MOST_NAMED
    return ", ".join(names[:_MOST_NAMED]) + (f", and {more} more" if more > 0 else "")


def held_to_data(held: Held) -> dict[str, Any]:
    """A comparison as data."""
    return {
        "demand": held.demand,
        "found": held.found,
        "limit": held.limit,
        "wanted": held.wanted,
        "use": held.use,
        "outcome": held.outcome.value,
        "clauses": list(held.clauses),
        "needs": list(held.waits),
    }
