"""Whole pails and containers of a volume: the last one counts even if it is hardly opened."""

from specgen.model.working import Sum
from specgen.quantities.format import decimal


def whole(made: Sum, symbol: str, kind: str, needed: str, size: str) -> str:
    """Adds the line of how many containers hold the volume `needed`; the note that says how it was rounded."""
    # A volume that fills its containers but for the last bit of a float needs no further one.
    count = made.step(symbol, f"whole {kind}", f"ceil({needed} / {size} - 1e-9)", "")
    exact = made.known[needed] / made.known[size]
    if abs(exact - count) < 1e-6:
        return f"Whole {kind}: {decimal(count, 12)}, none left over."
    return f"Whole {kind}: {decimal(count, 12)}, rounded up from {decimal(exact, 4)}."
