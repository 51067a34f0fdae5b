"""Damage by how deep it goes, and what is done about each class."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView

_SPOT = "as on the accepted mockup"
_BREAK = "recoat the full panel to the next corner or joint"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each class, from dirt to damage of the wall behind."""
    spot = context.project.get(("finish", "repair_method")) == "spot"
    recoat = f"repair {_SPOT}; a spot repair shows" if spot else _BREAK
    keys = ("gloss", "instructions")
    given = context.project.get(keys)
    instructions = given.mark if given else "the finish manufacturer's written instructions"
    abrade = f"abrade per {instructions}"
    lines = (
        (
            "1",
            "Dirt, stain, algae; film whole",
            "Soft wash. Ask the finish manufacturer about what stays.",
            "owner",
        ),
        (
            "2",
            "Scratch or scuff in the gloss; primer and base coat whole",
            f"Wash, dry, and {abrade}; {recoat}.",
            "applicator",
        ),
        (
            "3",
            "Dent, crack, or hole; mesh or board broken",
            "Keep water out at once. Cut back to sound material; patch board, base coat, and mesh per the EIFS"
            f" manufacturer's written instructions; smooth, prime, and {recoat}.",
            "applicator",
        ),
        (
            "4",
            "Loose or hollow board, water behind the face, movement, fire, or impact of a vehicle",
            "Close the area below. Have a licensed design professional find the cause before any repair.",
            "owner",
        ),
    )
    return TableView(("Class", "Damage", "Measure", "By"), lines, (7, 33, 46, 14))
