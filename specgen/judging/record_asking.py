"""Asks a clause of the entries of one step: once of all that hold the same in every field it reads."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from specgen.judging.context import JudgingContext
from specgen.judging.engine import ClauseOutcome, judge_view, make_arguments
from specgen.judging.entry_view import EntryView, Fact, WatchedEntry, name_fields, which
from specgen.judging.record_group import KEYS, EntryGroup
from specgen.judging.rule import ARGUMENTS, Clause
from specgen.model.absence import Absent
from specgen.model.record import Entry
from specgen.resolving.provider import Resolver

# After so many entries that are alone with what they hold it is known which fields a clause reads.
_WATCHED = 100

Column = str | Fact  # a field of the entries by its last name, or what is asked of them


class Fired(NamedTuple):
    """An entry, by its place in the group, from 0, on which a clause fired or for which it waits."""

    place: int
    outcome: ClauseOutcome


class _Asked(NamedTuple):
    """What came of a clause for one entry, and what it read of that in its order."""

    outcome: ClauseOutcome
    read: tuple[Column, ...]


@dataclass
class Answer:
    """What a clause says of the entries of a step: where it fired, where it waits, and which fields it reads."""

    clause: Clause
    reads: dict[str, None]
    fired: list[Fired] = field(default_factory=list)
    waiting: list[tuple[Sequence[int], ClauseOutcome]] = field(default_factory=list)  # entries that wait alike

    def note(self, outcome: ClauseOutcome, places: Sequence[int]) -> None:
        """Note the outcome of entries."""
        if outcome.violations:
            self.fired += [Fired(place, outcome) for place in places]
        elif outcome.waits_for:
            self.waiting.append((places, outcome))


class Asker:
    """Asks clauses of entries; `asked` counts how often one was evaluated."""

    def __init__(self, context: JudgingContext) -> None:
        self.context, self.asked = context, 0
        self._arguments: dict[str, Mapping[str, Any]] = {}

    def ask(self, clause: Clause, group: EntryGroup) -> Answer | None:
        """The answer of a clause for each entry of a group; None where the step alone tells that it is of another."""
        key = KEYS[group.collection]
        probed = WatchedEntry(self.context.project, group.probe)
        outcome = self._judge(clause, group.probe, probed, _refuse_computed(clause, probed))
        if not (outcome.violations or outcome.waits_for) and set(probed.read) <= {key}:
            return None
        answer = Answer(clause, dict.fromkeys(_list_named(clause, group)))
        computed = _list_computed_reads(clause, group, self.context.resolve)
        parts: list[Sequence[int]] = [group.places]
        for column in computed:
            parts = [smaller for part in parts for smaller in group.split(column, part)]
        for part in parts:
            self._divide(answer, group, part, (key, *computed))
        answer.reads.pop(key, None)
        answer.fired.sort()
        return answer

    def _divide(
        self,
        answer: Answer,
        group: EntryGroup,
        places: Sequence[int],
        known: tuple[Column, ...],
        asked: _Asked | None = None,
    ) -> None:
        """Ask of entries that hold the same in the `known` columns; `asked` is what came of the first, if it was asked.

        A test reads the same of two entries as long as they hold the same. So the first of them tells what is read
        next; by that they are divided, and the first of each part is asked. What is read of all of them has then one
        answer.
        """
        asked = asked or self._ask_first(answer, group, places)
        column = next((one for one in asked.read if one not in known), None) if len(places) > 1 else None
        if column is None:
            answer.note(asked.outcome, places)
            return
        for number, part in enumerate(group.split(column, places)):
            self._divide(answer, group, part, (*known, column), asked if not number else None)

    def _ask_first(self, answer: Answer, group: EntryGroup, places: Sequence[int]) -> _Asked:
        entry, project = group.entries[places[0]], self.context.project
        if len(places) == 1 and self.asked > _WATCHED and answer.reads:
            return _Asked(self._judge(answer.clause, entry, EntryView(project, entry)), ())
        watched = WatchedEntry(project, entry)
        outcome = self._judge(answer.clause, entry, watched)
        answer.reads.update(dict.fromkeys(name for column in watched.read for name in name_fields(column)))
        return _Asked(outcome, tuple(watched.read))

    def _judge(
        self, clause: Clause, entry: Entry, view: EntryView, instead: Mapping[str, Any] | None = None
    ) -> ClauseOutcome:
        """The outcome for one entry; `instead` are arguments that take the place of those usual."""
        self.asked += 1
        arguments = self._find_arguments(clause, entry)
        return judge_view(self.context, clause, entry.path, view, {**arguments, **instead} if instead else arguments)

    def _find_arguments(self, clause: Clause, entry: Entry) -> Mapping[str, Any]:
        """The further arguments of a test: the same for all entries where none of them is computed."""
        if clause.asks - ARGUMENTS:
            return make_arguments(self.context, clause, entry.path)
        if clause.code not in self._arguments:
            self._arguments[clause.code] = make_arguments(self.context, clause, entry.path)
        return self._arguments[clause.code]


def _refuse_computed(clause: Clause, probed: WatchedEntry) -> dict[str, Any]:
    """Computed values in place of those of a clause: of an entry that gives its step alone there are none."""

    def refuse() -> None:
        probed.read[which] = None
        raise Absent(probed.entry.path)

    return dict.fromkeys(clause.asks - ARGUMENTS, refuse)


def _list_named(clause: Clause, group: EntryGroup) -> Iterator[str]:
    """The fields of an entry that a condition names, whichever of them settle it."""
    for pattern in clause.reads:
        path = pattern.split(".")
        if path[0] == group.collection and len(path) > 2:  # collection, star, name
            yield path[2]


def _list_computed_reads(clause: Clause, group: EntryGroup, resolve: Resolver) -> tuple[str, ...]:
    """The fields of an entry that the computed values of a clause read, which no view can note."""
    named = {name for value in clause.computed for name in _list_reads(value, group.collection, resolve.find)}
    return tuple(sorted(named - {KEYS[group.collection]}))


def _list_reads(name: str, collection: str, find: Callable[[str], Any]) -> Iterator[str]:
    """The fields of an entry that a computed value rests on, with those that lead to the member it belongs to."""
    provider = find(name)
    yield from ("elevation", "wall")
    for read in provider.reads:
        path = read.split(".")
        if path[0] == collection and len(path) > 2:
            yield path[2]
    for need in provider.needs:
        yield from _list_reads(need, collection, find)
