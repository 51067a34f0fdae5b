"""Air that a compressor gives at the altitude of the site, told in a stated standard state."""

from fractions import Fraction

from specgen.computing.air import _atmosphere
from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.source import Kind, Source
from specgen.model.working import UNIT_CHANGE, InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

FREE_AIR = Source(
    Kind.COMPUTED,
    "gas law: standard flow is actual flow by pressure less vapor, and by absolute temperature, over those of the "
    "standard state",
)
VAPOR = find_source("iso_13788").quote("saturation pressure of water vapor")
# Standard states differ by more than 3 %, so the one used is always printed: pressure in psia, temperature in °F.
BASES = {
    "sea_level_60f": ("14.696", 60, "{14.696 psia|101.33 kPa} and {60 °F|15.6 °C}"),
    "sea_level_68f": ("14.696", 68, "{14.696 psia|101.33 kPa} and {68 °F|20 °C}"),
    "dry_68f": ("14.5", 68, "{14.5 psia|100 kPa} and {68 °F|20 °C}, dry"),
}
FREEZING, AT_FREEZING = Quantity.of(0, "C"), Quantity.of("0.6105", "kPa")
COLDEST, HOTTEST = Quantity.of(-40, "F"), Quantity.of(140, "F")


class SupplyInputs(Inputs):
    """A compressor and the air at its intake, which is that of the standard state without a temperature.

    A rating in standard air is one at sea level: the same volume is drawn in at the site, and it is thinner there.
    `derate` is what an engine loses with altitude; None for an electric motor.
    """

    cfm: Quantity = given_input(
        "Q",
        "rated air flow",
        "flow",
        "compressor.air_flow",
        "air the compressor draws in, as rated",
        units=("cfm", "L/s"),
        bare="cfm",
        least=0,
    )
    altitude: Quantity = _atmosphere.altitude_input("altitude of the site")
    temperature: Quantity | None = given_input(
        "T",
        "temperature at the intake",
        "temperature",
        default=None,
        about="temperature of the air at the intake",
        within=(COLDEST, HOTTEST),
    )
    rh: Fraction | None = given_input(
        "",
        "",
        "percent",
        also=("humidity", "relative_humidity"),
        default=None,
        about="humidity of the air at the intake, in percent",
        within=(0, 100),
    )
    basis: str = option_input("standard state the air is told in", tuple(BASES), default="sea_level_68f")
    derate: Quantity | None = given_input(
        "D",
        "engine altitude derating",
        "derate",
        "compressor.engine_derate",
        "loss of an engine with altitude, such as 3 %/1000 ft",
        default=None,
        least=0,
    )


def air_supply(inputs: SupplyInputs) -> Working:
    """Air at the site in the standard state, in scfm or L/s. Raises Refused."""
    _refuse(inputs)
    flow, force = ("scfm", "psi") if inputs.system == "ip" else ("L/s", "kPa")
    working = WorkingBuilder(_rows(inputs, force))
    _atmosphere.add_air_pressure(working, force)
    factors = ["Q", "P_a / P_s"]
    if inputs.temperature is not None:
        factors[1:] = _add_vapor(working, inputs, force)
    if inputs.derate is not None:
        working.step("k", "engine power factor", "min(1 - D / 100 * z / z_d, 1)", "")
        factors.append("k")
    working.step("Q_s", "site air flow, standard air", " * ".join(factors), flow)
    sources = (FREE_AIR, _atmosphere.SOURCE, *((VAPOR,) if inputs.rh else ()))
    return working.build("air-supply", "Q_s", sources, _notes(inputs))


def _refuse(inputs: SupplyInputs) -> None:
    if inputs.rh is not None and inputs.temperature is None:
        raise refuse("rh is given without temperature", "vapor counts by temperature and humidity together")
    if inputs.derate is not None and float(inputs.derate.to("%/1000 ft") * inputs.altitude.to("ft")) >= 100_000:
        raise refuse("the engine has no power left at this altitude", "look at derate, in % for each 1000 ft or 300 m")


def _rows(inputs: SupplyInputs, force: str) -> tuple[InputRow, ...]:
    ip = inputs.system == "ip"
    standard = Quantity.of(BASES[inputs.basis][0], "psi").number(force)
    told_for = InputRow("z_d", "derating interval", *((1000.0, "ft") if ip else (300.0, "m")), UNIT_CHANGE)
    return (
        *inputs.rows("cfm", "altitude"),
        *_atmosphere.standard_rows(inputs.system),
        InputRow("P_s", "standard pressure, absolute", standard, force, source=FREE_AIR),
        *inputs.rows("temperature"),
        *(_intake_rows(inputs, force) if inputs.temperature is not None else ()),
        *((inputs.row("derate"), told_for) if inputs.derate is not None else ()),
    )


def _intake_rows(inputs: SupplyInputs, force: str) -> tuple[InputRow, ...]:
    """The standard temperature, in °F and °R or °C and K, and the humidity as a share."""
    ip = inputs.system == "ip"
    degree = "F" if ip else "C"
    standard = Quantity.of(BASES[inputs.basis][1], "F").number(degree)
    return (
        InputRow("T_s", "temperature of the standard state", standard, degree),
        InputRow("T_0", "zero of the scale above absolute zero", 459.67 if ip else 273.15, degree),
        InputRow("P_t", "pressure of vapor at freezing", AT_FREEZING.number(force), force),
        InputRow("phi", "share of saturation at the intake", float(inputs.rh or 0) / 100, ""),
    )


def _add_vapor(working: WorkingBuilder, inputs: SupplyInputs, force: str) -> list[str]:
    """The factors of pressure and temperature where the air at the intake is known."""
    assert inputs.temperature is not None
    celsius = "T"
    if inputs.system == "ip":
        celsius = "T_c"
        working.step(celsius, "temperature at the intake", "(T - 32) / 1.8", "C")
    above = inputs.temperature >= FREEZING
    curve = f"17.269 * {celsius} / (237.3 + {celsius})" if above else f"21.875 * {celsius} / (265.5 + {celsius})"
    working.step("P_v", "pressure of the vapor in the air", f"phi * P_t * exp({curve})", force)
    return ["(P_a - P_v) / P_s", "(T_s + T_0) / (T + T_0)"]


def _notes(inputs: SupplyInputs) -> tuple[str, ...]:
    told = [f"Standard state: {BASES[inputs.basis][2]}. Compare only values in the same standard state."]
    if inputs.temperature is None:
        told.append("Intake temperature and humidity are not considered; hot, humid air reduces output.")
    elif inputs.rh is None:
        told.append("Intake air is assumed dry.")
    if inputs.derate is None:
        told.append("No altitude derating of an engine is included; an electric motor has none.")
    told.append("Standard-atmosphere pressure; weather changes it by about 3 %.")
    return tuple(told)


PROVIDER = provide(
    "Compressor air at the site",
    SupplyInputs,
    air_supply,
    order=10,
    example="cfm=12cfm altitude=5200ft",
)
