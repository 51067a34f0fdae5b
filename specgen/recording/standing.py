"""What stands against the entries of a record: nonconformances that stop the work and that no deviation lifts."""

from datetime import datetime

from specgen.model.finding import Severity
from specgen.model.record import Entry
from specgen.model.record_judgment import Nonconformance, RecordJudgment
from specgen.model.status import Remark
from specgen.recording.site_entries import moment_of
from specgen.recording.step_states import Failing


def stands(one: Nonconformance) -> bool:
    """Whether a nonconformance stops the work, and no deviation lifts it."""
    return one.severity is Severity.STOP and one.lifted_by is None


def _tell(one: Nonconformance) -> str:
    return f"nonconformance {one.number}, {one.code}: {one.message.removesuffix('.')}"


def list_failing(judgment: RecordJudgment) -> Failing:
    """What stands against each entry, by its collection and number."""
    told: dict[tuple[str, int], tuple[str, ...]] = {}
    for one in filter(stands, judgment.nonconformances):
        key = (one.entry.collection, one.entry.number)
        told[key] = (*told.get(key, ()), _tell(one))
    return told


def list_elsewhere(judgment: RecordJudgment, at: datetime | None) -> list[Remark]:
    """What stands against entries that belong to no step: readings of the weather, results of the mockup."""
    return [
        Remark(_tell(one), (one.entry,)) for one in judgment.nonconformances if stands(one) and _is_loose(one.entry, at)
    ]


def _is_loose(entry: Entry, at: datetime | None) -> bool:
    moment = moment_of(entry)
    is_over = moment is None or at is None or moment.at <= at
    return is_over and (entry.collection == "result" or not entry.get("step"))
