"""What clauses ask about an entry of the site record: which it is, when it began, how long the work below it dried."""

from datetime import datetime
from fractions import Fraction

from specgen.judging.entry_view import FoundFact, GivenFact, ask_fact, which
from specgen.model.absence import Absent, if_given, read_all
from specgen.model.project import View
from specgen.model.record import Entry
from specgen.model.typed_views import Description, Release, SiteRecordEntry
from specgen.recording.elapsed import elapsed_hours
from specgen.recording.entry_kinds import is_work, tells_work
from specgen.recording.history import History, history_of


def entry_of(subject: View) -> Entry:
    """The entry that a view is of."""
    return subject.project.records.of(subject.node.path[0])[ask_fact(subject, which)]


def area_of(told: Entry | View) -> str:
    """The area that an entry names; empty for the whole face."""
    return str(told.get("area") or "")


def tells_of_work(log: SiteRecordEntry) -> bool:
    """Whether an entry tells of work at the wall, and not of the weather or of a pail alone."""
    return bool(ask_fact(log, _TELLS_WORK))


_TELLS_WORK = GivenFact(tells_work)


def is_told_at(log: SiteRecordEntry) -> bool:
    """Whether a lapse of work is told at this entry: the first of its day, step and place that tells of work."""
    return bool(ask_fact(log, _FIRST_OF_WORK))


_FIRST_OF_WORK = FoundFact(lambda project: history_of(project).firsts_of_work)


def hours_since(
    log: SiteRecordEntry, step: str, history: History, project: Description, coat: int | None = None
) -> Fraction | None:
    """Hours from the end of a step, or of one coat of it, at the place of an entry to its beginning.

    None where no such work is recorded; raises Absent where it is, and not its end.
    """
    day, at, face = read_all(lambda: log.date, lambda: log.started_at, lambda: log.elevation)
    began, area = datetime.combine(day, at), area_of(log)
    panels = if_given(lambda: log.panels) if coat is not None else None
    if panels:  # on them a coat goes over that of the same panels, while another is still sprayed beside
        last = history.find_last_pass_on(panels, face.mark, step, began, area, coat)
    else:
        last = history.find_last_pass(face.mark, step, began, area, coat)
    if last is not None and last.ended is not None:
        return elapsed_hours(project.project, last.ended, began)
    other = history.find_last("log", face.mark, step, began - datetime.resolution, area)
    if other is not None and other.get("coat") in (None, coat) and is_work(other):
        raise Absent((*other.path, "ended_at"))
    return None


def hours_dried(release: Release, history: History, project: Description) -> Fraction | None:
    """Hours from the end of the work released to its release, by the record; None where that does not tell them."""
    step, entry = release.step, entry_of(release)
    began, face = entry.began, entry.get("elevation")
    if began is None or face is None:
        return None
    last = history.find_last_pass(face, "primer" if step == "release_primer" else step, began, area_of(entry))
    if last is None or last.ended is None:
        return None
    return elapsed_hours(project.project, last.ended, began)
