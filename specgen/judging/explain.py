"""Explains the outcome of a rule for a project: each clause with the figures it was judged by."""

from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass, field, replace
from typing import Any, NamedTuple, TypeVar

from specgen.judging.context import JudgingContext
from specgen.judging.engine import ClauseOutcome, Hit, name_subject, run_clause, tell_remedy
from specgen.judging.margins import find_held, tell_held
from specgen.judging.rule import Clause, Rule
from specgen.model.absence import Absent
from specgen.model.field import Field, Path, bind_path, dotted_path, matches
from specgen.model.project import Project
from specgen.model.working import Lookup, Working
from specgen.resolving.limits_in_force import limit_in_force, print_limit

Answer = TypeVar("Answer")


class ClauseExplanation(NamedTuple):
    """The outcome of one clause for one subject, with the values behind it."""

    code: str  # of the clause
    severity: str  # of the clause, as text
    subject: str  # name of the member
    outcome: str  # met, not met, or pending fields
    figures: tuple[tuple[str, str], ...]  # name and text of each value it was judged by
    remedy: str  # what to do about its violations; empty where there is none


@dataclass(frozen=True)
class _Recording(Project):
    """A project that records which of its fields are read."""

    read: list[Path] = field(default_factory=list)

    def remember(self, question: Hashable, ask: Callable[[], Answer]) -> Answer:  # noqa: ARG002  nothing is kept
        """The answer, looked into anew, so that each member that asks is told what it rests on."""
        return ask()

    def value_of(self, entry: Field, path: Path) -> Any:
        """As of the project."""
        self.read.append(path)
        return super().value_of(entry, path)

    def marks(self, path: Path) -> tuple[str, ...]:
        """As of the project."""
        self.read.append(path)
        return super().marks(path)


def explain(context: JudgingContext, rule: Rule, code: str) -> Iterator[ClauseExplanation]:
    """Every clause of a rule, or the one with the code, for every subject of the project."""
    recording = _Recording(**{name: getattr(context.project, name) for name in _FACTS})
    watched = replace(context, project=recording)
    for clause in rule.clauses:
        if not clause.of_open_items and code in (rule.code, clause.code):
            recording.read.clear()
            for outcome in run_clause(watched, clause):
                yield ClauseExplanation(
                    code=clause.code,
                    severity=str(clause.severity),
                    subject=name_subject(context.project, outcome.subject),
                    outcome=_outcome(outcome),
                    figures=tuple(_figures(context, clause, outcome, tuple(recording.read))),
                    remedy=_remedy(context, clause, outcome),
                )
                recording.read.clear()
                recording.answers.clear()


_FACTS = ("schema", "values", "members", "places", "maker", "defaults", "records")


def _outcome(outcome: ClauseOutcome) -> str:
    if outcome.waits_for:
        return f"pending: {', '.join(outcome.waits_for)}"
    return "not met" if outcome.violations else "met"


def _remedy(context: JudgingContext, clause: Clause, outcome: ClauseOutcome) -> str:
    """What to do about the violations; nothing where there is none."""
    return tell_remedy(context, clause, [Hit(outcome.subject, violation) for violation in outcome.violations])


def _figures(
    context: JudgingContext, clause: Clause, outcome: ClauseOutcome, read: tuple[Path, ...]
) -> Iterator[tuple[str, str]]:
    """The figures of a clause: the fields its condition or test read, computed values, its limit, the margin."""
    for path in _list_read(clause, outcome, read):
        yield dotted_path(path), _field_text(context, path)
    for name in clause.computed:
        yield f"calc.{name.replace('-', '_')}", _computed_text(context, outcome.subject, name)
    if clause.limit:
        row = context.standards.limits[clause.limit]
        value, source = limit_in_force(context.project, row)
        unit = f" {row.unit}" if row.unit else ""
        yield "limit", f"{row.sense.value} {print_limit(context.project, row, value)}{unit} ({source.legend})"
    held = find_held(context, clause, outcome)
    if held is not None:
        yield from tell_held(context, clause, held, read)


def _list_read(clause: Clause, outcome: ClauseOutcome, read: tuple[Path, ...]) -> list[Path]:
    """The fields that a clause names, for a mark that it leaves open those of the members it looked at."""
    named = [bind_path(name, outcome.subject) for name in clause.reads] or [*read]
    paths = (path for name in named for path in ([name] if "*" not in name else _find_read(name, read)))
    return list(dict.fromkeys(paths))


def _find_read(pattern: Path, read: tuple[Path, ...]) -> list[Path]:
    """The paths read that a pattern stands for; where none was, the members that there are not."""
    found = [path for path in read if len(path) == len(pattern) and matches(pattern, path)]
    return found or [pattern[: pattern.index("*")]]


def _field_text(context: JudgingContext, path: Path) -> str:
    try:
        value = context.project.get_or_members(path)
    except Absent:
        value = None
    return "absent" if value is None else context.text(value, context.project.schema.field_at(path))


def _computed_text(context: JudgingContext, subject: Path, name: str) -> str:
    if context.project.schema.node(subject).star is not None:  # the collection itself, which is absent
        return "absent"
    try:
        found = context.resolve(subject, name)
    except Absent:
        return "absent"
    if isinstance(found, Lookup):
        return f"{'yes' if found.result else 'no'}, {found.why}"
    if isinstance(found, Working):
        return f"{found.result:.4g} {found.printed_unit}".rstrip()
    return "does not apply" if found is None else str(found)
