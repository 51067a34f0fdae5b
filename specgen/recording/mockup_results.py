"""The results of the mockup on the lines of the acceptance form, and the lines that none is recorded of."""

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import NamedTuple

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.record_judgment import MissingCriterion, MockupCount
from specgen.model.standard import Standards
from specgen.recording.acceptance_lines import OWN, AcceptanceLine, LinePart, list_lines

# Any of these makes an entry the result of its line.
_TELLING = ("reading", "passed", "signed_by")
# A comma between readings, before a figure; a decimal comma has no blank behind it.
_COMMA = re.compile(r",\s+(?=[-+.\d])")
_WORD = re.compile(r"[a-z]+\d*|\d+")
# What is read is of the gun at work where nothing else is told.
_TELLS_NOTHING = {"coat", "coats", "degree", "degrees", "deg", "gun", "angle", "working"}

Lines = Mapping[str, AcceptanceLine]  # by the names of their criteria


class Unplaced(NamedTuple):
    """A result that stands on no line, why, and what would put it on one."""

    entry: Entry
    why: str
    hint: str


@dataclass
class PartResults:
    """What was found at one part of a line: its entries, and their readings in order, each with its entry."""

    line: AcceptanceLine
    part: LinePart
    entries: list[Entry] = field(default_factory=list)
    readings: list[tuple[Entry, str]] = field(default_factory=list)


@dataclass
class Viewing:
    """The results of one viewing: of each part by its row, and those that stand on no line."""

    entries: list[Entry] = field(default_factory=list)
    parts: dict[str, PartResults] = field(default_factory=dict)
    unplaced: list[Unplaced] = field(default_factory=list)


def name_line(entry: Entry) -> str:
    """The line of the acceptance form that a result is of: `gloss`, `own-2`; empty where it tells none."""
    own = entry.get("own")
    return f"{OWN}{own}" if own else str(entry.get("criterion") or "")


def split_readings(entry: Entry) -> list[str]:
    """The readings of a result: `74`, `75` of `74; 75`, and of `74, 75`."""
    text = str(entry.get("reading") or "")
    parts = text.split(";") if ";" in text or not text[:1].isdigit() else _COMMA.split(text)
    return [part.strip() for part in parts if part.strip()]


def view_results(project: Project, standards: Standards) -> tuple[Viewing, ...]:
    """The results by viewing, each put on the part of the line that it tells, or that it can only be of."""
    lines = _name_lines(project, standards)
    viewings = _list_viewings(project.records.of("result"))
    return project.remember(view_results, lambda: tuple(_Placer(lines).place(entries) for entries in viewings))


def find_row(project: Project, standards: Standards, entry: Entry) -> str:
    """The row of the form that a result is of, as its blanks name it; of no row its line, with the part it tells."""
    line = _find_line(_name_lines(project, standards), entry)
    part = _find_told(line, entry) if line is not None else None
    return part.row if part is not None else f"{name_line(entry)} {entry.get('part') or ''}".rstrip()


def count_recorded(project: Project, standards: Standards) -> MockupCount:
    """How many criteria the form asks for, and which of them have no result in any viewing."""
    viewings = view_results(project, standards)
    found = {
        row
        for viewing in viewings
        for row, one in viewing.parts.items()
        if any(name in entry.values for entry in one.entries for name in _TELLING)
    }
    lines = [line for line in list_lines(project, standards) if line.parts]
    missing = (_list_missing(line, [part for part in line.parts if part.row not in found]) for line in lines)
    return MockupCount(len(lines), tuple(one for one in missing if one is not None))


def _list_missing(line: AcceptanceLine, parts: Sequence[LinePart]) -> MissingCriterion | None:
    if not parts:
        return None
    if len(parts) == len(line.parts):
        return MissingCriterion(line.criterion, str(line.number), line.title)
    names = "; ".join(part.name for part in parts)
    return MissingCriterion(line.criterion, ", ".join(part.number for part in parts), f"{line.title}, {names}")


def _list_viewings(results: Iterable[Entry]) -> list[list[Entry]]:
    """The results of each viewing: those of one thing that were signed on a later day belong to the next one."""
    days: dict[tuple[str, ...], list[date | None]] = {}
    viewings: list[list[Entry]] = []
    for entry in results:
        of_line = days.setdefault((name_line(entry), str(entry.get("part") or ""), entry.place.row), [])
        if entry.get("signed_on") not in of_line:
            of_line.append(entry.get("signed_on"))
        number = of_line.index(entry.get("signed_on"))
        while len(viewings) <= number:
            viewings.append([])
        viewings[number].append(entry)
    return viewings


def _name_lines(project: Project, standards: Standards) -> Lines:
    """The lines by the names of their criteria, and by those of criteria of the project that are on one line alone."""

    def name() -> Lines:
        lines = list_lines(project, standards)
        owned = [(f"{OWN}{own.path[-1]}", line) for line in lines for own in line.own]
        counts = Counter(name for name, _ in owned)
        return {name: line for name, line in owned if counts[name] == 1} | {line.criterion: line for line in lines}

    return project.remember(_name_lines, name)


def _find_line(lines: Lines, entry: Entry) -> AcceptanceLine | None:
    return lines.get(name_line(entry))


def _find_told(line: AcceptanceLine, entry: Entry) -> LinePart | None:
    """The part that a result names, by its row of a filled form, its words, or its number; None where it tells none."""
    told = str(entry.get("part") or "")
    for part in line.parts:
        if entry.place.row == part.row or told.casefold() == part.number or _fold(told) == _fold(part.name) != set():
            return part
    return None


def _fold(text: str) -> set[str]:
    """What tells one part from another: `2` of `Coat 2`, `spare` and `1` of `spare gun, coat 1`."""
    return set(_WORD.findall(text.casefold())) - _TELLS_NOTHING


class _Placer:
    """Puts the results of one viewing on the parts of the lines."""

    def __init__(self, lines: Lines) -> None:
        self.lines = lines
        self.viewing = Viewing()

    def place(self, entries: list[Entry]) -> Viewing:
        """The viewing of these results."""
        self.viewing.entries = entries
        untold: dict[str, list[Entry]] = {}
        for entry in entries:
            line = _find_line(self.lines, entry)
            if line is None or not line.parts:
                self._leave(entry, *_tell_no_line(line, entry))
            elif (part := _find_told(line, entry)) is not None:
                self._add(line, part, [(entry, text) for text in split_readings(entry)], entry)
            elif _fold(str(entry.get("part") or "")):
                self._leave(entry, *_tell_no_part(line, str(entry.values["part"])))
            else:
                untold.setdefault(line.criterion, []).append(entry)
        for name, of_line in untold.items():
            self._place_untold(self.lines[name], of_line)
        return self.viewing

    def _place_untold(self, line: AcceptanceLine, entries: list[Entry]) -> None:
        """Where coats or angles are read by themselves, only a full set of readings is taken for being in their order.

        What tells no gun is of the one that sprays the work.
        """
        working = [part for part in line.parts if not part.spare]
        read = [(entry, text) for entry in entries for text in split_readings(entry)]
        if len(working) == 1:
            self._add(line, working[0], read, *entries)
            return
        full = next((parts for parts in (line.parts, working) if len(read) == line.boxes * len(parts)), ())
        for at, part in enumerate(full):
            own = read[at * line.boxes : (at + 1) * line.boxes]
            self._add(line, part, own, *{entry.number: entry for entry, _ in own}.values())
        for entry in entries if not full else ():
            self._leave(entry, f"not told whether line {_tell_numbers(line)}", _tell_choice(line))

    def _add(self, line: AcceptanceLine, part: LinePart, read: list[tuple[Entry, str]], *entries: Entry) -> None:
        found = self.viewing.parts.setdefault(part.row, PartResults(line, part))
        found.entries += entries
        found.readings += read

    def _leave(self, entry: Entry, why: str, hint: str) -> None:
        self.viewing.unplaced.append(Unplaced(entry, why, hint))


def _tell_no_line(line: AcceptanceLine | None, entry: Entry) -> tuple[str, str]:
    name = name_line(entry)
    if not name:
        return "no criterion is told", "write criterion: gloss, as the acceptance form names it"
    if line is not None:
        return f"line {line.number} is not used on this project", "take it out of mockup.omit to use it"
    return f"the acceptance form of this project has no line {name!r}", "name a criterion of D10"


def _tell_no_part(line: AcceptanceLine, told: str) -> tuple[str, str]:
    if len(line.parts) == 1:
        return f"line {line.number} has no parts, and {told!r} is told", "leave part out"
    return f"there is no {told!r} on line {line.number}", _tell_choice(line)


def _tell_numbers(line: AcceptanceLine) -> str:
    """`15a or 15b`."""
    *first, last = (part.number for part in line.parts)
    return f"{', '.join(first)} or {last}"


def _tell_choice(line: AcceptanceLine) -> str:
    """`write part: coat 1, or coat 2`."""
    *first, last = (part.name for part in line.parts)
    return f"write part: {'; '.join(first)}; or {last}"
