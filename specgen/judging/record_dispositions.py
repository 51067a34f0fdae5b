"""Which nonconformance each disposition answers: by its clause, and the day and place or the row of its entry."""

from collections.abc import Callable, Iterable, Sequence
from datetime import date
from typing import Any

from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import Entry, EntryPlace, day_of
from specgen.model.record_judgment import Nonconformance
from specgen.model.suggest import suggest
from specgen.model.value_text import value_text, words
from specgen.reading.records.row_names import CUT
from specgen.recording.history import is_same_place

# By these a disposition tells which entry it answers.
_TELLING = ("date", "time", "elevation", "area", "step", "file", "row")
# Without these nobody has decided anything.
_NEEDED = ("decision", "by", "decided_on")
_Key = tuple[object, ...]


def match_dispositions(
    project: Project, found: Sequence[Nonconformance]
) -> tuple[tuple[Nonconformance, ...], tuple[Problem, ...]]:
    """The nonconformances, each with the last disposition that answers it, and what is told of those that answer none.

    A disposition answers all nonconformances of its clause whose entries agree with what it tells of its entry.
    """
    dispositions = project.records.of("disposition")
    if not dispositions:
        return tuple(found), ()
    index = _Index(found)
    answers: dict[int, Entry] = {}
    unmatched: list[Problem] = []
    for entry in dispositions:
        answered = index.find(entry)
        fault = _find_fault(project, entry, index, answered)
        if fault is None:
            answers |= {one.number: entry for one in answered}
        else:
            unmatched.append(Problem(*fault, file=tell_row(entry.place)))
    return tuple(one._replace(disposition=answers.get(one.number)) for one in found), tuple(unmatched)


class _Index:
    """The nonconformances by clause, and of these by the day and by the row of their entry."""

    def __init__(self, found: Iterable[Nonconformance]) -> None:
        self.of_clause: dict[str, list[Nonconformance]] = {}
        self._narrow: dict[_Key, list[Nonconformance]] = {}
        for one in found:
            self.of_clause.setdefault(one.code, []).append(one)
            for key in ((one.code, day_of(one.entry)), (one.code, _row_of(one.entry))):
                self._narrow.setdefault(key, []).append(one)

    def find(self, entry: Entry) -> list[Nonconformance]:
        """Those that a disposition answers; none where it tells neither day nor row."""
        code = _clause_of(entry)
        first = entry.get("date") if entry.get("row") is None else _fold_row(entry)
        near = self._narrow.get((code, first), []) if first is not None else []
        return [one for one in near if not _list_differing(entry, one.entry)]


def _clause_of(entry: Entry) -> str:
    """The clause as rules write it: `WEA-01e` of `wea-01E`."""
    text = str(entry.get("clause") or "").strip()
    return text[:-1].upper() + text[-1:].lower()


def _fold_row(entry: Entry) -> str:
    return str(entry.get("row")).strip().lower().removeprefix("row ").removeprefix("line ")


def _row_of(entry: Entry) -> str:
    return entry.place.row.lower() or str(entry.place.line)


def _list_differing(disposition: Entry, entry: Entry) -> list[str]:
    """The names by which a disposition tells another entry than this one."""
    return [name for name in _TELLING if name in disposition.values and not _agrees(disposition, entry, name)]


def _agrees(disposition: Entry, entry: Entry, name: str) -> bool:
    told = disposition.values[name]
    if name == "row":
        return _fold_row(disposition) == _row_of(entry)
    if name == "file":  # with its folder or without
        file, asked = entry.place.file.replace("\\", "/"), str(told).strip().replace("\\", "/")
        return file.endswith(asked[1:]) if asked.startswith(CUT) else f"/{file}".endswith(f"/{asked}")
    if name == "area":
        return is_same_place(str(told), str(entry.get("area") or ""))
    return bool(told == _value_of(entry, name))


def _value_of(entry: Entry, name: str) -> Any:
    if name == "date":
        return day_of(entry)
    return entry.values.get("started_at", entry.values.get("time")) if name == "time" else entry.get(name)


def _find_fault(
    project: Project, entry: Entry, index: _Index, answered: Sequence[Nonconformance]
) -> tuple[str, str] | None:
    """What keeps a disposition from counting, and what would be right; None for one that counts."""
    code = _clause_of(entry)
    if not code:
        return "this disposition names no clause", "write clause: WEA-01e, as the nonconformance report does"
    if code not in index.of_clause:
        return f"there is no nonconformance of clause {entry.get('clause')!r}", suggest(code, index.of_clause)
    if entry.get("date") is None and entry.get("row") is None:
        return f"this disposition of {code} tells no entry", "write its date and elevation, or its file and row"
    if not answered:
        return _tell_near(project, entry, index.of_clause[code])
    missing = [words(name) for name in _NEEDED if entry.get(name) is None]
    if missing:
        return f"this disposition of {code} does not count without {', '.join(missing)}", "write what was decided"
    day = max((day for one in answered if (day := day_of(one.entry)) is not None), default=None)
    if day is not None and entry.values["decided_on"] < day:
        return f"this disposition of {code} is dated before its entry of {day.isoformat()}", "correct one of the two"
    return None


def _tell_near(project: Project, entry: Entry, found: Sequence[Nonconformance]) -> tuple[str, str]:
    """What a disposition tells that no nonconformance of its clause has, beside the one that differs in the least."""
    near = min(found, key=lambda one: len(_list_differing(entry, one.entry)))
    differing = _list_differing(entry, near.entry)
    message = f"no nonconformance of {near.code} has {_tell_all(project, differing, entry.values.get)}"
    told = _tell_all(project, differing, lambda name: _told_of(near.entry, name))
    return message, f"number {near.number} has {told}"


def _told_of(entry: Entry, name: str) -> Any:
    if name in ("file", "row"):
        return entry.place.file if name == "file" else _row_of(entry)
    return _value_of(entry, name)


def _tell_all(project: Project, names: Iterable[str], get: Callable[[str], Any]) -> str:
    return ", ".join(f"{name} {_tell(project, name, get(name))}" for name in names)


def _tell(project: Project, name: str, value: Any) -> str:
    if value is None:
        return "none"
    if isinstance(value, date):
        return value.isoformat()
    return value_text(value, project.schema.fields["disposition", name]) if name != "time" else f"{value:%H:%M}"


def tell_row(place: EntryPlace) -> str:
    """`dispositions.csv, row 4`: where a disposition stands."""
    rows = "row" if place.sheet or place.file.lower().endswith(".csv") else "line"
    where = f"row {place.row}" if place.row else f"{rows} {place.line}"
    return f"{place.file}, {where}"
