"""Least distance of scaffolds and lifts from a power line, 29 CFR 1926.451(f)(6)."""

from specgen.computing.inputs import Inputs, given_input, limit_input, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.capacity import Check, at_most
from specgen.model.source import InForce
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity

UTILITY = (
    "Ask the utility for voltage and insulation. Work comes closer only after the utility, told beforehand, has cut "
    "off, moved, or covered the line."
)


class PowerLineInputs(Inputs):
    """A power line near the work."""

    voltage: Quantity = given_input(
        "U",
        "voltage of the line",
        "voltage",
        "site.power_line_voltage",
        "voltage of the line, as the utility says",
        above=0,
    )
    insulated: bool = option_input(
        "yes where the line is insulated", dimension="yes_no", field="site.power_line_insulated"
    )
    usual: InForce = limit_input("access.power_lines")
    near: InForce = limit_input("access.power_lines_low_voltage_distance")
    low: InForce = limit_input("access.power_lines_low_voltage")
    high: InForce = limit_input("access.power_lines_high_voltage")
    more_per_kv: InForce = limit_input("access.power_lines_per_kv")


def power_line_distance(inputs: PowerLineInputs) -> Working:
    """Least distance from the line, in ft or m; source: row `osha_power_lines`."""
    far, near, parts = ("ft", "in", 12) if inputs.system == "ip" else ("m", "mm", 1000)
    working = WorkingBuilder(inputs.rows("voltage"))
    if inputs.insulated and inputs.voltage < inputs.low.value:
        working.add_inputs(_row("D_0", "distance of an insulated line of low voltage", inputs.near, far))
        working.step("D", "least distance", "D_0", far)
        case = "insulated, low voltage"
    else:
        working.add_inputs(_row("D_0", "distance of a line up to U_0", inputs.usual, far))
        working.add_inputs(_row("U_0", "voltage from which the distance grows", inputs.high, "kV"))
        working.add_inputs(_row("d", "growth with each kV", inputs.more_per_kv, near))
        working.step("D", "least distance", f"D_0 + d / {parts} * max(U - U_0, 0)", far)
        case = "high voltage" if inputs.voltage > inputs.high.value else ""
    return working.build("power-line-distance", "D", (inputs.limit_source("usual"),), (UTILITY,), case)


def _row(symbol: str, title: str, limit: InForce, unit: str) -> InputRow:
    return InputRow(symbol, title, limit.value.number(unit), unit, source=limit.source)


CHECKS = (
    Check(
        "required distance",
        "distance given",
        ("ACC-06g", "ACC-06h"),
        lambda project, ask: at_most(ask("power-line-distance").quantity, project.site.power_line_distance),
    ),
)

PROVIDER = provide(
    "Minimum distance from power lines",
    PowerLineInputs,
    power_line_distance,
    checks=CHECKS,
    example="voltage=138kV insulated=no",
)
