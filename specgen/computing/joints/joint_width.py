"""Width of a sealant joint: the movement of each direction over what the sealant class bears, plus tolerance."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from specgen.computing.guards import refuse_negative
from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

SOURCES = (
    Source(
        Kind.PUBLISHED,
        "Cornell University, ARCH 262, sealant joint assignment, fall 2007: movement of each "
        "direction, division by the movement class, tolerance added last",
    ),
    Source(Kind.MEMORY, "ASTM C1472: shear and extension acting together, taken from the geometry of the bead"),
)
# Share of the width a class may extend and be compressed.
CLASS_SOURCE = Source(Kind.MEMORY, "ASTM C920: share of the width that a class bears")
CLASSES = {"12.5": (0.125, 0.125), "25": (0.25, 0.25), "35": (0.35, 0.35), "50": (0.5, 0.5), "100/50": (1.0, 0.5)}
ZERO = Quantity.of(0, "in")
NOTES = (
    "This sum sizes the bead for movement. It is no structural design; movements of the building are the engineer's.",
    "Moisture strain is taken as growth, which closes the joint.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What a joint width is computed from.

    `length` is the stretch whose movement the joint takes, `alpha` its expansion; `temperature_range` is a
    difference for both directions in place of the four temperatures. `system` is ip (inches, °F) or si.
    """

    length: Quantity
    alpha: Quantity
    movement_class: str
    tolerance: Quantity
    temperature_range: Quantity | None = None
    hot: Quantity | None = None
    cold: Quantity | None = None
    install_low: Quantity | None = None
    install_high: Quantity | None = None
    moisture_strain: Fraction | float = 0
    structural_closing: Quantity = ZERO
    structural_opening: Quantity = ZERO
    structural_shear: Quantity = ZERO
    round_up: Quantity | None = None
    system: str = "ip"


def joint_width(inputs: Inputs) -> Working:
    """Least width of a sealant joint, in inches or millimeters; source: `SOURCES`. Raises Refused."""
    _refuse(inputs)
    unit, degree, per = ("in", "F", "/F") if inputs.system == "ip" else ("mm", "C", "/C")
    extend, compress = CLASSES[inputs.movement_class]
    given = [Given(symbol, name, q.number(unit), unit) for symbol, name, q in _lengths(inputs)]
    given += [
        Given("alpha", "thermal expansion", inputs.alpha.number(per), per),
        Given("k", "moisture strain", float(inputs.moisture_strain), ""),
        Given("S_e", "extension the class bears", extend, "", source=CLASS_SOURCE),
        Given("S_c", "compression the class bears", compress, "", source=CLASS_SOURCE),
        *_temperatures(inputs, degree),
    ]
    return _sum(Sum(tuple(given)), unit, degree, inputs.temperature_range is None, inputs.round_up)


def _refuse(inputs: Inputs) -> None:
    refuse_negative(
        length=inputs.length,
        alpha=inputs.alpha,
        temperature_range=inputs.temperature_range,
        structural_closing=inputs.structural_closing,
        structural_opening=inputs.structural_opening,
        structural_shear=inputs.structural_shear,
        tolerance=inputs.tolerance,
    )
    if inputs.movement_class not in CLASSES:
        raise refuse(f"movement class {inputs.movement_class!r} is not known", f"known: {', '.join(CLASSES)}")
    if inputs.moisture_strain < 0:
        raise refuse("moisture_strain is below 0", "it is 0 or more")


def _lengths(inputs: Inputs) -> list[tuple[str, str, Quantity]]:
    return [
        ("L", "length that moves", inputs.length),
        ("d_c", "structural closing", inputs.structural_closing),
        ("d_o", "structural opening", inputs.structural_opening),
        ("d_s", "structural shear", inputs.structural_shear),
        ("C", "tolerance", inputs.tolerance),
    ]


def _temperatures(inputs: Inputs, degree: str) -> list[Given]:
    named = {
        "hot": ("T_hot", "hottest face", inputs.hot),
        "cold": ("T_cold", "coldest face", inputs.cold),
        "install_low": ("T_low", "coldest while sealing", inputs.install_low),
        "install_high": ("T_high", "hottest while sealing", inputs.install_high),
    }
    missing = [key for key, (_, _, quantity) in named.items() if quantity is None]
    if inputs.temperature_range is not None:
        if len(missing) < len(named):
            raise refuse("both temperature_range and single temperatures are given", "give one or the other")
        return [Given("dT", "temperature range", inputs.temperature_range.number(f"{degree} apart"), degree)]
    if missing:
        raise refuse(f"{', '.join(missing)} must be given", "or give temperature_range in their place")
    made = {symbol: (name, q.number(degree)) for symbol, name, q in named.values() if q is not None}
    if made["T_hot"][1] < made["T_cold"][1] or made["T_high"][1] < made["T_low"][1]:
        raise refuse("a hot temperature lies below its cold one", "cold below hot, install_low below install_high")
    return [Given(symbol, name, value, degree) for symbol, (name, value) in made.items()]


def _sum(made: Sum, unit: str, degree: str, four: bool, round_up: Quantity | None) -> Working:
    if four:
        made.step("dT_c", "warming after sealing", "max(T_hot - T_low, 0)", degree)
        made.step("dT_o", "cooling after sealing", "max(T_high - T_cold, 0)", degree)
    close, opens = ("dT_c", "dT_o") if four else ("dT", "dT")
    made.step("D_c", "movement that closes the joint", f"L * alpha * {close} + L * k + d_c", unit)
    made.step("D_o", "movement that opens the joint", f"L * alpha * {opens} + d_o", unit)
    made.step("W_c", "width for closing", "D_c / S_c", unit)
    if made.known["d_s"]:
        made.step("q", "stretch of the bead, squared less one", "2 * S_e + S_e^2", "")
        made.step("W_o", "width for opening with shear", "(D_o + sqrt(D_o^2 + q * (D_o^2 + d_s^2))) / q", unit)
    else:
        made.step("W_o", "width for opening", "D_o / S_e", unit)
    width = made.step("W", "width with tolerance", "max(W_c, W_o) + C", unit)
    if round_up is not None and round_up.amount > 0:
        made.give(Given("r", "step the width is rounded up to", round_up.number(unit), unit, source=PRACTICE))
        # A width that lies on a sixteenth but for the last bit of a float is not rounded to the next.
        width = made.step("W_r", "width, rounded up", "ceil(W / r - 1e-9) * r", unit)
    return Working("joint-width", made.given, tuple(made.steps), width, unit, SOURCES, NOTES, _governs(made.known))


def _governs(known: dict[str, float]) -> str:
    if known["W"] <= known["C"]:
        return "the tolerance alone"
    if known["W_c"] >= known["W_o"]:
        return "closing"
    return "opening with shear" if known["d_s"] else "opening"


def for_joint(joint: View, ask: Ask) -> Working:
    """The width a joint of the project needs; hot is its elevation's face heat, cold the design cold air."""
    project = joint.project.root()
    system = joint.project.system
    heat = ask("face-heat")
    values: dict[str, Any] = {
        "length": joint.panel_length,
        "alpha": joint.thermal_expansion,
        "movement_class": joint.sealant.c920_class,
        "tolerance": joint.tolerance,
        "hot": heat.quantity,
        "cold": project.climate.cold_air,
        "install_low": joint.install_low,
        "install_high": joint.install_high,
        "moisture_strain": joint.moisture_strain,
        "structural_closing": joint.structural_closing,
        "structural_opening": joint.structural_opening,
        "structural_shear": joint.structural_shear,
    }
    step = Quantity.of(1, "mm") if system == "si" else Quantity.of("1/16", "in")
    return joint_width(Inputs(**values, round_up=step, system=system))


PROVIDER = Provider(
    "joint-width",
    "Width of a sealant joint",
    ("joints",),
    for_joint,
    needs=("face-heat",),
    reads=(
        "climate.cold_air",
        "joints.*.sealant",
        "joints.*.panel_length",
        "joints.*.thermal_expansion",
        "joints.*.moisture_strain",
        "joints.*.structural_closing",
        "joints.*.structural_opening",
        "joints.*.structural_shear",
        "joints.*.tolerance",
        "joints.*.install_low",
        "joints.*.install_high",
    ),
    direct=lambda **keys: joint_width(Inputs(**keys)),
    units=("in", "mm"),
    order=10,
    origins={
        "L": "joints.*.panel_length",
        "d_c": "joints.*.structural_closing",
        "d_o": "joints.*.structural_opening",
        "d_s": "joints.*.structural_shear",
        "C": "joints.*.tolerance",
        "alpha": "joints.*.thermal_expansion",
        "k": "joints.*.moisture_strain",
        "S_e": "joints.*.sealant.c920_class",
        "S_c": "joints.*.sealant.c920_class",
        "T_hot": "face-heat",
        "T_cold": "climate.cold_air",
        "T_low": "joints.*.install_low",
        "T_high": "joints.*.install_high",
    },
    keys=(
        Key("length", "length", "stretch whose movement the joint takes"),
        Key("alpha", "expansion", "thermal expansion of that stretch"),
        Key("movement_class", "word", "movement class of the sealant, ASTM C920", choices=tuple(CLASSES)),
        Key("tolerance", "length", "building tolerance, added last"),
        Key("temperature_range", "temperature_difference", "difference for both directions", "", group="range"),
        Key("hot", "temperature", "hottest face", "", group="four"),
        Key("cold", "temperature", "coldest face", "", group="four"),
        Key("install_low", "temperature", "coldest while sealing", "", group="four"),
        Key("install_high", "temperature", "hottest while sealing", "", group="four"),
        Key("moisture_strain", "number", "length per length", "0"),
        Key("structural_closing", "length", "movement of the building that closes", "0 in"),
        Key("structural_opening", "length", "movement of the building that opens", "0 in"),
        Key("structural_shear", "length", "movement of the building along the joint", "0 in"),
        Key("round_up", "length", "the width is rounded up to a multiple; none for no rounding", "1/16 in"),
    ),
)
