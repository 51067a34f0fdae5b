"""Questions of several rules about the months in which spraying goes on."""

from datetime import date
from functools import partial

from specgen.model.absence import all_known, read_all
from specgen.model.dates import MONTHS
from specgen.model.project import asked_once
from specgen.model.typed_views import Description, Month, Shading
from specgen.quantities.quantity import Quantity


def is_in_season(month: Month, project: Description) -> bool:
    """Whether spraying goes on in a month."""
    return lies_within(month, *read_all(lambda: project.schedule.spray_start, lambda: project.schedule.spray_end))


def lies_within(month: Month, start: date, end: date) -> bool:
    """Whether a month has days from one date to another, over the turn of a year too."""
    months = (end.year - start.year) * 12 + end.month - start.month
    return (MONTHS.index(month.month) + 1 - start.month) % 12 <= months


def night_and_least(month: Month, project: Description) -> tuple[Quantity, Quantity]:
    """The mean of the coldest hours of a month, and the temperature that both coats need."""
    night, primer, gloss = read_all(
        lambda: month.mean_min,
        lambda: project.primer.least_dry_temperature,
        lambda: project.gloss.least_dry_temperature,
    )
    return night, max(primer, gloss, key=lambda least: least.amount)


@asked_once
def in_heated_tents(project: Description) -> bool:
    """Whether every face stands in a heated tent."""
    shadings = list(project.shade)
    return bool(shadings) and all_known(*(partial(_is_heated, shading) for shading in shadings))


def _is_heated(shading: Shading) -> bool:
    return all_known(lambda: shading.kind == "tent", lambda: shading.heated)


@asked_once
def is_all_covered(project: Description) -> bool:
    """Whether cloth or a tent keeps the sun off every face."""
    shadings = list(project.shade)
    return bool(shadings) and all_known(*(partial(_is_cover, shading) for shading in shadings))


def _is_cover(shading: Shading) -> bool:
    return shading.kind in ("shade_cloth", "tent")
