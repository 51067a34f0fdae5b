"""The least solar reflectance at which a face stays below a temperature by both methods."""

from typing import NamedTuple

from specgen.computing.heat._balance_steps import add_face_by_trial
from specgen.computing.heat_balance import from_kelvin, to_kelvin
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import InputRow


class Target(NamedTuple):
    """What a face is to keep below the limit of the board: its mark, its line, and what is said of it."""

    tail: str  # of the symbols
    row: InputRow
    words: str
    none: str  # the note where no reflectance keeps it


def add_least_reflectance(working: WorkingBuilder, degree: str, tail: str, words: str) -> None:
    """Adds SR with a tail, the least reflectance at which neither method passes T with that tail."""
    bounds = []
    if working.known["f"]:  # without sun neither method asks for a reflectance
        bounds.append(f"SR_{tail}1")
        working.step(bounds[-1], "reflectance by the joint rule", f"1 - (T_{tail} - T_a) / (H * f)", "")
    working.step(f"K_{tail}", "this face, absolute", to_kelvin(f"T_{tail}", degree), "K")
    given_off = f"e * s * (K_{tail}^4 - K_a^4) + h * (K_{tail} - K_a)"
    working.step(f"Q_{tail}", "heat given off by this face", given_off, "W/m2")
    if working.known["I"]:
        bounds.append(f"SR_{tail}2")
        working.step(bounds[-1], "reflectance by heat balance", f"1 - Q_{tail} / (I * r)", "")
    # What the rounding of the machine leaves over a whole hundredth asks for no further one.
    hundredths = f"ceil(100 * max({', '.join([*bounds, '0'])}) - 0.000001)" if bounds else "0"
    working.step(f"n_{tail}", "hundredths, rounded up", hundredths, "")
    working.step(f"SR_{tail}", f"minimum reflectance {words}", f"n_{tail} / 100", "")
    _add_proof(working, degree, tail)


def _add_proof(working: WorkingBuilder, degree: str, tail: str) -> None:
    """Adds the face at the least reflectance, solved forward: it comes out at T with the tail, or below it."""
    working.step(f"G_{tail}", "sun taken up at this reflectance", f"(1 - SR_{tail}) * I * r", "W/m2")
    add_face_by_trial(working, f"J_{tail}", f"face where heat given off equals G_{tail}", f"G_{tail}")
    balance = from_kelvin(f"J_{tail}", degree)
    hottest = f"max(T_a + (1 - SR_{tail}) * H * f, {balance})"
    working.step(f"F_{tail}", "hottest face at this reflectance", hottest, degree)
