"""The steps of the heat balance of a face."""

from specgen.computing.heat_balance import balance_face, from_kelvin, to_kelvin
from specgen.computing.working_builder import WorkingBuilder


def add_face(working: WorkingBuilder, degree: str) -> None:
    """Adds the steps to T_2, the face by heat balance in °F or °C, and K_a, G, K_f on the way to it."""
    working.step("K_a", "hot air temperature, absolute", to_kelvin("T_a", degree), "K")
    working.step("G", "absorbed sun", "(1 - SR) * I * r", "W/m2")
    add_face_by_trial(working, "K_f", "face temperature, heat balance, absolute (by trial)", "G")
    working.step("T_2", "face temperature, heat balance", from_kelvin("K_f", degree), degree)


def add_face_by_trial(working: WorkingBuilder, symbol: str, name: str, gain: str) -> None:
    """Adds the face, in kelvin, that gives off the heat named `gain`.

    It stands on both sides of its line: it was found by trial, and the line shows that the balance closes at it.
    """
    known = working.known
    known[symbol] = balance_face(known[gain], known["e"], known["K_a"], known["h"])
    working.step(symbol, name, f"K_a + ({gain} - e * s * ({symbol}^4 - K_a^4)) / h", "K")
