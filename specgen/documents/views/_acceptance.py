"""The lines of the acceptance form: the standard lines that apply, with the project's own merged into them."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import zip_longest
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.mockup import list_mesh_kinds, list_mockup_walls
from specgen.documents.template_functions import figure_functions
from specgen.documents.template_views import Page
from specgen.documents.views._deviated import name_deviations
from specgen.documents.views._form_words import form_words
from specgen.documents.views._own_criteria import ADDED, Own, own_criteria
from specgen.documents.views._represented import list_joint_sizes
from specgen.documents.views.mockup_details import list_places
from specgen.model.absence import Absent
from specgen.model.field import Path
from specgen.model.standard import Criterion
from specgen.model.value_text import words
from specgen.quantities.span import Span, Strictness, compare_limits, read_span, span_of, strip_count, take_side
from specgen.scheduling.applying import applies

_TITLES = {"look": "Appearance", "film": "Film thickness", "water": "Flashings"}  # where a name alone does not say it
_EYE = "eye"  # an instrument without a mark
_FIELD = re.compile(r"\{\{ ([a-z_]+\.[a-z_.]+) \}\}")


@dataclass(frozen=True)
class AcceptanceLine:
    """A line of the form as cells; one that is not used has no readings."""

    criterion: str  # as records call it; of a line of the project its own, or its number
    name: str  # in plain words
    title: Any
    method: list[Any]
    limit: list[Any]
    where: list[Any]
    boxes: int  # readings it has room for, in each part
    mean: bool = False
    parts: tuple[str, ...] = ("",)  # coats or angles that are each read and judged by themselves
    for_record: bool = False  # written down and not judged
    spare: tuple[str, ...] = ()  # the parts of the panel of the spare gun, read after the others
    spare_where: str = ""


@dataclass
class Form:
    """The standard lines in use, and the project's own by the line they are merged into or stand after."""

    context: DocumentContext
    composer: Composer
    merged: dict[str, list[Own]] = field(default_factory=dict)
    after: dict[str, list[Own]] = field(default_factory=dict)
    alone: set[Path] = field(default_factory=set)  # own lines that are merged into one standard line only

    def __post_init__(self) -> None:
        context = self.context
        root = Page(context, context.project.schema.root, ())
        self.names = {name: getattr(root, name) for name in context.project.schema.root.children}
        self.names |= figure_functions(context)
        self.names |= form_words(context, self.composer)
        self.places = list_places(context)
        self.omitted = set(context.project.get(("mockup", "omit")) or ())
        walls = list_mockup_walls(context)
        rows = context.standards.criteria.values()
        self.rows = [row for row in rows if any(applies(row.when, context.project, wall) for wall in walls)]
        self.used = [row for row in self.rows if row.name not in self.omitted]
        for own in own_criteria(context):
            self._place(own)

    def lines(self) -> Iterator[AcceptanceLine]:
        """Every line in the order of the standards; own lines that name none stand at the end."""
        for row in self.rows:
            if row.name in self.omitted:
                yield self._not_used(row)
                continue
            yield self._line(row)
            yield from map(self._own_line, self.after.get(row.name, ()))
        yield from map(self._own_line, self.after.get("", ()))

    def _place(self, own: Own) -> None:
        """Merge an own line into the line it names; of several lines into those whose figure it tightens or loosens."""
        covered = own.find_covered(self.used)
        if len(covered) > 1:
            compared = [row for row in covered if self._compare(own, row) is not None]
            if not compared:
                self.after.setdefault(covered[-1].name, []).append(own)
            covered = compared
        elif not covered:
            self.after.setdefault("", []).append(own)
        if len(covered) == 1:
            self.alone.add(own.path)
        for row in covered:
            self.merged.setdefault(row.name, []).append(own)

    def _compare(self, own: Own, row: Criterion) -> Strictness | None:
        span, standard = read_span(own.limit), self._standard_spans(row)
        return compare_limits(span, standard) if span and standard else None

    def _standard_spans(self, row: Criterion) -> tuple[Span, ...]:
        """The spans of the figure of a standard line; none where it has no figure, or a field is absent."""
        try:
            least, most, within = (
                [self.context.project.value(path) for pattern in patterns for path in self._list_shown(pattern)]
                for patterns in (row.least, row.most, row.within)
            )
        except Absent:
            return ()
        pairs = list(zip_longest(least, most)) if not within else [(within[0] - within[1], within[0] + within[1])]
        return tuple(span_of(*pair) for pair in pairs)

    def _list_shown(self, pattern: Path) -> list[Path]:
        """The paths of a pattern, of walls those of the mockup."""
        paths, walls = self.context.project.each(pattern), list_mockup_walls(self.context)
        return [path for path in paths if path[0] != "walls" or path[1] in walls]

    def _line(self, row: Criterion) -> AcceptanceLine:
        own = self.merged.get(row.name, [])
        boxes, read = self._boxes(row), int(re.findall(r"\d+", row.readings)[0])
        most = max((line.readings for line in own), default=0)
        readings = row.readings.replace(str(read), str(max(read, most)), 1)
        return AcceptanceLine(
            row.name,
            row.title,
            DisplayValue(row.title, row.title, row.basis[0]),
            self._method(row, [line for line in own if line.method and line.path in self.alone]),
            self._limit(row, own),
            self._where(row, readings),
            boxes + max(0, most - read),
            row.mean,
            self._parts(row),
            row.for_record,
            *self._spare(row),
        )

    def _boxes(self, row: Criterion) -> int:
        """How many readings have a box: those asked for, one each coat, size of joint, or zone."""
        counted = {
            "joints": lambda: len(list_joint_sizes(self.context)),
            "walls": lambda: sum(map(len, list_mesh_kinds(self.context))),
        }
        if row.box_each and row.box_each[0][0] in counted:
            return max(1, counted[row.box_each[0][0]]())
        if row.box_each:
            return sum(int(self.context.project.get(path) or 1) for path in row.box_each)
        return int(row.boxes or row.readings)

    def _parts(self, row: Criterion) -> tuple[str, ...]:
        """The coats, or the angles of each color; one part without a name where there is one."""
        if not row.for_each:
            return ("",)
        project, colors = self.context.project, self.context.project.members.get(("colors",), ())
        if row.for_each[0] != "colors":
            coats = int(project.get(row.for_each) or 1)
            return tuple(f"coat {number}" for number in range(1, coats + 1)) if coats > 1 else ("",)
        lead = {mark: f"{mark}, " if len(colors) > 1 else "" for mark in colors}
        read = {mark: project.get(("colors", mark, row.for_each[-1])) or () for mark in colors}
        parts = [f"{lead[mark]}{angle} degrees" for mark in colors for angle in read[mark]]
        return tuple(parts + [mark for mark in colors if parts and not read[mark]]) or ("",)

    def _spare(self, row: Criterion) -> tuple[tuple[str, ...], str]:
        """The parts of a line that are read again on the panel of the spare gun, and its place; none without one."""
        guns = self.context.project.members.get(("guns",), ())
        spare = any(self.context.project.get(("guns", gun, "spares")) for gun in guns)
        if not row.spare or not spare or "each_color" not in self.places:
            return (), ""
        parts = tuple(f"spare gun{part and f', {part}'}" for part in self._parts(row))
        return parts, f"Place {self.places['each_color']}; {_tell_readings(row.readings)}"

    def _method(self, row: Criterion, own: list[Own]) -> list[Any]:
        """The method, or the project's own, with the marks of the instruments."""
        if own:
            parts: list[Any] = []
            for line in own:
                parts += ["; " if parts else "", *self._own_method(line)]
            return parts
        kind = row.instrument.lower().replace("-", " ")
        project = self.context.project
        marks = [
            mark
            for mark in project.members.get(("instruments",), ())
            if words(str(project.get(("instruments", mark, "kind")))).lower() == kind
            or (kind == "viscosity cup" and str(project.get(("instruments", mark, "kind"))).endswith("_cup"))
        ]
        return [*self._render(row.method, row), f" ({', '.join(marks)})" if marks else ""]

    def _own_method(self, own: Own) -> list[Any]:
        """The method in the project's own words, and the instrument where these do not name it."""
        instrument = (*own.path, "instrument")
        named = str(self.context.project.get(instrument) or "")
        cell: list[Any] = [_begin(self.context.display((*own.path, "method")))]
        told = named.casefold() == _EYE or named.casefold() in own.method.casefold()
        return cell if told else [*cell, f" ({named})"]

    def _limit(self, row: Criterion, own: list[Own]) -> list[Any]:
        """The limit: the stricter figure, both where they cannot be compared, and the deviations that move it."""
        governing, spans, beside = None, self._standard_spans(row), []
        for line in own:
            span = read_span(line.limit)
            verdict = compare_limits(span, spans) if span and spans else None
            if verdict is Strictness.STRICTER:
                governing, spans = line, (take_side(span, spans) or span,) if span else spans
            elif verdict is None and line.limit:
                beside.append(line)
        standard = self._governing(row, governing)
        text = self.composer.text(
            row.limit, self.names | {"governing": standard, "own_limit": bool(beside)}, f"criteria.yaml: {row.name}"
        )
        cell: list[Any] = [*self.composer.inlines(text)]
        cell += [" (project criterion)"] if governing else []
        said = self.composer.plain(text).casefold()
        for line in {line.limit: line for line in beside if line.limit.casefold() not in said}.values():
            cell += [". Project criterion: ", self.context.display((*line.path, "limit"))]
        deviations = name_deviations(self.context, self._fields(row))
        return cell + ([f" (deviation {', '.join(deviations)})"] if deviations else [])

    def _governing(self, row: Criterion, own: Own | None) -> str:
        """The figure of a limit as it prints: that of the standard line, or a stricter one of the project."""
        if own is None:
            return self.composer.text(row.governing, self.names, f"criteria.yaml: {row.name}") if row.governing else ""
        span, said = read_span(own.limit), strip_count(own.limit)
        if span and span.is_one_figure:
            said = f"{row.governing.partition('{')[0] or ('maximum ' if row.most else 'minimum ')}{said}"
        if row.limit.startswith("{{ governing }}"):
            said = f"{said[:1].upper()}{said[1:]}"
        return self.composer.token(said)

    def _fields(self, row: Criterion) -> set[Path]:
        printed = {tuple(path.split(".")) for text in (row.limit, row.governing) for path in _FIELD.findall(text)}
        return printed | {*row.least, *row.most, *row.within}

    def _where(self, row: Criterion, readings: str) -> list[Any]:
        places = [self.places[shown] for shown in (row.part, *row.shows) if shown in self.places]
        location = f"Place{'s' if len(places) > 1 else ''} {_join(places)}" if places else row.location
        told = _tell_readings(readings)
        return [location[:1].upper(), location[1:], f"; {told}" if told else ""]

    def _not_used(self, row: Criterion) -> AcceptanceLine:
        """A standard line that the project leaves out: it stays in view, with who decided and why."""
        said: list[Any] = ["Not used."]
        for name, lead in (("omit_decided_by", " Decided by: "), ("omit_reason", " Reason: ")):
            path = ("mockup", name)
            said += [lead, self.context.display(path), "."] if self.context.project.is_given(path) else []
        return AcceptanceLine(row.name, row.title, row.title, [], said, [], 0)

    def _own_line(self, own: Own) -> AcceptanceLine:
        """A criterion of the project as a line of its own."""
        title = _TITLES.get(own.name) or words(own.name).capitalize()
        name = "Project criterion" if own.name == ADDED else f"{title}: project criterion"
        return AcceptanceLine(
            f"own-{own.path[-1]}",
            name,
            name,
            self._own_method(own),
            [_begin(self.context.display((*own.path, "limit")))],
            [_tell_readings(str(own.readings))] if own.readings else [],
            own.readings or 1,
        )

    def _render(self, text: str, row: Criterion) -> tuple[Any, ...]:
        return self.composer.inlines(self.composer.text(text, self.names, f"criteria.yaml: {row.name}"))


def _begin(value: DisplayValue) -> DisplayValue:
    """The words of a cell, with a capital at their head."""
    return replace(value, text=f"{value.text[:1].upper()}{value.text[1:]}")


def _join(places: list[str]) -> str:
    """`2`, `2 and 3`, `2, 3, and 4a`."""
    return " and ".join(places) if len(places) < 3 else f"{', '.join(places[:-1])}, and {places[-1]}"


def _tell_readings(readings: str) -> str:
    """`5 readings`, `5 each coat`; nothing for one."""
    if readings == "1":
        return ""
    return f"{readings} readings" if readings.isdigit() else readings
