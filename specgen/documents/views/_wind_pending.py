"""What the wind check of an adhered wall waits for: the suction, and the load that its attachment may bear."""

from collections.abc import Iterator
from dataclasses import replace

from specgen.computing.local_wind import is_wind_by_engineer
from specgen.documents.calculations import CalculationValues, Waiting
from specgen.documents.context import DocumentContext
from specgen.documents.origins import follow
from specgen.model.field import Path

_PRESSURE, _STRIP = "wall-wind", "wind-corner-strip"
_CAPACITY = tuple(f"elevations.*.wall.attachment.{name}" for name in ("ultimate_strength", "safety_factor"))


def list_waiting(context: DocumentContext, calculation: CalculationValues) -> Iterator[Waiting]:
    """What a calculation waits for: of wind, what its check lacks beside the pressure, whether that is known or not."""
    provider = calculation.provider
    if provider.name == _STRIP and is_wind_by_engineer(context.project):
        return
    if provider.name == _PRESSURE:
        unchecked = ((one, tuple(_list_capacity(context, one))) for one in calculation.workings)
        yield from (Waiting(provider, one, paths) for one, paths in unchecked if paths)
    for waiting in calculation.waiting:
        if waiting.why or provider.group != "wind":
            yield waiting
            continue
        capacity = _list_capacity(context, waiting.member) if provider.name == _PRESSURE else ()
        paths = dict.fromkeys((*waiting.paths, *capacity))
        yield replace(waiting, paths=tuple(paths))


def tell_title(calculation: CalculationValues) -> str:
    """The title of a calculation; of the pressure, as that of the check that it is made for."""
    title = calculation.provider.title
    return f"{title} on the adhered wall" if calculation.provider.name == _PRESSURE else title


def _list_capacity(context: DocumentContext, elevation: Path) -> Iterator[Path]:
    """The tested load and the safety factor of the wall of an elevation, where they apply and are still to be given."""
    project = context.project
    for pattern in _CAPACITY:
        path = follow(project, pattern, elevation) if elevation else None
        if path is not None and project.get(path) is None and project.applies(path):
            yield path
