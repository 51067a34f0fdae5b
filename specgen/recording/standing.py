"""What stands against the entries of a record: nonconformances that stop the work and that nothing has settled."""

from datetime import datetime

from specgen.model.finding import Severity
from specgen.model.record_judgment import Nonconformance, RecordJudgment
from specgen.model.status import Remark
from specgen.recording.site_entries import moment_of
from specgen.recording.step_record import Against, Failing

# What is read of an entry when its work is over.
_AT_THE_END = ("ended_at", "equipment_cleaned")


def stands(one: Nonconformance, at: datetime | None) -> bool:
    """Whether a nonconformance stops the work, no deviation lifts it, and no disposition until a moment settles it."""
    entry = one.disposition
    if entry is not None and at is not None and entry.values["decided_on"] > at.date():
        one = one._replace(disposition=None)
    return one.severity is Severity.STOP and not one.is_settled


def is_known(one: Nonconformance, at: datetime | None) -> bool:
    """Whether what a nonconformance tells of had happened at a moment; what tells no time always had."""
    moment = moment_of(one.entry)
    since = one.entry.ended if one.field in _AT_THE_END else moment and moment.at
    return at is None or since is None or since <= at


def _tell(one: Nonconformance) -> str:
    return f"nonconformance {one.number}, {one.code}: {one.message.removesuffix('.')}"


def list_failing(judgment: RecordJudgment, at: datetime | None) -> Failing:
    """What stands against each entry at a moment, by its collection and number."""
    found: dict[tuple[str, int], Against] = {}
    for one in judgment.nonconformances:
        if not (stands(one, at) and is_known(one, at)):
            continue
        key = (one.entry.collection, one.entry.number)
        before = found.get(key, Against((), frozenset()))
        found[key] = Against((*before.told, _tell(one)), before.codes | {one.code})
    return found


def list_elsewhere(judgment: RecordJudgment, at: datetime | None) -> list[Remark]:
    """What stands against entries that belong to no step: readings of the weather, results of the mockup."""
    return [
        Remark(_tell(one), (one.entry,))
        for one in judgment.nonconformances
        if stands(one, at) and is_known(one, at) and (one.entry.collection == "result" or not one.entry.get("step"))
    ]
