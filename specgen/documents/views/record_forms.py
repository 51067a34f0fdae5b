"""The forms of the site record: what a sheet of each is for, when it is filled in, and by whom."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.old_surfaces import list_pulled

_SPRAYED = "the primer or the gloss, one area, one day"
_AREA = "one area, all its steps"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A line for each form, in the order in which they print."""
    apart = context.limit("weather.readings")
    pulls = (
        "D12f Pull tests and moisture",
        "one wall, one day",
        "after repair, before boards",
        "testing agency; applicator",
    )
    lines: tuple[tuple[Any, ...], ...] = (
        *((pulls,) if list_pulled(context) else ()),
        ("D12a Spray record", _SPRAYED, "before, during, and after each coat", "applicator"),
        ("D12b Viscosity and water", _SPRAYED, "at each pail", "applicator"),
        ("D12c Weather", "one day", ["before work and each coat, then maximum ", apart, " apart"], "applicator"),
        ("D12d Drying release", _AREA, "when a step has dried", "applicator; who releases the step signs"),
        ("D12e Readings in place", _AREA, "at each test", "who makes the test"),
    )
    return TableView(("Form", "One sheet for", "Filled in", "By"), lines, (22, 28, 26, 24))
