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


def count_pails(working: WorkingBuilder, needed: str, volume: str) -> str:
    """Adds the whole pails of a coat, those of a mockup apart, as it is ordered first; the note that says how.

    `A` is what is coated, `A_m` the mockup in it, `p` the pail, and `volume` the unit of what is needed.
    """
    if "A_m" not in working.known:
        return count_containers(working, "N", "pails", needed, "p")
    working.step("P_m", "of that, mockup", f"{needed} * A_m / A", volume)
    mockup = working.step("N_m", "whole pails, mockup", "ceil(P_m / p - 1e-9)", "")
    work = working.step("N_w", "whole pails, work", f"ceil(({needed} - P_m) / p - 1e-9)", "")
    working.step("N", "whole pails", "N_m + N_w", "")
    apart = f"{mockup:.0f} for the mockup and {work:.0f} for the work"
    return f"Whole pails: {apart}, ordered apart, each rounded up."
