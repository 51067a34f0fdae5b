"""What stands against the entries of a record: nonconformances that stop the work and that nothing has settled."""

from datetime import datetime

from specgen.model.finding import Severity
from specgen.model.record import Entry
from specgen.model.record_judgment import Nonconformance, RecordJudgment
from specgen.model.status import Remark
from specgen.recording.site_entries import moment_of
from specgen.recording.step_record import Against, Failing


def stands(one: Nonconformance, at: datetime | None) -> bool:
    """Whether a nonconformance stops the work, no deviation lifts it, and no disposition until a moment settles it."""
    entry = one.disposition
    if entry is not None and at is not None and entry.values["decided_on"] > at.date():
        one = one._replace(disposition=None)
    return one.severity is Severity.STOP and not one.is_settled


def _tell(one: Nonconformance) -> str:
    return f"nonconformance {one.number}, {one.code}: {one.message.removesuffix('.')}"


def list_failing(judgment: RecordJudgment, at: datetime | None) -> Failing:
    """What stands against each entry at a moment, by its collection and number."""
    found: dict[tuple[str, int], Against] = {}
    for one in (one for one in judgment.nonconformances if stands(one, at)):
        key = (one.entry.collection, one.entry.number)
        before = found.get(key)
        codes = before.codes | {one.code} if before else frozenset((one.code,))
        found[key] = Against(f"{before.told}; {_tell(one)}" if before else _tell(one), codes)
    return found


def list_elsewhere(judgment: RecordJudgment, at: datetime | None) -> list[Remark]:
    """What stands against entries that belong to no step: readings of the weather, results of the mockup."""
    standing = (one for one in judgment.nonconformances if stands(one, at))
    return [Remark(_tell(one), (one.entry,)) for one in standing if _is_loose(one.entry, at)]


def _is_loose(entry: Entry, at: datetime | None) -> bool:
    moment = moment_of(entry)
    is_over = moment is None or at is None or moment.at <= at
    return is_over and (entry.collection == "result" or not entry.get("step"))
