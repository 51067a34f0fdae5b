"""The coats over the base coat: how many, how thick, how thinned, how long they dry."""

from typing import Any

from ..compose import Composer
from ..desk import Desk, TableView


def rows(desk: Desk, composer: Composer) -> TableView:
    """Smoothing, primer and gloss, one row each."""
    sight = desk.sight

    def shown(path: str) -> Any:
        return sight.shown(tuple(path.split(".")))

    made: list[tuple[Any, ...]] = [
        (
            "Smoothing coat",
            shown("smoothing.coats"),
            [shown("smoothing.total_thickness"), " in all, at most"],
            "not thinned beyond its instructions",
            shown("smoothing.dry_hours"),
        )
    ]
    for coat in ("primer", "gloss"):
        cup = [
            shown(f"{coat}.cup_least"),
            " to ",
            shown(f"{coat}.cup_most"),
            " in cup ",
            shown(f"{coat}.cup"),
            "; water ",
            shown(f"{coat}.max_water"),
            " at most",
        ]
        tinted = coat == "primer" and sight.project.get(("primer", "tinted"))
        name = "Primer, tinted" if tinted else coat.capitalize()
        made.append(
            (
                name,
                shown(f"{coat}.coats"),
                [shown(f"{coat}.dry_film"), " dry, each coat"],
                cup,
                shown(f"{coat}.dry_hours"),
            )
        )
    return TableView(("Coat", "Coats", "Film", "Cup time and water", "Drying"), tuple(made), (17, 9, 24, 32, 18))
