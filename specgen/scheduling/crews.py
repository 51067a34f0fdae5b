"""Which crews carry out a step, and what they get done in an hour."""

from fractions import Fraction

from specgen.computing.calendars import to_stretch
from specgen.model.absence import Absent
from specgen.model.project import asked_once
from specgen.model.typed_views import Description
from specgen.quantities.quantity import Quantity
from specgen.scheduling.tasks import Offer

_SECONDS_OF_HOUR = 3600


@asked_once
def find_rates(project: Description, step: str) -> dict[str, Quantity]:
    """The output of each crew at a step by its mark; those that name the step alone, where any does.

    Empty where no crew has one. Raises Absent without crews.
    """
    every = list(project.crews)
    if not every:
        raise Absent(("crews",))
    named = [crew for crew in every if step in (crew.get("steps") or ())]
    rates = {crew.mark: crew.get(f"rates.{step}") for crew in named or every}
    return {mark: rate for mark, rate in rates.items() if rate is not None}


def require_rates(project: Description, step: str) -> dict[str, Quantity]:
    """The same; raises Absent where no crew has an output at the step."""
    rates = find_rates(project, step)
    if not rates:
        named = [crew for crew in project.crews if step in (crew.get("steps") or ())]
        crew = (named or list(project.crews))[0]
        raise Absent((*crew.path, "rates", step))
    return rates


def offer_work(rates: dict[str, Quantity], size: Quantity) -> tuple[Offer, ...]:
    """The time that an area, or a length of joints, takes each crew."""
    return tuple(Offer(crew, to_stretch(hours_of(size, rate))) for crew, rate in rates.items())


def hours_of(size: Quantity, rate: Quantity) -> Fraction:
    """The hours that an area takes at an output by area, or a length at one by length."""
    return Fraction(size.amount) / Fraction(rate.amount) / _SECONDS_OF_HOUR
