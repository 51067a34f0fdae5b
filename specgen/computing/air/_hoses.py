"""Loss of pressure of air in a hose: one published formula, its band and how far it holds."""

from specgen.model.source import Kind, Source
from specgen.model.working import UNIT_CHANGE, InputRow
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

FORMULA = find_source("air_lines_memory").quote(
    "loss in kPa = 1.6e12 q^1.85 L / (d^5 P), q in m³/s of free air, L in m, d in mm, P in kPa absolute"
)
REACH = Source(
    Kind.MEMORY, "flow of fluids through pipe: with the pressure at the inlet a loss above 40 % cannot be told"
)
FACTOR, POWER = 1.6e12, 1.85
# Two published hose figures lie at 0.54 and 1.03 of the formula; the band takes in both.
LOW, HIGH = 0.5, 1.1
MOST = 0.4  # of the absolute pressure at the inlet; from memory
KPA_PER_PSI = Quantity.of(1, "psi").number("kPa")
NOTES = (
    "Published hose charts differ by half: verify pressure at the gun, trigger pulled.",
    "For {30 cfm|14 L/s} through {50 ft|15 m} of {3/4 in|19 mm} hose at {90 psi|620 kPa} a published chart reads "
    "{0.4 psi|2.8 kPa}; this formula gives 1.85 times as much.",
    "Losses in couplings and regulators are not included.",
)


def formula_rows(unit: str) -> tuple[InputRow, ...]:
    """The constants of the formula, for pressures in `unit`, psi or kPa."""
    per = (InputRow("f", "one psi", KPA_PER_PSI, "kPa/psi", UNIT_CHANGE),) if unit == "psi" else ()
    constant = InputRow("C", "formula constant", FACTOR, "", source=FORMULA)
    return (constant, InputRow("m", "flow exponent", POWER, "", source=FORMULA), *per)


def express_flow(flow: str, unit: str) -> str:
    """The expression of a flow in m³/s, of one in scfm or L/s."""
    return f"{flow} * 0.3048^3 / 60" if unit == "psi" else f"{flow} / 1000"


def express_loss(flow: str, length: str, bore: str, inlet: str, unit: str) -> str:
    """The expression of the loss in `unit`: m³/s, ft and in or m and mm, inlet absolute in `unit`."""
    if unit == "kPa":
        return f"C * {flow}^m * {length} / ({bore}^5 * {inlet})"
    return f"C * {flow}^m * {length} * 0.3048 / (({bore} * 25.4)^5 * {inlet} * f) / f"


def units(system: str) -> tuple[str, str, str, str]:
    """The units of pressure, flow, length and bore of a system."""
    return ("psi", "scfm", "ft", "in") if system == "ip" else ("kPa", "L/s", "m", "mm")
