"""What a clause holds against what for one subject, and how much is to spare or lacks."""

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from typing import Any, NamedTuple

from specgen.judging.context import JudgingContext
from specgen.judging.engine import ClauseOutcome
from specgen.judging.rule import Clause
from specgen.model.absence import Absent
from specgen.model.capacity import Check, Comparison
from specgen.model.field import Path, bind_path
from specgen.quantities.comparison import Sense, equal
from specgen.quantities.quantity import Quantity, round_quantity, subtract_temperatures
from specgen.resolving.limits_in_force import plan_source

# What a value must be where a clause fires at the relation.
_RIGHT_SIDE = {"<": Sense.AT_LEAST, "<=": Sense.AT_LEAST, ">": Sense.AT_MOST, ">=": Sense.AT_MOST}
_LACKS = {Sense.AT_LEAST: "short by", Sense.AT_MOST: "over by", Sense.EXACTLY: "off by"}


class Held(NamedTuple):
    """A value and the limit it is held against; `sense` is the side of the limit that is right."""

    value: Any
    sense: Sense
    limit: Any

    @property
    def is_right(self) -> bool:
        """Whether the value stands on the right side of the limit; one on the limit does not."""
        right = {Sense.AT_LEAST: self.value > self.limit, Sense.AT_MOST: self.value < self.limit}
        return bool(right.get(self.sense))


def find_held(context: JudgingContext, clause: Clause, outcome: ClauseOutcome) -> Held | None:
    """What a clause holds against what: a sum, the figures of its condition, or of its violation; None for words."""
    if outcome.waits_for or "*" in outcome.subject:
        return None
    ways = (_held_by_sum, _held_by_condition, _held_by_violation, _held_by_row)
    found = (way(context, clause, outcome) for way in ways)
    return next((held for held in found if held is not None and _is_told_by(held, outcome)), None)


def _is_told_by(held: Held, outcome: ClauseOutcome) -> bool:
    """Whether two figures are what the outcome rests on: alike, and on the side of each other that it tells."""
    if not _are_alike(held.value, held.limit):
        return False
    return equal(held.value, held.limit) or held.is_right != bool(outcome.violations)


def _held_by_sum(context: JudgingContext, clause: Clause, outcome: ClauseOutcome) -> Held | None:
    """The comparison that a computed value is made for."""
    for name in clause.computed:
        for check in (one for one in context.resolve.find(name).checks if clause.code in one.codes):
            made = _compare(context, check, outcome.subject, name)
            if made is not None:
                return Held(made.demand, made.sense, made.limit)
    return None


def _compare(context: JudgingContext, check: Check, subject: Path, name: str) -> Comparison | None:
    """A check of a computed value; None where that does not apply, or a value is absent."""
    try:
        member = context.resolve.member(subject, name)
        applies = context.resolve(member, name) is not None
        return check.make(context.project.view(member), partial(context.resolve, member)) if applies else None
    except Absent:
        return None


def _held_by_condition(context: JudgingContext, clause: Clause, outcome: ClauseOutcome) -> Held | None:
    if clause.compare is None:
        return None
    limit = context.limit(clause.limit) if clause.limit else None
    try:
        subject = context.project.view(outcome.subject)
        compared = clause.compare(subject, context.project.root(), limit, context.limit)
    except Absent:
        return None
    sense = _RIGHT_SIDE.get(compared[1]) if compared is not None else None
    return Held(compared[0], sense, compared[2]) if compared is not None and sense is not None else None


def _held_by_violation(context: JudgingContext, clause: Clause, outcome: ClauseOutcome) -> Held | None:
    """The values of a violation, on the wrong side of each other."""
    for hit in outcome.violations:
        if _are_alike(hit.value, hit.wanted):
            sense = context.standards.limits[clause.limit].sense if clause.limit else None
            return Held(hit.value, sense or _guess_sense(hit.value, hit.wanted), hit.wanted)
    return None


def _guess_sense(value: Any, wanted: Any) -> Sense:
    """The side on which a value is wrong tells which is right."""
    return Sense.AT_MOST if value > wanted else Sense.AT_LEAST if value < wanted else Sense.EXACTLY


def _held_by_row(context: JudgingContext, clause: Clause, outcome: ClauseOutcome) -> Held | None:
    """The field at which a finding would stand, against the row of the limits."""
    at = bind_path(clause.at, outcome.subject)
    if not clause.limit or "*" in at or context.project.schema.field_at(at) is None:
        return None
    row = context.standards.limits[clause.limit]
    return Held(context.project.get(at), row.sense, context.limit(clause.limit))


def _are_alike(value: Any, limit: Any) -> bool:
    if isinstance(value, Quantity) and isinstance(limit, Quantity):
        return value.dimension == limit.dimension
    return all(isinstance(one, int | float | Fraction) and not isinstance(one, bool) for one in (value, limit))


def tell_held(context: JudgingContext, clause: Clause, held: Held, read: tuple[Path, ...]) -> Iterator[tuple[str, str]]:
    """The limit with its source, where no row of the limits tells it, and the margin."""
    if not clause.limit:
        yield "limit", f"{held.sense.value} {context.text(held.limit, None)} ({_find_source(context, held, read)})"
    yield "margin", _tell_margin(context, held)


def _find_source(context: JudgingContext, held: Held, read: tuple[Path, ...]) -> str:
    """Where a limit comes from: a field of the project that was read, else a sum."""
    for path in read:
        field = context.project.schema.field_at(path)
        if field is not None and context.project.get(path) == held.limit:
            return plan_source(context.project, path, field, context.standards).legend
    return "computed"


def _tell_margin(context: JudgingContext, held: Held) -> str:
    """`1/64 in to spare`, `short by 1/64 in`, or that it is on the limit."""
    if equal(held.value, held.limit):
        return "none, on the limit"
    apart = context.text(_round(_subtract(*sorted((held.value, held.limit)))), None)
    return f"{apart} to spare" if held.is_right else f"{_LACKS.get(held.sense, 'off by')} {apart}"


def _round(apart: Any) -> Any:
    """A difference as it prints: a fraction of an inch as it is."""
    return round_quantity(apart) if isinstance(apart, Quantity) and apart.unit not in ("in", "ft") else apart


def _subtract(less: Any, more: Any) -> Any:
    if isinstance(more, Quantity) and more.dimension == "temperature":
        return subtract_temperatures(more, less)
    return more - less
