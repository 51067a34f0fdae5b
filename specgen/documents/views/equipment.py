"""The guns, hoses, compressor and tank of the job, from the firm file."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import count_things

Row = tuple[str, list[Any]]
_AGITATED = {
    "by_hand": "; swirled by hand",
    "agitator": "; slow mechanical agitator",
    "recirculating": "; recirculating",
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each piece of spray equipment."""
    lines = [*_guns(context), *_compressor(context), *_hoses(context), *_tank(context)]
    return TableView(("Spray equipment", "Description"), tuple(lines), (20, 80))


def _guns(context: DocumentContext) -> Iterator[Row]:
    for mark in context.project.members.get(("guns",), ()):
        display = _display_of(context, "guns", mark)
        parts = [display("kind"), "; fluid nozzle ", display("fluid_nozzle"), ", air nozzle ", display("air_nozzle")]
        if display("inlet_pressure"):
            parts += [", minimum ", display("inlet_pressure"), " at the inlet, trigger pulled"]
        parts += ["; ", *count_things(display("count"), "gun", "guns"), " at work"]
        if display("spares"):
            parts += [", ", *count_things(display("spares"), "spare", "spares")]
        yield f"Gun {mark}", parts


def _hoses(context: DocumentContext) -> Iterator[Row]:
    for mark in context.project.members.get(("hoses",), ()):
        display = _display_of(context, "hoses", mark)
        clear = ", transparent" if display("clear") == "yes" else ""
        yield (
            f"Hose {mark}",
            [display("use"), f" hose{clear}; ", display("length"), " long, ", display("bore"), " bore"],
        )


def _compressor(context: DocumentContext) -> Iterator[Row]:
    if _is_given(context, "compressor"):
        display = _display_of(context, "compressor")
        parts = [display("air_flow"), " at ", display("at_pressure")]
        parts += ["; dryer"] if display("dryer") == "yes" else []
        parts += ["; filter ", display("filter")]
        yield "Compressor", [*parts, "; receiver ", display("receiver")] if display("receiver") else parts


def _tank(context: DocumentContext) -> Iterator[Row]:
    if _is_given(context, "tank"):
        display = _display_of(context, "tank")
        parts = [display("volume"), "; ", *count_things(display("regulators"), "regulator", "regulators")]
        parts += ["; relief valve"] if display("relief_valve") == "yes" else []
        parts += ["; lined"] if display("lined") == "yes" else []
        agitation = display("agitation")
        parts += ["; agitation: ", agitation] if getattr(agitation, "open", False) else []
        yield "Pressure tank", [*parts, _AGITATED.get(str(context.project.get(("tank", "agitation"))), "")]
    else:
        regulators = context.limit("tank.regulators")
        yield "Pressure tank", ["tight lid, relief valve, and ", *count_things(regulators, "regulator", "regulators")]


def _display_of(context: DocumentContext, *path: str) -> Callable[[str], Any]:
    return lambda name: context.display((*path, name))


def _is_given(context: DocumentContext, section: str) -> bool:
    return any(path[0] == section for path in context.project.values)
