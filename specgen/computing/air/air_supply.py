"""Air that a compressor gives at the altitude of the site, told in a stated standard state."""

from dataclasses import dataclass
from fractions import Fraction

from specgen.computing.air import _atmosphere
from specgen.computing.guards import refuse_beyond, refuse_negative, refuse_outside
from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.working import UNIT_CHANGE, Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

FREE_AIR = Source(
    Kind.PUBLISHED,
    "engineering reference pages on compressed air: standard flow is actual flow by pressure less vapor, and by "
    "absolute temperature, over those of the standard state",
)
VAPOR = Source(Kind.PUBLISHED, "ISO 13788: saturation pressure of water vapor")
# Standard states differ by more than 3 %, so the one used is always printed: pressure in psia, temperature in °F.
BASES = {
    "sea_level_60f": ("14.696", 60, "14.696 psia (101.33 kPa) and 60 °F (15.6 °C)"),
    "sea_level_68f": ("14.696", 68, "14.696 psia (101.33 kPa) and 68 °F (20 °C)"),
    "dry_68f": ("14.5", 68, "14.5 psia (100 kPa) and 68 °F (20 °C), dry"),
}
FREEZING, AT_FREEZING = Quantity.of(0, "C"), Quantity.of("0.6105", "kPa")
COLDEST, HOTTEST = Quantity.of(-40, "F"), Quantity.of(140, "F")


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What the air of a compressor is computed from; `cfm` is the air drawn in, `rh` in percent.

    Without `temperature` the air is taken at the temperature of the standard state. `derate` is what an engine loses
    with altitude; None for an electric motor. `system` is ip (scfm, ft, °F) or si.
    """

    cfm: Quantity
    altitude: Quantity
    temperature: Quantity | None = None
    rh: Fraction | None = None
    basis: str = "sea_level_68f"
    derate: Quantity | None = None
    system: str = "ip"


def air_supply(inputs: Inputs) -> Working:
    """Air at the site in the standard state, in scfm or L/s; source: `FREE_AIR`. Raises Refused."""
    _refuse(inputs)
    flow, force = ("scfm", "psi") if inputs.system == "ip" else ("L/s", "kPa")
    standard = Quantity.of(BASES[inputs.basis][0], "psi")
    made = Sum(
        (
            Given("Q", "air drawn in", inputs.cfm.number(flow), "cfm" if flow == "scfm" else flow),
            *_atmosphere.given(inputs.altitude, inputs.system),
            Given("P_s", "standard pressure, absolute", standard.number(force), force, source=FREE_AIR),
            *_warm_given(inputs),
            *_derate_given(inputs),
        )
    )
    _atmosphere.pressure(made, force)
    factors = ["Q", "P_a / P_s"]
    if inputs.temperature is not None:
        factors[1:] = _warm(made, inputs, force)
    if inputs.derate is not None:
        made.step("k", "share left to the engine", "min(1 - D / 100 * z / z_d, 1)", "")
        factors.append("k")
    found = made.step("Q_s", "air at the site, in standard air", " * ".join(factors), flow)
    sources = (FREE_AIR, _atmosphere.SOURCE, *((VAPOR,) if inputs.rh else ()))
    return Working("air-supply", made.given, tuple(made.steps), found, flow, sources, _notes(inputs))


def _refuse(inputs: Inputs) -> None:
    refuse_negative(cfm=inputs.cfm, derate=inputs.derate)
    if inputs.temperature is not None:
        refuse_beyond("temperature", inputs.temperature, COLDEST, HOTTEST)
    if inputs.rh is not None:
        refuse_outside("rh", inputs.rh, 0, 100)
        if inputs.temperature is None:
            raise refuse("rh is given without temperature", "vapor counts by temperature and humidity together")
    if inputs.derate is not None and float(inputs.derate.to("%/1000 ft") * inputs.altitude.to("ft")) >= 100_000:
        raise refuse("the engine has no power left at this altitude", "look at derate, in % for each 1000 ft")


def _warm_given(inputs: Inputs) -> tuple[Given, ...]:
    """The temperatures, in °F and °R or °C and K, and the humidity as a share."""
    if inputs.temperature is None:
        return ()
    ip = inputs.system == "ip"
    degree = "F" if ip else "C"
    standard = Quantity.of(BASES[inputs.basis][1], "F")
    return (
        Given("T", "temperature at the intake", inputs.temperature.number(degree), degree),
        Given("T_s", "temperature of the standard state", standard.number(degree), degree),
        Given("T_0", "zero of the scale above absolute zero", 459.67 if ip else 273.15, degree),
        Given(
            "P_t",
            "pressure of vapor at freezing",
            AT_FREEZING.number("psi" if ip else "kPa"),
            "psi" if ip else "kPa",
        ),
        Given("phi", "share of saturation at the intake", float(inputs.rh or 0) / 100, ""),
    )


def _derate_given(inputs: Inputs) -> tuple[Given, ...]:
    if inputs.derate is None:
        return ()
    ip = inputs.system == "ip"
    unit = "%/1000 ft" if ip else "%/300 m"
    return (
        Given("D", "loss of the engine with altitude", inputs.derate.number(unit), unit),
        Given("z_d", "altitude this loss is told for", 1000.0 if ip else 300.0, "ft" if ip else "m", UNIT_CHANGE),
    )


def _warm(made: Sum, inputs: Inputs, force: str) -> list[str]:
    """The factors of pressure and temperature where the air at the intake is known."""
    assert inputs.temperature is not None
    celsius = "T"
    if inputs.system == "ip":
        celsius = "T_c"
        made.step(celsius, "temperature at the intake", "(T - 32) / 1.8", "C")
    above = inputs.temperature >= FREEZING
    curve = f"17.269 * {celsius} / (237.3 + {celsius})" if above else f"21.875 * {celsius} / (265.5 + {celsius})"
    made.step("P_v", "pressure of the vapor in the air", f"phi * P_t * exp({curve})", force)
    return ["(P_a - P_v) / P_s", "(T_s + T_0) / (T + T_0)"]


def _notes(inputs: Inputs) -> tuple[str, ...]:
    told = [f"Standard state: {BASES[inputs.basis][2]}. Other states give other figures; compare like with like."]
    if inputs.temperature is None:
        told.append("Temperature and humidity at the intake are left out: hot, damp air gives less.")
    elif inputs.rh is None:
        told.append("The air at the intake is taken as dry.")
    if inputs.derate is None:
        told.append("No loss of an engine with altitude is counted; an electric motor has none.")
    told.append("Pressure by altitude is that of the standard atmosphere; weather moves it by 3 % or so.")
    return tuple(told)


def for_project(project: View, ask: Ask) -> Working:
    """The air of the project's compressor at its site."""
    # A rating in standard air is one at sea level: the same volume is drawn in at the site, and it is thinner there.
    return air_supply(
        Inputs(
            cfm=project.compressor.air_flow,
            altitude=project.site.altitude,
            derate=project.compressor.engine_derate,
            system=project.project.system,
        )
    )


PROVIDER = Provider(
    "air-supply",
    "Air of the compressor at the site",
    (),
    for_project,
    reads=("compressor.air_flow", "compressor.engine_derate", "site.altitude"),
    direct=lambda **keys: air_supply(Inputs(**keys)),
    units=("scfm", "L/s"),
    order=10,
    origins={
        "Q": "compressor.air_flow",
        "z": "site.altitude",
        "D": "compressor.engine_derate",
    },
    keys=(
        Key("cfm", "flow", "air the compressor draws in, as rated", bare="cfm"),
        Key("altitude", "length", "altitude of the site"),
        Key("temperature", "temperature", "temperature of the air at the intake", ""),
        Key("rh", "percent", "humidity of the air at the intake, in percent", ""),
        Key("basis", "word", "standard state the air is told in", "sea_level_68f", tuple(BASES)),
        Key("derate", "derate", "loss of an engine with altitude, such as 3 %/1000 ft", ""),
    ),
)
