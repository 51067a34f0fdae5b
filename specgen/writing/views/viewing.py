"""What is written down of the viewing itself."""

from ...vocabulary.block import Blank
from ..compose import Composer
from ..desk import Desk, TableView


def rows(desk: Desk, composer: Composer) -> TableView:
    """Remarks, sun and time, as ruled cells."""
    lines = ("Remarks", "Sky and sun while viewing", "Time of viewing", "Distance and angle of view")
    made = tuple((line, Blank(line)) for line in lines)
    return TableView(("Viewing", "Written down"), made, (30, 70))
