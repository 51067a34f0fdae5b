"""The lines of the mockup acceptance form that a project has, with what is read and judged on each by itself.

The form prints them, results are put on them, and what none was recorded of is counted, all by this one list.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import zip_longest
from typing import NamedTuple

from specgen.model.absence import Absent
from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.standard import Criterion, Standards
from specgen.quantities.span import Span, Strictness, compare_limits, read_span, span_of
from specgen.recording.own_criteria import Own, list_own_criteria
from specgen.scheduling.applying import applies

# Before the number of a criterion of the project that has a line of its own, as records call it.
OWN = "own-"
_LETTERS = "abcdefghijklmnopqrstuvwxyz"
_WORKING, _SPARE = "working gun", "spare gun"
_PANEL_OF_SPARE = "each_color"  # the detail of the mockup at which the spare gun is read


class LinePart(NamedTuple):
    """What is read and judged by itself on a line: a coat, an angle, the panel of the spare gun."""

    number: str  # as the form prints it: `21c`
    row: str  # as the blanks of the form name it: `film_gloss_dry-c`
    name: str = ""  # `spare gun, coat 1`; empty where the line is one
    spare: bool = False


@dataclass(frozen=True)
class AcceptanceLine:
    """A line of the form; one that the project leaves out has no parts."""

    number: int
    criterion: str  # as records call it; of a line of the project `own-2`
    title: str
    parts: tuple[LinePart, ...]
    row: Criterion | None = None  # the standard line
    own: tuple[Own, ...] = ()  # of the project, on this line
    boxes: int = 0  # for the readings of each part; 0 where the standard line has one for each of what the mockup shows
    extra: int = 0  # readings that the project asks for beyond those of the standard line


def count_asked(row: Criterion) -> int:
    """How many readings a standard line asks for, of each of what it is read at."""
    return int(re.findall(r"\d+", row.readings)[0])


def list_shown_walls(project: Project) -> tuple[str, ...]:
    """The marks of the walls whose build-up the mockup shows; all of them until the project names some."""
    walls = project.members.get(("walls",), ())
    shown = {str(wall) for wall in project.get(("mockup", "walls")) or ()}
    return tuple(wall for wall in walls if wall in shown) or walls


def list_lines(project: Project, standards: Standards) -> tuple[AcceptanceLine, ...]:
    """Every line in the order of the standards; own lines that name none stand at the end."""
    return tuple(_Lines(project, standards).make())


def list_standard_spans(project: Project, row: Criterion) -> tuple[Span, ...]:
    """The spans of the figure of a standard line; none where it has no figure, or a field is absent."""
    try:
        least, most, within = (
            [project.value(path) for pattern in patterns for path in _list_shown(project, pattern)]
            for patterns in (row.least, row.most, row.within)
        )
    except Absent:
        return ()
    pairs = list(zip_longest(least, most)) if not within else [(within[0] - within[1], within[0] + within[1])]
    return tuple(span_of(*pair) for pair in pairs)


def names_mean(own: Own) -> bool:
    """Whether a criterion of the project is about the mean of the readings."""
    return "mean" in own.limit.casefold()


def binds_each(project: Project, row: Criterion, own: Own) -> bool:
    """Whether a least figure of the project binds each reading, where the standard line takes their mean."""
    if not row.mean or not row.least or names_mean(own):
        return False
    span, standard = read_span(own.limit), list_standard_spans(project, row)
    verdict = compare_limits(span, standard) if span and standard else None
    return verdict in (Strictness.SAME, Strictness.STRICTER)


def _list_shown(project: Project, pattern: Path) -> list[Path]:
    """The paths of a pattern, of walls those of the mockup."""
    walls = list_shown_walls(project)
    return [path for path in project.each(pattern) if path[0] != "walls" or path[1] in walls]


@dataclass
class _Lines:
    """The standard lines in use, and the project's own by the line they are merged into or stand after."""

    project: Project
    standards: Standards
    merged: dict[str, list[Own]] = field(default_factory=dict)
    after: dict[str, list[Own]] = field(default_factory=dict)

    @cached_property
    def rows(self) -> list[Criterion]:
        walls = list_shown_walls(self.project)
        every = self.standards.criteria.values()
        return [row for row in every if any(applies(row.when, self.project, wall) for wall in walls)]

    @cached_property
    def omitted(self) -> set[str]:
        return set(self.project.get(("mockup", "omit")) or ())

    def make(self) -> Iterator[AcceptanceLine]:
        used = [row for row in self.rows if row.name not in self.omitted]
        for own in list_own_criteria(self.project):
            self._place(own, used)
        number = 0
        for row in self.rows:
            number += 1
            yield self._make_line(number, row)
            for own in self.after.get(row.name, ()) if row.name not in self.omitted else ():
                number += 1
                yield _make_own(number, own)
        yield from (_make_own(at, own) for at, own in enumerate(self.after.get("", ()), number + 1))

    def _place(self, own: Own, used: Sequence[Criterion]) -> None:
        """Merge an own line into the line it names; of several lines into those whose figure it tightens or loosens."""
        covered = own.find_covered(used)
        if len(covered) > 1:
            compared = [row for row in covered if self._is_compared(own, row)]
            if not compared:
                self.after.setdefault(covered[-1].name, []).append(own)
            covered = compared
        elif not covered:
            self.after.setdefault("", []).append(own)
        for row in covered:
            self.merged.setdefault(row.name, []).append(own)

    def _is_compared(self, own: Own, row: Criterion) -> bool:
        span, standard = read_span(own.limit), list_standard_spans(self.project, row)
        return span is not None and bool(standard) and compare_limits(span, standard) is not None

    def _make_line(self, number: int, row: Criterion) -> AcceptanceLine:
        if row.name in self.omitted:
            return AcceptanceLine(number, row.name, row.title, (), row)
        own = tuple(self.merged.get(row.name, ()))
        parts = tuple(_letter(number, row.name, *self._name_parts(row)))
        extra = max(0, max((one.readings for one in own), default=0) - count_asked(row))
        boxes = 0 if row.box_each else int(row.boxes or row.readings) + extra
        return AcceptanceLine(number, row.name, row.title, parts, row, own, boxes, extra)

    def _name_parts(self, row: Criterion) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The coats or angles, then those of the panel of the spare gun."""
        parts = self._name_members(row)
        guns = self.project.members.get(("guns",), ())
        spare = any(self.project.get(("guns", gun, "spares")) for gun in guns)
        if not row.spare or not spare or _PANEL_OF_SPARE not in (self.project.get(("mockup", "includes")) or ()):
            return parts, ()
        return tuple(part or _WORKING for part in parts), tuple(f"{_SPARE}{part and f', {part}'}" for part in parts)

    def _name_members(self, row: Criterion) -> tuple[str, ...]:
        """The coats, or the angles of each color; one part without a name where there is one."""
        if not row.for_each:
            return ("",)
        project, colors = self.project, self.project.members.get(("colors",), ())
        if row.for_each[0] != "colors":
            coats = int(project.get(row.for_each) or 1)
            return tuple(f"coat {number}" for number in range(1, coats + 1)) if coats > 1 else ("",)
        lead = {mark: f"{mark}, " if len(colors) > 1 else "" for mark in colors}
        read = {mark: project.get(("colors", mark, row.for_each[-1])) or () for mark in colors}
        parts = [f"{lead[mark]}{angle} degrees" for mark in colors for angle in read[mark]]
        return tuple(parts + [mark for mark in colors if parts and not read[mark]]) or ("",)


def _letter(number: int, criterion: str, parts: Sequence[str], spare: Sequence[str]) -> Iterator[LinePart]:
    """The parts of a line by letter; a first one that stands for the working gun alone has the row of the line."""
    for at, name in enumerate((*parts, *spare)):
        letter = _LETTERS[at % len(_LETTERS)] if name else ""
        row = f"{criterion}-{letter}" if letter and (len(parts) > 1 or at) else criterion
        yield LinePart(f"{number}{letter}", row, name, at >= len(parts))


def _make_own(number: int, own: Own) -> AcceptanceLine:
    """A criterion of the project as a line of its own."""
    criterion = f"{OWN}{own.path[-1]}"
    parts = (LinePart(str(number), criterion),)
    return AcceptanceLine(number, criterion, own.title, parts, own=(own,), boxes=own.readings or 1)
