"""Whole pails and containers of a volume: the last one counts even if it is hardly opened."""

from specgen.computing.working_builder import WorkingBuilder
from specgen.quantities.format import format_decimal


def count_containers(working: WorkingBuilder, symbol: str, kind: str, needed: str, size: str) -> str:
    """Adds the line of how many containers hold the volume `needed`; the note that says how it was rounded."""
    # A volume that fills its containers but for the last bit of a float needs no further one.
    count = working.step(symbol, f"whole {kind}", f"ceil({needed} / {size} - 1e-9)", "")
    exact = working.known[needed] / working.known[size]
    if abs(exact - count) < 1e-6:
        return f"Whole {kind}: {format_decimal(count, 12)}, none left over."
    return f"Whole {kind}: {format_decimal(count, 12)}, rounded up from {format_decimal(exact, 4)}."
