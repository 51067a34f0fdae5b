"""When what can be done: drying by the clock, activities and their chain."""

from specgen import laying_out
from specgen.resolving.provider import Provider

# What a resolver finds beside layouts and calculations; no sum of its own, so that `calc` lists none of them.
NAMES = ("schedule",)


def find(name: str) -> Provider:
    """The provider of a schedule, of a layout, or of a calculation. Raises UnknownCalculation."""
    name = name.replace("_", "-")
    if name not in NAMES:
        return laying_out.find(name)
    # A project without a question about its schedule loads nothing of it.
    from specgen.scheduling.providers import PROVIDERS

    return PROVIDERS[name]


def names() -> tuple[str, ...]:
    """The names of all that a rule can ask for."""
    return (*laying_out.names(), *NAMES)
