"""An elevation and the lines on it: cut into panels, joints told run by run, lines proposed where none are given."""

from specgen import computing
from specgen.resolving.provider import Provider

# What a resolver finds beside the calculations; no sum of its own, so that `calc` lists none of them.
NAMES = ("layout", "layouts", "joint-run", "moving-run", "widest-panel", "highest-panel")


def find(name: str) -> Provider:
    """The provider of a layout, of what is measured on it, or of a calculation. Raises UnknownCalculation."""
    name = name.replace("_", "-")
    if name not in NAMES:
        return computing.find(name)
    # A project without a question about its layout loads nothing of it.
    from specgen.laying_out.providers import PROVIDERS

    return PROVIDERS[name]


def names() -> tuple[str, ...]:
    """The names of all that a rule can ask for."""
    return (*computing.names(), *NAMES)
