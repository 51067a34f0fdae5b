"""What the site record says of each panel: crew, batch, pails and days of its primer and gloss, and its releases."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from specgen.documents.context import DocumentContext
from specgen.model.record import Entry, day_of
from specgen.model.status import PanelPass
from specgen.recording.gathering import find_last_moment
from specgen.recording.panel_log import PanelLog
from specgen.recording.site_entries import Verdict, moment_of, to_decision

COATS = ("primer", "gloss")
_Key = tuple[str, str, str]  # elevation, panel, coat


@dataclass(frozen=True)
class CoatWork:
    """The passes of one coat material on a panel in the order of time, and its releases since the last of them."""

    passes: tuple[PanelPass, ...]
    releases: tuple[Entry, ...]

    @cached_property
    def days(self) -> tuple[date, ...]:
        """The days of its passes."""
        return tuple(dict.fromkeys(one.began.at.date() for one in self.passes))

    @property
    def crews(self) -> tuple[str, ...]:
        """The marks of its crews."""
        return _list_values((one.entry for one in self.passes), "crew")

    @property
    def batches(self) -> tuple[str, ...]:
        """Its batches, in the order in which they were opened."""
        return _list_values(self._list_pails(self.days), "batch")

    @property
    def last_batches(self) -> tuple[str, ...]:
        """The batches of its last day, which are those that show."""
        return _list_values(self._list_pails(self.days[-1:]), "batch")

    @property
    def numbers(self) -> tuple[str, ...]:
        """The numbers of its pails."""
        return _list_values(self._list_pails(self.days), "pail")

    def _list_pails(self, days: tuple[date, ...]) -> Iterable[Entry]:
        return (pail for one in self.passes if one.began.at.date() in days for pail in one.pails)


Work = dict[_Key, CoatWork]


def list_panel_work(context: DocumentContext) -> Work:
    """The passes on each panel that the log names, by the coats, elevation by elevation."""
    return context.remember(_gather)


def _gather(context: DocumentContext) -> Work:
    until = find_last_moment(context.project)
    if until is None:
        return {}
    log = PanelLog(context.project, context.standards, until)
    marks = context.project.members.get(("elevations",), ())
    work: Work = {}
    for told, panel in log.list_panels():
        face = told or (marks[0] if len(marks) == 1 else "")
        passes = log.list_passes(panel, face)
        signed = log.list_signed(passes, face)
        for coat in COATS:
            own = tuple(one for one in passes if one.step.name == coat)
            if own:
                last = own[-1].began.at.date()
                releases = (one for one in signed if _is_release(one, coat, face) and (day_of(one) or last) >= last)
                work[face, panel, coat] = CoatWork(own, tuple(releases))
    return work


def _is_release(entry: Entry, coat: str, face: str) -> bool:
    """Whether an entry releases a coat; one that was signed in spite of faults does not."""
    if entry.collection != "release" or entry.get("step") != coat:
        return False
    moment = moment_of(entry)
    return moment is None or to_decision(entry, moment, face).verdict is not Verdict.FAILED


def _list_values(entries: Iterable[Entry], name: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(str(entry.values[name]) for entry in entries if entry.get(name) is not None))
