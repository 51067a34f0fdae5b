"""Pressure that air loses in a hose, with the band in which published charts lie."""

from specgen.computing.air import _atmosphere
from specgen.computing.air._hoses import (
    FORMULA,
    HIGH,
    LOW,
    MOST,
    NOTES,
    REACH,
    express_flow,
    express_loss,
    formula_rows,
    units,
)
from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.working import InputRow, Working
from specgen.quantities.format import format_decimal, format_unit
from specgen.quantities.quantity import Quantity


class HoseInputs(Inputs):
    """A hose and the free air through it; `inlet` is the gauge pressure."""

    flow: Quantity = given_input(
        "Q",
        "air through the hose, free air",
        "flow",
        about="free air through the hose",
        least=0,
        span=("0 scfm", "2000 scfm"),
    )
    length: Quantity = given_input("L", "length of the hose", "distance", least=0, span=("0 ft", "3000 ft"))
    bore: Quantity = given_input(
        "d", "bore of the hose", "length", about="inside diameter", above=0, span="hoses.*.bore"
    )
    inlet: Quantity = given_input(
        "p",
        "pressure at the inlet, gauge",
        "pressure",
        about="gauge pressure at the inlet, trigger pulled",
        above=0,
        span=("1 psi", "500 psi"),
    )


def hose_loss(inputs: HoseInputs) -> Working:
    """Loss of pressure in psi or kPa; source: `FORMULA`.

    Raises Refused where the loss takes more of the inlet than the formula bears.
    """
    unit = units(inputs.system)[0]
    sea_level = _atmosphere.SEA_LEVEL.number(unit)
    working = WorkingBuilder(
        (
            *inputs.rows(),
            InputRow("P_0", "pressure of the air at sea level", sea_level, unit),
            *formula_rows(unit),
            InputRow("b_l", "lower end of the band", LOW, ""),
            InputRow("b_h", "upper end of the band", HIGH, ""),
        )
    )
    working.step("P_1", "pressure at the inlet, absolute", "p + P_0", unit)
    working.step("q", "air through the hose", express_flow("Q", unit), "m³/s")
    working.step("dP", "loss in the hose", express_loss("q", "L", "d", "P_1", unit), unit)
    _refuse(working, unit)
    working.step("dP_l", "least loss of the band", "b_l * dP", unit)
    working.step("dP_h", "greatest loss of the band", "b_h * dP", unit)
    working.step("p_2", "pressure left by the greatest loss", "p - dP_h", unit)
    beside = ("dP_l", "dP_h", "p_2")
    return working.build("hose-loss", "dP", (FORMULA, REACH), NOTES, secondary_results=beside)


def _refuse(working: WorkingBuilder, unit: str) -> None:
    """Raises Refused where the formula, which takes the air as thick as at the inlet, holds no longer."""
    lost, inlet = working.known["dP"], working.known["p"]
    most = min(MOST * (inlet + working.known["P_0"]), inlet / HIGH)
    if lost > most:
        told = format_unit(unit)
        raise refuse(
            f"a loss of {format_decimal(lost, 3)} {told} from {format_decimal(inlet, 3)} {told} "
            "is more than the formula holds for",
            f"it holds to {format_decimal(most, 3)} {told}: take a larger bore, a shorter hose or less air",
        )


PROVIDER = provide(
    "Pressure lost in an air hose",
    HoseInputs,
    hose_loss,
    example="flow=12scfm length=12ft bore=1/4in inlet=40psi",
)
