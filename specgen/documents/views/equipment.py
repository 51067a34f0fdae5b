"""The guns, hoses, compressor and tank of the job, as the firm gives them."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView

Row = tuple[str, list[Any]]


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each piece that sets how the coat is sprayed."""
    made = [*_guns(desk), *_compressor(desk), *_hoses(desk), *_tank(desk)]
    return TableView(("Piece", "As used on mockup and work"), tuple(made), (24, 76))


def _guns(desk: Desk) -> Iterator[Row]:
    for mark in desk.sight.project.members.get(("guns",), ()):
        shown = _of(desk, "guns", mark)
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


def _hoses(desk: Desk) -> Iterator[Row]:
    for mark in desk.sight.project.members.get(("hoses",), ()):
        shown = _of(desk, "hoses", mark)
        yield f"Hose {mark}", [shown("use"), ", ", shown("length"), " long, bore ", shown("bore")]


def _compressor(desk: Desk) -> Iterator[Row]:
    if _given(desk, "compressor"):
        shown = _of(desk, "compressor")
        yield "Compressor", [shown("air_flow"), " at ", shown("at_pressure"), ", filter ", shown("filter")]


def _tank(desk: Desk) -> Iterator[Row]:
    if _given(desk, "tank"):
        shown = _of(desk, "tank")
        yield "Pressure tank", [shown("volume"), "; regulators: ", shown("regulators")]


def _of(desk: Desk, *path: str) -> Callable[[str], Any]:
    return lambda name: desk.sight.shown((*path, name))


def _given(desk: Desk, section: str) -> bool:
    return any(path[0] == section for path in desk.sight.project.values)
