"""How each reading of the entries of one step ends: outside, missing, not evaluated, within or not applicable."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import compress

from specgen.judging.context import JudgingContext
from specgen.judging.engine import ClauseOutcome
from specgen.judging.record_asking import Answer
from specgen.judging.record_group import KEYS, EntryGroup
from specgen.judging.rule import Clause, Violation
from specgen.model.condition import parse_condition, terms
from specgen.model.field import Field, dotted_path
from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.record_judgment import ReadingsAlike, ReadingState

# What is measured or ticked; anything else is a reading where a clause is placed at it.
_MEASURED = ("quantity", "number", "percent", "yes_no", "choice", "list")

_Reasons = dict[int, str]  # by the place of the entry in its group


def judge_readings(context: JudgingContext, group: EntryGroup, answers: Sequence[Answer]) -> Iterator[ReadingsAlike]:
    """The readings of a group, those of a field that end alike together, in the order of the schema."""
    outside, waiting = _find_outside(answers), _find_waiting(group, answers)
    node = context.project.schema.node((group.collection, "*"))
    for name, child in node.children.items():
        field = child.field
        clauses = [a.clause.code for a in answers if name in a.reads or _is_at(a.clause, name)]
        if field is None or not (_is_measured(field, group) or any(_is_at(a.clause, name) for a in answers)):
            continue
        due = _Due(context.project, group, field)
        column = _Column(group, name, due, outside.get(name, {}), waiting.get(name, {}), ", ".join(clauses))
        yield from column.divide()


def name_field(clause: Clause, violation: Violation | None = None) -> str:
    """The last name of the field at which a clause, or one violation of it, is placed."""
    return ((violation and violation.at) or clause.at)[-1]


class _Due:
    """Whether a field is due for the entries of a group: its condition holds, and they are of a kind that owes it."""

    def __init__(self, project: Project, group: EntryGroup, field: Field) -> None:
        self.project, self.group, self.field = project, group, field

    def find(self) -> list[bool]:
        """For each entry; a condition on the step alone is looked at once."""
        owing = self.group.find_owing(self.field.path[-1])
        parts: list[Sequence[int]] = [[place for place in self.group.places if owing[place]]]
        for name in self._list_named():
            parts = [smaller for part in parts for smaller in self.group.split(name, part)]
        holds = [False] * len(self.group.entries)
        for part in filter(None, parts):
            if self._holds(self.group.entries[part[0]]):
                for place in part:
                    holds[place] = True
        return holds

    def _holds(self, entry: Entry) -> bool:
        return self.field.ring != "optional" and self.project.applies((*entry.path, self.field.path[-1]))

    def _list_named(self) -> list[str]:
        """The fields of the entry itself that the condition names, beside its step."""
        if not self.field.condition:
            return []
        paths = {term.path for term in terms(parse_condition(self.field.condition))}
        own = {path[-1] for path in paths if path[0] == self.group.collection and len(path) > 1}
        return sorted(own - {KEYS[self.group.collection]})


class _Column:
    """The readings of one field, by where they end outside, where they wait, and the clauses that read them."""

    def __init__(
        self, group: EntryGroup, name: str, due: _Due, outside: _Reasons, waiting: _Reasons, clauses: str
    ) -> None:
        self.group, self.name, self.due = group, name, due
        self.outside, self.waiting, self.clauses = outside, waiting, clauses

    def divide(self) -> Iterator[ReadingsAlike]:
        """The readings by state and reason."""
        group, at = self.group, f" at {self.group.step}" if self.group.step else ""
        given = group.find_given(self.name)
        state = ReadingState.WITHIN if self.clauses else ReadingState.NOT_APPLICABLE
        reason = self.clauses or f"no clause reads it{at}"
        yield from self._by_reason(ReadingState.OUTSIDE, self.outside)
        if group.may_lack(self.name):
            rows = zip(group.entries, given, self.due.find(), range(len(given)), strict=True)
            blank = [entry for entry, told, due, i in rows if due and not told and i not in self.outside]
            yield from self._alike(ReadingState.MISSING, f"due{at}, and left blank", blank)
        waiting = {i: told for i, told in self.waiting.items() if i not in self.outside}
        yield from self._by_reason(ReadingState.NOT_EVALUATED, waiting)
        if not self.outside and not waiting and all(given):
            yield from self._alike(state, reason, group.entries)
            return
        for place in (*self.outside, *waiting):
            given[place] = False
        yield from self._alike(state, reason, list(compress(group.entries, given)))

    def _by_reason(self, state: ReadingState, reasons: _Reasons) -> Iterator[ReadingsAlike]:
        by_reason: dict[str, list[Entry]] = {}
        for index in sorted(reasons):
            by_reason.setdefault(reasons[index], []).append(self.group.entries[index])
        for reason, entries in by_reason.items():
            yield from self._alike(state, reason, entries)

    def _alike(self, state: ReadingState, reason: str, entries: Sequence[Entry]) -> Iterator[ReadingsAlike]:
        if entries:
            yield ReadingsAlike(self.group.collection, self.group.step, self.name, state, reason, entries)


def _is_measured(field: Field, group: EntryGroup) -> bool:
    """Whether a field is measured or ticked, and not one that tells which step or face the entry is of."""
    kind = field.of if field.kind == "list" else field.kind
    return kind in _MEASURED and field.path[-1] != KEYS[group.collection]


def _is_at(clause: Clause, name: str) -> bool:
    return clause.of_entries and clause.at[:1] == clause.each and name_field(clause) == name


def _find_outside(answers: Sequence[Answer]) -> dict[str, _Reasons]:
    """The clauses that fired, by field and entry."""
    found: dict[str, _Reasons] = {}
    for answer in answers:
        for place, outcome in answer.fired:
            for name in {name_field(answer.clause, one): None for one in outcome.violations}:
                _add(found.setdefault(name, {}), place, answer.clause.code, ", ")
    return found


def _find_waiting(group: EntryGroup, answers: Sequence[Answer]) -> dict[str, _Reasons]:
    """What clauses wait for, by each field that they read and by each entry that gives it."""
    found: dict[str, _Reasons] = {}
    for answer in answers:
        names = dict.fromkeys((*answer.reads, name_field(answer.clause)))
        for places, outcome in answer.waiting:
            told = f"{answer.clause.code} waits for {_tell_needs(outcome)}"
            for name in names:
                given = [place for place in places if name in group.rows[place]]
                reasons = found.setdefault(name, {}) if given else {}
                for place in given:
                    _add(reasons, place, told, "; ")
    return found


def _add(reasons: _Reasons, place: int, more: str, between: str) -> None:
    reasons[place] = _join(reasons[place], more, between) if place in reasons else more


@lru_cache(maxsize=4096)
def _join(reason: str, more: str, between: str) -> str:
    """Two reasons as one text, of which many entries share the same."""
    return f"{reason}{between}{more}"


def _tell_needs(outcome: ClauseOutcome) -> str:
    """What a clause waits for: a field of the entry as the schema names it, any other by its path."""
    own, collection = f"{dotted_path(outcome.subject)}.", outcome.subject[0]
    needs = (f"{collection}.{need.removeprefix(own)}" if need.startswith(own) else need for need in outcome.waits_for)
    return ", ".join(needs)
