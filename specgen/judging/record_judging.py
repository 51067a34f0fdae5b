"""Judges the entries of the site record: nonconformances in their order, and how each reading ends."""

import gc
from collections.abc import Iterator, Sequence

from specgen.judging.context import JudgingContext
from specgen.judging.record_asking import Answer, Asker, Fired
from specgen.judging.record_dispositions import match_dispositions, tell_row
from specgen.judging.record_group import EntryGroup, group_entries
from specgen.judging.record_readings import judge_readings
from specgen.judging.record_telling import Teller
from specgen.judging.rule import Clause, Rule
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import OF_READINGS, Entry
from specgen.model.record_judgment import (
    MockupCount,
    Nonconformance,
    ReadingList,
    ReadingsAlike,
    ReadingState,
    RecordJudgment,
)
from specgen.model.standard import Standards
from specgen.recording.mockup_results import count_recorded, view_results

_UNSETTLED = (ReadingState.MISSING, ReadingState.NOT_EVALUATED)

# The clauses that fired on an entry, by its number, in the order of the rules.
_Hits = dict[int, list[tuple[Clause, Fired]]]


def judge_records(context: JudgingContext, rules: Sequence[Rule], asker: Asker | None = None) -> RecordJudgment:
    """The judgment of the site record of a project by the clauses on its entries."""
    collecting = gc.isenabled()
    gc.disable()  # what is made stays: looking through it again and again for what is left over takes longer
    try:
        return _judge(context, rules, asker or Asker(context))
    finally:
        if collecting:
            gc.enable()


def _judge(context: JudgingContext, rules: Sequence[Rule], asker: Asker) -> RecordJudgment:
    teller = Teller(context)
    alike: list[ReadingsAlike] = []
    found: list[Nonconformance] = []
    for collection in OF_READINGS:
        entries = context.project.records.of(collection)
        clauses = [c for rule in rules for c in rule.clauses if c.of_entries and c.each == (collection,)]
        hits: _Hits = {}
        for group in group_entries(context.project, collection):
            answers = [answer for clause in clauses if (answer := asker.ask(clause, group)) is not None]
            alike += judge_readings(context, group, answers)
            _gather(hits, group, answers)
        found += _number(teller, entries, hits, len(found))
    answered, unmatched = match_dispositions(context.project, found)
    project, standards = context.project, context.standards
    counted = project.records.of("result") or project.get(("package", "purpose")) == "closeout"
    return RecordJudgment(
        nonconformances=answered,
        counts={state: sum(len(one.entries) for one in alike if one.state is state) for state in ReadingState},
        unsettled=ReadingList([one for one in alike if one.state in _UNSETTLED]),
        alike=tuple(alike),
        unmatched=unmatched,
        mockup=count_recorded(project, standards) if counted else MockupCount(),
        unplaced=tuple(_tell_unplaced(project, standards)),
    )


def _tell_unplaced(project: Project, standards: Standards) -> Iterator[Problem]:
    """The results that stand on no line of the acceptance form."""
    for viewing in view_results(project, standards):
        for one in viewing.unplaced:
            yield Problem(f"this result stands on no line of D10: {one.why}", one.hint, file=tell_row(one.entry.place))


def _gather(hits: _Hits, group: EntryGroup, answers: Sequence[Answer]) -> None:
    for answer in answers:
        for fired in answer.fired:
            hits.setdefault(group.entries[fired.place].number, []).append((answer.clause, fired))


def _number(teller: Teller, entries: Sequence[Entry], hits: _Hits, before: int) -> Iterator[Nonconformance]:
    """The nonconformances of a collection in the order of its entries, numbered on from those before."""
    number = before + 1
    for entry in entries:
        for clause, fired in hits.get(entry.number, ()):
            for one in teller.tell(clause, entry, fired.outcome, number):
                yield one
                number += 1
