"""The rows of the open items: what a person answers together in one, each other value by itself."""

from collections.abc import Iterable, Iterator
from itertools import groupby
from typing import Any, NamedTuple

from specgen.documents.code_edition import WIND, name_wind_standard
from specgen.documents.context import DocumentContext
from specgen.documents.field_units import name_unit, with_unit_of
from specgen.documents.views._fields import name_fields
from specgen.documents.views._needed import find_pattern
from specgen.documents.views._requests import Item, list_requests
from specgen.documents.views._rows_together import ROWS
from specgen.model.block import CheckBox
from specgen.model.field import Field, Path, dotted_path
from specgen.model.figure_text import fill_figures

_TITLE_OF = {path: title for title, parts in ROWS.items() for path in parts}


class Row(NamedTuple):
    """One row of the table: what is asked, with the figures that are proposed, and what waits for it."""

    asked: list[Any]
    holds: tuple[str, ...]
    names: bool = False  # whether it asks for no more than whom to ask for the rest


def join_items(context: DocumentContext, items: Iterable[Item]) -> list[Row]:
    """The rows of what a party is asked before one work; what is answered together of the same members in one."""
    groups: dict[tuple[str, ...], list[Item]] = {}
    for item in items:
        groups.setdefault(_find_group(context, item), []).append(item)
    return [_join(context, group) for group in groups.values()]


def _find_group(context: DocumentContext, item: Item) -> tuple[str, ...]:
    """The title of the row of an item and the marks in it; what goes with nothing by itself."""
    title = _TITLE_OF.get(_find_path(context, item), "") if item.paths else ""
    return (title, *_list_marks(context, item)) if title else ("", item.text)


def _find_path(context: DocumentContext, item: Item) -> str:
    return dotted_path(find_pattern(context, item.paths[0]))


def _list_marks(context: DocumentContext, item: Item) -> list[str]:
    return [mark for marks in name_fields(context, item.paths).values() for mark in marks]


def _join(context: DocumentContext, items: list[Item]) -> Row:
    first, *others = items
    if not others:
        asked_first = CheckBox(first.text + ":" * bool(first.figures))
        return Row([asked_first, *_tell_figures(first)], first.holds, _names_alone(context, first))
    title = _TITLE_OF[_find_path(context, first)]
    parts = {path: fill_figures(said, context.figure) for path, said in ROWS[title].items()}
    told = sorted(items, key=lambda item: list(parts).index(_find_path(context, item)))
    marks = ", ".join(_list_marks(context, first))
    title = title.replace(WIND, name_wind_standard(context))
    open_ = [(parts[_find_path(context, item)], _find_field(context, item)) for item in told if not item.figures]
    asked: list[Any] = [CheckBox(_tell(title + (f" ({marks})" if marks else ""), open_, context.first))]
    for item in (item for item in told if item.figures):
        begins = ":" if asked[1:] == [] and not open_ else ";"
        asked += [f"{begins} {parts[_find_path(context, item)]},", *_tell_figures(item)]
    holds = tuple(dict.fromkeys(code for item in items for code in item.holds))
    return Row(asked, holds, all(_names_alone(context, item) for item in items))


def _names_alone(context: DocumentContext, item: Item) -> bool:
    """Whether an item asks for the name of a party of which something else is asked."""
    return bool(item.paths) and any(request.party == item.names for request in list_requests(context))


def _tell_figures(item: Item) -> list[Any]:
    """` confirm 60 to 100`: the figures that are proposed, each with the letter of its source."""
    ends = [part for figure in item.figures for part in (" to ", figure)]
    return [" confirm ", *ends[1:]] if ends else []


def _find_field(context: DocumentContext, item: Item) -> Field | None:
    """The field of an item; None for a list."""
    path: Path = tuple(item.paths[0].split("."))
    return context.project.schema.field_at(path)


def _tell(title: str, parts: list[tuple[str, Field | None]], system: str) -> str:
    """`Mesh (W1): layers; diagonal at openings: yes/no`; a unit that all parts have stands behind the title.

    One that parts behind each other have stands behind the last of them: `length, ft; closing, opening, shear, in`.
    """
    asked = [said for said, field in parts if field is not None and field.kind == "yes_no"]
    plain = [(said, name_unit(field, system) if field else "") for said, field in parts if said not in asked]
    units = {unit for _, unit in plain}
    shared = f", {units.pop()}" if len(units) == 1 and len(plain) > 1 and "" not in units else ""
    told = [said for said, _ in plain] if shared else [_tell_alike(run) for run in _split_by_unit(plain)]
    told += [f"{', '.join(asked)}: yes/no"] if asked else []
    return f"{title}{shared}{': ' if told else ''}{'; '.join(told)}"


def _split_by_unit(parts: list[tuple[str, str]]) -> Iterator[list[tuple[str, str]]]:
    """The parts behind each other that have one unit; each by itself that has none."""
    for unit, found in groupby(parts, key=lambda part: part[1]):
        run = list(found)
        yield from [run] if unit else [[part] for part in run]


def _tell_alike(parts: list[tuple[str, str]]) -> str:
    """`closing, opening, shear, in`: parts of one unit."""
    return with_unit_of(", ".join(said for said, _ in parts), parts[0][1])
