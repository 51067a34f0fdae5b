"""The guns, hoses, compressor and tank of the job, as the firm gives them."""

from typing import Any

from ..compose import Composer
from ..desk import Desk, TableView


def rows(desk: Desk, composer: Composer) -> TableView:
    """One row for each piece that sets how the coat is sprayed."""
    sight, project = desk.sight, desk.sight.project
    made: list[tuple[Any, ...]] = []

    def shown(*path: str) -> Any:
        return sight.shown(path)

    for mark in project.members.get(("guns",), ()):
        gun = ("guns", mark)
        made.append(
            (
                f"Gun {mark}",
                [
                    shown(*gun, "kind"),
                    ", fluid nozzle ",
                    shown(*gun, "fluid_nozzle"),
                    ", air nozzle ",
                    shown(*gun, "air_nozzle"),
                    "; guns at once: ",
                    shown(*gun, "count"),
                ],
            )
        )
    if any(path[0] == "compressor" for path in project.values):
        made.append(
            (
                "Compressor",
                [
                    shown("compressor", "air_flow"),
                    " at ",
                    shown("compressor", "at_pressure"),
                    ", filter ",
                    shown("compressor", "filter"),
                ],
            )
        )
    for mark in project.members.get(("hoses",), ()):
        hose = ("hoses", mark)
        made.append(
            (f"Hose {mark}", [shown(*hose, "use"), ", ", shown(*hose, "length"), " long, bore ", shown(*hose, "bore")])
        )
    if any(path[0] == "tank" for path in project.values):
        made.append(("Pressure tank", [shown("tank", "volume"), "; regulators: ", shown("tank", "regulators")]))
    return TableView(("Piece", "As used on mockup and work"), tuple(made), (24, 76))
