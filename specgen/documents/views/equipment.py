"""The guns, hoses, compressor and tank of the job, from the firm file."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView

Row = tuple[str, list[Any]]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each piece of spray equipment."""
    lines = [*_guns(context), *_compressor(context), *_hoses(context), *_tank(context)]
    return TableView(("Piece", "As used on mockup and work"), tuple(lines), (24, 76))


def _guns(context: DocumentContext) -> Iterator[Row]:
    for mark in context.project.members.get(("guns",), ()):
        display = _display_of(context, "guns", mark)
        yield (
            f"Gun {mark}",
            [
                display("kind"),
                ", fluid nozzle ",
                display("fluid_nozzle"),
                ", air nozzle ",
                display("air_nozzle"),
                "; guns at once: ",
                display("count"),
            ],
        )


def _hoses(context: DocumentContext) -> Iterator[Row]:
    for mark in context.project.members.get(("hoses",), ()):
        display = _display_of(context, "hoses", mark)
        yield f"Hose {mark}", [display("use"), ", ", display("length"), " long, bore ", display("bore")]


def _compressor(context: DocumentContext) -> Iterator[Row]:
    if _is_given(context, "compressor"):
        display = _display_of(context, "compressor")
        yield "Compressor", [display("air_flow"), " at ", display("at_pressure"), ", filter ", display("filter")]


def _tank(context: DocumentContext) -> Iterator[Row]:
    if _is_given(context, "tank"):
        display = _display_of(context, "tank")
        yield "Pressure tank", [display("volume"), "; regulators: ", display("regulators")]


def _display_of(context: DocumentContext, *path: str) -> Callable[[str], Any]:
    return lambda name: context.display((*path, name))


def _is_given(context: DocumentContext, section: str) -> bool:
    return any(path[0] == section for path in context.project.values)
