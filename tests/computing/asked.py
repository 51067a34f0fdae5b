"""What the tests of calculations share: a sum by its keys, and a line of it."""

from specgen import computing
from specgen.computing.arguments import direct
from specgen.model.working import Working


def sum_of(name: str, **keys: str) -> Working:
    """The working of a calculation as the command line asks for it."""
    return direct(computing.find(name), keys)


def line(working: Working, symbol: str) -> float:
    """The value of one line of a working."""
    return next(float(step.value) for step in working.steps if step.symbol == symbol)
