"""Asks a clause of the entries of one step: once of all that hold the same in every field it reads."""

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from specgen.judging.context import JudgingContext
from specgen.judging.engine import ClauseOutcome, judge_view, make_arguments
from specgen.judging.entry_view import EntryView, WatchedEntry
from specgen.judging.record_group import KEYS, EntryGroup, find_firsts
from specgen.judging.rule import ARGUMENTS, Clause
from specgen.model.absence import Absent
from specgen.model.record import Entry
from specgen.resolving.provider import Resolver

# After so many entries that are asked one by one it is known which fields a clause reads.
_WATCHED = 100


class Fired(NamedTuple):
    """An entry, by its place in the group, from 0, on which a clause fired or for which it waits."""

    place: int
    outcome: ClauseOutcome


@dataclass
class Answer:
    """What a clause says of the entries of a step: where it fired, where it waits, and which fields it reads."""

    clause: Clause
    reads: tuple[str, ...] = ()
    fired: list[Fired] = field(default_factory=list)
    waiting: list[Fired] = field(default_factory=list)


class Asker:
    """Asks clauses of entries; `asked` counts how often one was evaluated."""

    def __init__(self, context: JudgingContext) -> None:
        self.context, self.asked = context, 0
        self._arguments: dict[str, Mapping[str, Any]] = {}

    def ask(self, clause: Clause, group: EntryGroup) -> Answer | None:
        """The answer of a clause for each entry of a group; None where the step alone tells that it is of another."""
        probed = WatchedEntry(self.context.project, group.probe)
        outcome = self._judge(clause, group.probe, probed, _refuse_computed(clause, probed))
        settled = not (outcome.violations or outcome.waits_for or probed.by_itself)
        if settled and set(probed.read) <= {KEYS[group.collection]}:
            return None
        return self._ask_alike(clause, group)

    def _ask_alike(self, clause: Clause, group: EntryGroup) -> Answer:
        """The answer, each distinct row of the fields it reads asked once.

        Which fields these are is noted as it is asked. Where an entry leads to one that was not among them, all are
        asked anew with it; a clause reads the same of two entries that hold the same in all it read of the first. Rows
        that lead it to look at which entry it is asked of are left to be asked entry by entry.
        """
        key_field = KEYS[group.collection]
        fields = _list_declared(clause, group, self.context.resolve)
        while True:
            keys = group.find_keys(fields)
            outcomes: dict[Hashable, ClauseOutcome] = {}
            single: set[Hashable] = set()
            for key, index in find_firsts(keys).items():
                watched = WatchedEntry(self.context.project, group.entries[index])
                outcome = self._judge(clause, group.entries[index], watched)
                if watched.by_itself:
                    single.add(key)
                else:
                    outcomes[key] = outcome
                read = watched.led_by if watched.by_itself else watched.read
                more = [name for name in read if name not in fields and name != key_field]
                if more:
                    break
            else:
                answer = _spread(clause, tuple(fields), keys, outcomes)
                return self._ask_each(answer, group, [i for i, key in enumerate(keys) if key in single])
            fields = [*fields, *more]

    def _ask_each(self, answer: Answer, group: EntryGroup, places: Sequence[int]) -> Answer:
        """The answer with those entries of which a clause asks which one they are, each asked by itself."""
        read = dict.fromkeys(answer.reads)
        for count, place in enumerate(places):
            entry = group.entries[place]
            make = WatchedEntry if count < _WATCHED else EntryView
            view = make(self.context.project, entry)
            outcome = self._judge(answer.clause, entry, view)
            if isinstance(view, WatchedEntry):
                read |= view.read
            if outcome.violations:
                answer.fired.append(Fired(place, outcome))
            elif outcome.waits_for:
                answer.waiting.append(Fired(place, outcome))
        answer.reads = tuple(name for name in read if name != KEYS[group.collection])
        return answer

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
        probed.by_itself = True
        raise Absent(probed.entry.path)

    return dict.fromkeys(clause.asks - ARGUMENTS, refuse)


def _list_declared(clause: Clause, group: EntryGroup, resolve: Resolver) -> list[str]:
    """The fields of an entry that a condition names, and those that the computed values of a clause read."""
    named = {pattern.split(".")[2] for pattern in clause.reads if pattern.startswith(f"{group.collection}.*.")}
    for name in clause.computed:
        named |= set(_list_computed(name, group.collection, resolve.find))
    known = resolve.project.schema.node((group.collection, "*")).children
    return [name for name in known if name in named and name != KEYS[group.collection]]


def _list_computed(name: str, collection: str, find: Callable[[str], Any]) -> Iterator[str]:
    """The fields of an entry that a computed value rests on, with those that lead to the member it belongs to."""
    provider = find(name)
    yield from ("elevation", "wall")
    for read in provider.reads:
        parts = read.split(".")
        if parts[0] == collection and len(parts) > 2:  # collection, star, name
            yield parts[2]
    for need in provider.needs:
        yield from _list_computed(need, collection, find)


def _spread(clause: Clause, fields: tuple[str, ...], keys: Any, outcomes: Mapping[Hashable, ClauseOutcome]) -> Answer:
    """The outcome of each distinct row for all entries that hold it."""
    fired = {key: outcome for key, outcome in outcomes.items() if outcome.violations}
    waiting = {key: outcome for key, outcome in outcomes.items() if outcome.waits_for}
    return Answer(clause, fields, _find_in(keys, fired), _find_in(keys, waiting))


def _find_in(keys: Any, outcomes: Mapping[Hashable, ClauseOutcome]) -> list[Fired]:
    if not outcomes:
        return []
    return [Fired(index, outcomes[key]) for index, key in enumerate(keys) if key in outcomes]
