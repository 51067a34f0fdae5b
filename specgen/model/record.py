"""What was written on site: entries of the record collections, each with where it stands."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from typing import Any, NamedTuple

from specgen.model.field import Path
from specgen.model.problem import Problem

# The collections whose members are entries, written one after another.
COLLECTIONS = ("log", "release", "result", "inspection", "disposition")
# Those of them that hold readings; a disposition answers what was found in these.
OF_READINGS = COLLECTIONS[:-1]


class EntryPlace(NamedTuple):
    """Where an entry stands: a line of a text, a row of a sheet, or a row such as `c3` of a filled form."""

    file: str
    line: int = 0  # of a text, or the row of a sheet; from 1, 0 in a form
    column: int = 0
    sheet: str = ""
    row: str = ""  # of a form


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a collection. `values` are typed as those of a project, by the last name of the field.

    `number` counts from 0 over all files, in the order in which these are read; it is its mark. A reference is the
    mark that it names. What was left blank has no value.
    """

    collection: str
    number: int
    values: Mapping[str, Any]
    place: EntryPlace

    @property
    def path(self) -> Path:
        """Its path in the project: `log`, `17`."""
        return (self.collection, str(self.number))

    def get(self, name: str) -> Any:
        """The value of a field by its last name, or None."""
        return self.values.get(name)

    @property
    def began(self) -> datetime | None:
        """The moment at which it began, in local time: that of a reading, a pass, a release."""
        day, at = self.values.get("date"), self.values.get("started_at", self.values.get("time"))
        return None if day is None or at is None else datetime.combine(day, at)

    @property
    def ended(self) -> datetime | None:
        """The moment at which it ended, on the next day where its shift goes over midnight; its beginning without."""
        began, at = self.began, self.values.get("ended_at")
        if began is None or at is None:
            return began
        ended = datetime.combine(began.date(), at)
        return ended if ended >= began else ended + timedelta(days=1)


class RecordFile(NamedTuple):
    """A file that entries were read from."""

    name: str
    digest: str  # of its bytes
    entries: int


@dataclass(frozen=True)
class Records:
    """The entries of each collection in the order in which they were read, and the files that hold them.

    `faults` are what could not be read, each at its cell: that field of the entry is then without a value. `remarks`
    are what is to be told of entries that were read, such as one that stands twice.
    """

    entries: Mapping[str, tuple[Entry, ...]] = field(default_factory=dict)
    files: tuple[RecordFile, ...] = ()
    faults: tuple[Problem, ...] = ()
    remarks: tuple[Problem, ...] = ()

    def of(self, collection: str) -> tuple[Entry, ...]:
        """The entries of a collection; none where it has none."""
        return self.entries.get(collection, ())

    def find(self, path: Path) -> Entry | None:
        """The entry on a path, or on the way to one of its fields; None where there is none."""
        if len(path) < 2 or not path[1].isdigit():
            return None
        entries = self.of(path[0])
        return entries[int(path[1])] if int(path[1]) < len(entries) else None


def day_of(entry: Entry) -> date | None:
    """The day of an entry, by whichever of its fields tells one."""
    return next((entry.values[name] for name in ("date", "done_on", "signed_on") if name in entry.values), None)


def moment(day: date, at: time) -> datetime:
    """A day and a time as one moment, in local time."""
    return datetime.combine(day, at)
