"""The lines of the acceptance form in words: method, limit, where, with the project's own merged into them."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.mockup import list_mesh_zones
from specgen.documents.template_functions import figure_functions
from specgen.documents.template_views import Page
from specgen.documents.views._deviated import name_deviations
from specgen.documents.views._form_words import form_words
from specgen.documents.views._represented import list_joint_sizes
from specgen.documents.views.mockup_details import list_places
from specgen.model.field import Path
from specgen.model.series import join_series
from specgen.model.standard import Criterion
from specgen.model.value_text import words
from specgen.quantities.span import Strictness, compare_limits, read_span, strip_count, take_side
from specgen.recording.acceptance_lines import (
    AcceptanceLine,
    binds_each,
    count_asked,
    list_lines,
    list_standard_spans,
    names_mean,
)
from specgen.recording.own_criteria import Own

_EYE = "eye"  # an instrument without a mark
_WHOLE = "whole face"  # of a mockup with a stepped build-up the finished part of it
_FIELD = re.compile(r"\{\{ ([a-z_]+\.[a-z_.]+) \}\}")


@dataclass(frozen=True)
class PrintedLine:
    """A line of the form as cells; one that is not used has no boxes."""

    line: AcceptanceLine
    title: Any
    method: list[Any]
    limit: list[Any]
    where: list[Any]
    boxes: int  # readings it has room for, in each part
    spare_where: str = ""


@dataclass
class Form:
    """What the lines of the form say: the names that their templates use, and the places of the mockup."""

    context: DocumentContext
    composer: Composer

    def __post_init__(self) -> None:
        context = self.context
        root = Page(context, context.project.schema.root, ())
        self.names = {name: getattr(root, name) for name in context.project.schema.root.children}
        self.names |= figure_functions(context)
        self.names |= form_words(context, self.composer)
        self.places = list_places(context)
        self.standing = list_lines(context.project, context.standards)

    def lines(self) -> Iterator[PrintedLine]:
        """Every line in its order."""
        for line in self.standing:
            if line.row is None:
                yield self._own_line(line, line.own[0])
            elif not line.parts:
                yield self._not_used(line)
            else:
                yield self._line(line, line.row)

    def _is_alone(self, own: Own) -> bool:
        """Whether a criterion of the project is merged into one standard line only."""
        return sum(own in line.own for line in self.standing) == 1

    def _line(self, line: AcceptanceLine, row: Criterion) -> PrintedLine:
        asked = count_asked(row)
        readings = row.readings.replace(str(asked), str(asked + line.extra), 1)
        return PrintedLine(
            line,
            DisplayValue(row.title, row.title, row.basis[0]),
            self._method(row, [one for one in line.own if one.method and self._is_alone(one)]),
            self._limit(row, line.own),
            self._where(row, readings),
            line.boxes or self._count_shown(row) + line.extra,
            f"Place {self.places['each_color']}; {_tell_readings(row.readings)}" if line.parts[-1].spare else "",
        )

    def _count_shown(self, row: Criterion) -> int:
        """How many readings have a box: one each coat, size of joint, or zone."""
        counted = {
            "joints": lambda: len(list_joint_sizes(self.context)),
            "walls": lambda: sum(map(len, list_mesh_zones(self.context))),
        }
        if row.box_each[0][0] in counted:
            return max(1, counted[row.box_each[0][0]]())
        return sum(int(self.context.project.get(path) or 1) for path in row.box_each)

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

    def _limit(self, row: Criterion, own: tuple[Own, ...]) -> list[Any]:
        """The limit: the stricter figure, both where they cannot be compared, and the deviations that move it."""
        governing, spans, beside = None, list_standard_spans(self.context.project, row), []
        for line in own:
            span = read_span(line.limit)
            verdict = compare_limits(span, spans) if span and spans else None
            if verdict is Strictness.STRICTER or binds_each(self.context.project, row, line):
                governing, spans = line, (take_side(span, spans) or span,) if span else spans
            elif verdict is None and line.limit:
                beside.append(line)
        standard = self._governing(row, governing)
        text = self.composer.text(
            row.limit,
            self.names
            | {
                "governing": standard,
                "own_limit": bool(beside),
                "each_reading": governing is not None and binds_each(self.context.project, row, governing),
                "of_mean": any(names_mean(line) for line in own),
            },
            f"criteria.yaml: {row.name}",
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
        found = [self.places[shown] for shown in (row.part, *row.shows) if shown in self.places]
        places = sorted(found, key=list(self.places.values()).index)
        location = f"Place{'s' if len(places) > 1 else ''} {join_series(places)}" if places else row.location
        if location == _WHOLE and "build_up_steps" in self.places:
            location = "finished part"
        told = _tell_readings(readings)
        return [location[:1].upper(), location[1:], f"; {told}" if told else ""]

    def _not_used(self, line: AcceptanceLine) -> PrintedLine:
        """A standard line that the project leaves out: it stays in view, with who decided and why."""
        said: list[Any] = ["Not used."]
        for name, lead in (("omit_decided_by", " Decided by: "), ("omit_reason", " Reason: ")):
            path = ("mockup", name)
            said += [lead, self.context.display(path), "."] if self.context.project.is_given(path) else []
        return PrintedLine(line, line.title, [], said, [], 0)

    def _own_line(self, line: AcceptanceLine, own: Own) -> PrintedLine:
        """A criterion of the project as a line of its own."""
        method, limit = self._own_method(own), [_begin(self.context.display((*own.path, "limit")))]
        where = [_tell_readings(str(own.readings))] if own.readings else []
        return PrintedLine(line, line.title, method, limit, where, line.boxes)

    def _render(self, text: str, row: Criterion) -> tuple[Any, ...]:
        return self.composer.inlines(self.composer.text(text, self.names, f"criteria.yaml: {row.name}"))


def _begin(value: DisplayValue) -> DisplayValue:
    """The words of a cell, with a capital at their head."""
    return replace(value, text=f"{value.text[:1].upper()}{value.text[1:]}")


def _tell_readings(readings: str) -> str:
    """`5 readings`, `5 each coat`; nothing for one."""
    if readings == "1":
        return ""
    return f"{readings} readings" if readings.isdigit() else readings
