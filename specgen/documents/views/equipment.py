"""The guns, hoses, compressor and tank of the job, from the firm file."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import count_things
from specgen.model.evaluation import evaluate

Row = tuple[str, list[Any]]
_AGITATED = {
    "by_hand": "; swirled by hand",
    "agitator": "; slow mechanical agitator",
    "recirculating": "; recirculating",
}


_FLAKE = "colors.*.metallic is not given or colors.*.metallic = yes"
_HOSES = {"air_gun": "air hose to the gun", "air_supply": "air supply hose", "fluid": "fluid hose"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each piece of spray equipment."""
    lines = [*_guns(context), *_second_gun(context), *_compressor(context), *_hoses(context), *_tank(context)]
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


def _second_gun(context: DocumentContext) -> Iterator[Row]:
    """The second gun for a flake finish, where the firm names no spare."""
    guns = context.project.members.get(("guns",), ())
    if not any(context.project.get(("guns", gun, "spares")) for gun in guns) and evaluate(_FLAKE, context.project):
        yield "Second gun", ["required, confirm: same nozzles, accepted on the mockup"]


def _hoses(context: DocumentContext) -> Iterator[Row]:
    hoses = context.project.members.get(("hoses",), ())
    for mark in hoses:
        display = _display_of(context, "hoses", mark)
        use, clear = display("use"), ", transparent" if display("clear") == "yes" else ""
        yield (
            f"Hose {mark}",
            [_HOSES.get(str(use.raw), use), f"{clear}; ", display("length"), " long, ", display("bore"), " bore"],
        )
    if all(context.project.get(("hoses", mark, "use")) != "air_supply" for mark in hoses):
        yield (
            "Air supply hose",
            [
                "required, confirm: compressor to tank; safety device where the bore is over ",
                context.limit("hose.safety_bore"),
            ],
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
        parts += ["; rated ", display("rated_pressure")] if display("rated_pressure") else []
        parts += ["; lined"] if display("lined") == "yes" else []
        agitation = display("agitation")
        parts += ["; agitation: ", agitation] if getattr(agitation, "open", False) else []
        yield "Pressure tank", [*parts, _AGITATED.get(str(context.project.get(("tank", "agitation"))), "")]
    else:
        regulators = context.limit("tank.regulators")
        parts = ["required, confirm: tight lid; relief valve; ", *count_things(regulators, "regulator", "regulators")]
        flake = ["; slow agitator, or swirled by hand, maximum ", context.limit("spray.stir"), " apart"]
        yield "Pressure tank", [*parts, *(flake if evaluate(_FLAKE, context.project) else [])]


def _display_of(context: DocumentContext, *path: str) -> Callable[[str], Any]:
    return lambda name: context.display((*path, name))


def _is_given(context: DocumentContext, section: str) -> bool:
    return any(path[0] == section for path in context.project.values)
