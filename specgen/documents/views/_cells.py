"""What tables put into a cell from several parts."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.model.field import Path
from specgen.model.source import Source

OPEN = DisplayValue("[open]", open=True)


def ask_all(context: DocumentContext, paths: Iterable[Path]) -> list[Any]:
    """What is still to be given, each in brackets, behind `pending`."""
    return ["pending: ", *join_cells([_ask(context, path)] for path in dict.fromkeys(paths))]


def _ask(context: DocumentContext, path: Path) -> DisplayValue:
    """What is still to be given, in brackets; of an output the crew and the step."""
    asked = context.ask(path)
    if path[0] != "crews" or path[2:3] != ("rates",):
        return asked
    title = context.standards.steps[path[3]].title
    return replace(asked, text=f"[Output of crew {path[1]}, {title[:1].lower()}{title[1:]}]")


def cite_section(number: str, source: Source, subject: str) -> DisplayValue:
    """The number of a section of the adopted code, which itself is the citation; marked where nobody has read it."""
    return DisplayValue(number, number, None if source.is_verified else source, about=f"Section, {subject}")


def join_cells(parts: Iterable[list[Any]]) -> list[Any]:
    """The content of several cells in one, separated by semicolons."""
    cells: list[Any] = []
    for part in parts:
        cells += [*(["; "] if cells else []), *part]
    return cells
