"""Explains the outcome of a rule for a project: each clause with the figures it was judged by."""

from collections import Counter
from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass, field, replace
from typing import Any, NamedTuple, TypeVar

from specgen.judging.context import JudgingContext
from specgen.judging.engine import ClauseOutcome, Hit, judge_view, make_arguments, run_clause, tell_remedy
from specgen.judging.margins import find_held, tell_held
from specgen.judging.rule import Clause, Rule
from specgen.judging.subject_names import name_subject
from specgen.model.absence import Absent
from specgen.model.field import Field, Path, bind_path, dotted_path, matches
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS
from specgen.model.working import Lookup, Working
from specgen.recording.entry_kinds import owes
from specgen.resolving.limits_in_force import limit_in_force, print_limit

Answer = TypeVar("Answer")
# Entries of one outcome that are told one by one; nobody reads more of them.
_MOST_ENTRIES = 10
_NONE_READ = "no such reading"


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
    """Every clause of a rule, or the one with the code, for every subject of the project.

    Of the entries of the record those that a clause is not met by, or waits for; those that meet it are counted.
    """
    recording = _Recording(**{name: getattr(context.project, name) for name in _FACTS})
    watched = replace(context, project=recording)
    for clause in rule.clauses:
        if clause.of_open_items or code not in (rule.code, clause.code):
            continue
        if clause.of_entries:
            yield from _explain_entries(context, watched, clause)
            continue
        recording.read.clear()
        for outcome in run_clause(watched, clause):
            yield _explain_one(context, clause, outcome, tuple(recording.read))
            recording.read.clear()
            recording.answers.clear()


def _explain_one(
    context: JudgingContext, clause: Clause, outcome: ClauseOutcome, read: tuple[Path, ...]
) -> ClauseExplanation:
    return ClauseExplanation(
        code=clause.code,
        severity=str(clause.severity),
        subject=name_subject(context.project, outcome.subject),
        outcome=_outcome(outcome),
        figures=tuple(_figures(context, clause, outcome, read)),
        remedy=_remedy(context, clause, outcome),
    )


def _explain_entries(context: JudgingContext, watched: JudgingContext, clause: Clause) -> Iterator[ClauseExplanation]:
    """The first entries of each outcome but that of being met, and how many more there are of each."""
    counts: Counter[str] = Counter()
    for outcome in run_clause(context, clause):
        state = _find_state(context.project, outcome)
        counts[state] += 1
        if state in ("not met", "pending") and counts[state] <= _MOST_ENTRIES:
            yield _explain_one(context, clause, outcome, _watch(watched, clause, outcome.subject))
    for state in ("not met", "pending"):
        if counts[state] > _MOST_ENTRIES:
            more = _count_entries(counts[state] - _MOST_ENTRIES, "more ")
            yield ClauseExplanation(clause.code, str(clause.severity), more, state, (), "")
    if counts[_NONE_READ]:
        yield ClauseExplanation(
            clause.code, str(clause.severity), _count_entries(counts[_NONE_READ]), _NONE_READ, (), ""
        )
    if counts["met"]:
        met, limit = _count_entries(counts["met"]), tuple(_list_limit(context, clause))
        yield ClauseExplanation(clause.code, str(clause.severity), met, "met", limit, "")


def _find_state(project: Project, outcome: ClauseOutcome) -> str:
    """How a clause ends for an entry; where it waits only for what an entry of its kind does not hold, none is read."""
    if outcome.violations or not outcome.waits_for:
        return "not met" if outcome.violations else "met"
    entry, own = project.records.find(outcome.subject), f"{dotted_path(outcome.subject)}."
    if entry is None or entry.collection != "log":
        return "pending"
    kept = (need.startswith(own) and not owes(entry.values, need.removeprefix(own)) for need in outcome.waits_for)
    return _NONE_READ if all(kept) else "pending"


def _count_entries(number: int, before: str = "") -> str:
    return f"{number} {before}{'entry' if number == 1 else 'entries'}"


def _watch(watched: JudgingContext, clause: Clause, subject: Path) -> tuple[Path, ...]:
    """The fields that a clause reads of an entry, found by asking it once more; none of a collection that is absent."""
    recording = watched.project
    assert isinstance(recording, _Recording)
    recording.read.clear()
    recording.answers.clear()
    if len(subject) > 1:
        judge_view(watched, clause, subject, recording.view(subject), make_arguments(watched, clause, subject))
    return tuple(recording.read)


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
    yield from _list_limit(context, clause)
    held = find_held(context, clause, outcome)
    if held is not None:
        yield from tell_held(context, clause, held, read)


def _list_limit(context: JudgingContext, clause: Clause) -> Iterator[tuple[str, str]]:
    """The row of the limits that a clause is judged by, if it is by one."""
    if clause.limit:
        row = context.standards.limits[clause.limit]
        value, source = limit_in_force(context.project, row)
        unit = f" {row.unit}" if row.unit else ""
        yield "limit", f"{row.sense.value} {print_limit(context.project, row, value)}{unit} ({source.legend})"


def _list_read(clause: Clause, outcome: ClauseOutcome, read: tuple[Path, ...]) -> list[Path]:
    """The fields that a clause names, for a mark that it leaves open those of the members it looked at."""
    named = [bind_path(name, outcome.subject) for name in clause.reads] or [*read]
    paths = (path for name in named for path in ([name] if "*" not in name else _find_read(name, read)))
    # That a clause looks the other entries up is no figure.
    return [path for path in dict.fromkeys(paths) if path[1:] or path[0] not in COLLECTIONS]


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
