"""The guns, hoses, compressor and tank of the job, as the firm gives them."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView

Row = tuple[str, list[Any]]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each piece that sets how the coat is sprayed."""
    made = [*_guns(context), *_compressor(context), *_hoses(context), *_tank(context)]
    return TableView(("Piece", "As used on mockup and work"), tuple(made), (24, 76))


def _guns(context: DocumentContext) -> Iterator[Row]:
    for mark in context.project.members.get(("guns",), ()):
        shown = _of(context, "guns", mark)
        yield (
            f"Gun {mark}",
            [
                shown("kind"),
                ", fluid nozzle ",
                shown("fluid_nozzle"),
                ", air nozzle ",
                shown("air_nozzle"),
                "; guns at once: ",
                shown("count"),
            ],
        )


def _hoses(context: DocumentContext) -> Iterator[Row]:
    for mark in context.project.members.get(("hoses",), ()):
        shown = _of(context, "hoses", mark)
        yield f"Hose {mark}", [shown("use"), ", ", shown("length"), " long, bore ", shown("bore")]


def _compressor(context: DocumentContext) -> Iterator[Row]:
    if _given(context, "compressor"):
        shown = _of(context, "compressor")
        yield "Compressor", [shown("air_flow"), " at ", shown("at_pressure"), ", filter ", shown("filter")]


def _tank(context: DocumentContext) -> Iterator[Row]:
    if _given(context, "tank"):
        shown = _of(context, "tank")
        yield "Pressure tank", [shown("volume"), "; regulators: ", shown("regulators")]


def _of(context: DocumentContext, *path: str) -> Callable[[str], Any]:
    return lambda name: context.display((*path, name))


def _given(context: DocumentContext, section: str) -> bool:
    return any(path[0] == section for path in context.project.values)
