"""Pressure that air loses in a hose, with the band in which published charts lie."""

from specgen.computing.air import _atmosphere
from specgen.computing.air._hoses import FORMULA, HIGH, LOW, MOST, NOTES, REACH, constants, flow_by, loss_by, units
from specgen.computing.guards import refuse_negative, refuse_none_of
from specgen.model.problem import refuse
from specgen.model.working import Given, Sum, Working
from specgen.quantities.format import decimal, printed_unit
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider


def hose_loss(flow: Quantity, length: Quantity, bore: Quantity, inlet: Quantity, system: str) -> Working:
    """Loss of pressure in psi or kPa; `inlet` is the gauge pressure, `flow` free air. Source: `FORMULA`.

    Raises Refused where the loss takes more of the inlet than the formula bears.
    """
    refuse_none_of(bore=bore, inlet=inlet)
    refuse_negative(flow=flow, length=length)
    unit = units(system)[0]
    made = Sum(_given(flow, length, bore, inlet, system))
    made.step("P_1", "pressure at the inlet, absolute", "p + P_0", unit)
    made.step("q", "air through the hose", flow_by("Q", unit), "m³/s")
    found = made.step("dP", "loss in the hose", loss_by("q", "L", "d", "P_1", unit), unit)
    _refuse(made, unit)
    made.step("dP_l", "least loss of the band", "b_l * dP", unit)
    made.step("dP_h", "greatest loss of the band", "b_h * dP", unit)
    made.step("p_2", "pressure left by the greatest loss", "p - dP_h", unit)
    beside = ("dP_l", "dP_h", "p_2")
    return Working("hose-loss", made.given, tuple(made.steps), found, unit, (FORMULA, REACH), NOTES, "", beside)


def _refuse(made: Sum, unit: str) -> None:
    """Raises Refused where the formula, which takes the air as thick as at the inlet, holds no longer."""
    lost, inlet = made.known["dP"], made.known["p"]
    most = min(MOST * (inlet + made.known["P_0"]), inlet / HIGH)
    if lost > most:
        shown = printed_unit(unit)
        raise refuse(
            f"a loss of {decimal(lost, 3)} {shown} from {decimal(inlet, 3)} {shown} is more than the formula holds for",
            f"it holds to {decimal(most, 3)} {shown}: take a larger bore, a shorter hose or less air",
        )


def _given(flow: Quantity, length: Quantity, bore: Quantity, inlet: Quantity, system: str) -> tuple[Given, ...]:
    unit, air, far, wide = units(system)
    return (
        Given("Q", "air through the hose, free air", flow.number(air), air),
        Given("L", "length of the hose", length.number(far), far),
        Given("d", "bore of the hose", bore.number(wide), wide),
        Given("p", "pressure at the inlet, gauge", inlet.number(unit), unit),
        Given("P_0", "pressure of the air at sea level", _atmosphere.SEA_LEVEL.number(unit), unit),
        *constants(unit),
        Given("b_l", "lower end of the band", LOW, ""),
        Given("b_h", "upper end of the band", HIGH, ""),
    )


PROVIDER = Provider(
    "hose-loss",
    "Pressure lost in an air hose",
    (),
    None,
    direct=hose_loss,
    units=("psi", "kPa"),
    keys=(
        Key("flow", "flow", "free air through the hose"),
        Key("length", "length", "length of the hose"),
        Key("bore", "length", "inside diameter"),
        Key("inlet", "pressure", "gauge pressure at the inlet, trigger pulled"),
    ),
)
