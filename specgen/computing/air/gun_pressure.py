"""Pressure that reaches a spray gun: set pressure or what the supply hose leaves of the compressor's, less its hose."""

from fractions import Fraction
from typing import NamedTuple

from specgen.computing.air import _atmosphere
from specgen.computing.air._hoses import FORMULA, MOST, NOTES, REACH, express_flow, express_loss, formula_rows, units
from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import Absent, if_given
from specgen.model.capacity import Check, at_least
from specgen.model.field import Path, dotted_field
from specgen.model.project import asked_once
from specgen.model.typed_views import Description, Hose, SprayGun, root_of
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

BEYOND = "A hose loses more than the formula is valid for: no pressure is assumed after it."
STARVED = (
    "The compressor gives less air than all guns draw: the pressure falls below this figure while all triggers are "
    "pulled."
)


class AirHose(NamedTuple):
    """An air hose of the project; `path` is its own."""

    path: Path
    length: Quantity
    bore: Quantity


class GunInputs(Inputs):
    """A gun, the compressor, and the hoses between them: supply hoses joined end to end, then the gun hose."""

    flow: Quantity = given_input("Q_g", "gun air flow", "flow", "guns.*.air_flow")
    all_guns: Quantity = given_input("Q_n", "air flow of all guns", "flow", origin="sum of the guns given")
    arrives: Quantity | None = given_input(
        "Q_c", "compressor air at the site", "flow", default=None, origin="air-supply"
    )
    at_pressure: Quantity = given_input("p_c", "compressor pressure, gauge", "pressure", "compressor.at_pressure")
    set_pressure: Quantity = given_input("p_a", "set pressure, gauge", "pressure", "spray.atomizing_pressure")
    required: Quantity | None = given_input(
        "p_r", "required at inlet, gauge", "pressure", "guns.*.inlet_pressure", default=None, optional=True
    )
    altitude: Quantity = _atmosphere.altitude_input()
    supply: tuple[AirHose, ...] = option_input("supply hoses, joined end to end", dimension="", key=False)
    own: AirHose = option_input("hose of this gun", dimension="", key=False)


def gun_pressure(inputs: GunInputs) -> Working:
    """Gauge pressure at the gun in psi or kPa, trigger pulled, all guns at once."""
    unit = units(inputs.system)[0]
    working = WorkingBuilder(
        (
            *inputs.rows(),
            *_atmosphere.standard_rows(inputs.system),
            InputRow("w", "formula limit, share of inlet pressure", MOST, "", source=REACH),
            *formula_rows(unit),
            *(row for n, hose in enumerate(inputs.supply, 1) for row in _hose_rows(f"s{n}", hose, inputs.system)),
            *_hose_rows("g", inputs.own, inputs.system),
        )
    )
    working.step("q_n", "supply hose air flow", express_flow("Q_n", unit), "m³/s")
    working.step("q_g", "gun hose air flow", express_flow("Q_g", unit), "m³/s")
    _atmosphere.add_air_pressure(working, unit)
    left = "p_c"
    for n, hose in enumerate(inputs.supply, 1):
        left = _add_loss(working, left, "q_n", f"s{n}", f"supply hose {hose.path[-1]}", unit)
    working.step("p_i", "gun hose inlet pressure", f"min(p_a, {left})", unit)
    last = _add_loss(working, "p_i", "q_g", "g", f"gun hose {inputs.own.path[-1]}", unit)
    case = "set pressure" if working.known["p_a"] <= working.known[left] else "compressor and supply hose"
    short = _add_share(working)
    beyond = any(step.symbol.startswith("h_") for step in working.steps)
    notes = (
        NOTES[0],
        NOTES[-1],
        *((STARVED,) if short else ()),
        *((BEYOND,) if beyond else ()),
        *(() if inputs.supply else ("No supply hose is listed.",)),
    )
    return working.build("gun-pressure", last, (FORMULA, REACH, _atmosphere.SOURCE), notes, case, ("dP_g",))


def _add_share(working: WorkingBuilder) -> bool:
    """Adds the share of the air drawn that the compressor gives, if known; whether it gives less than is drawn."""
    if "Q_c" not in working.known:
        return False
    return working.step("x", "compressor share of air drawn", "min(Q_c / Q_n, 1)", "") < 1


def _add_loss(working: WorkingBuilder, inlet: str, flow: str, tail: str, name: str, unit: str) -> str:
    """Adds the loss in a hose and what it leaves; the symbol of the pressure behind it."""
    absolute = working.step(f"P_{tail}", f"pressure into {name}, absolute", f"{inlet} + P_a", unit)
    lost = working.step(
        f"dP_{tail}", f"loss in {name}", express_loss(flow, f"L_{tail}", f"d_{tail}", f"P_{tail}", unit), unit
    )
    left = f"max({inlet} - dP_{tail}, 0)"
    if lost > MOST * absolute:
        working.step(f"h_{tail}", "the formula holds: 1 yes, 0 no", f"floor(min(w * P_{tail} / dP_{tail}, 1))", "")
        left = f"h_{tail} * {left}"
    working.step(f"p_{tail}", f"pressure after {name}", left, unit)
    return f"p_{tail}"


def _hose_rows(tail: str, hose: AirHose, system: str) -> tuple[InputRow, ...]:
    _, _, far, wide = units(system)
    path, mark = hose.path, hose.path[-1]
    return (
        InputRow(f"L_{tail}", f"length of hose {mark}", hose.length.number(far), far, dotted_field(path, "length")),
        InputRow(f"d_{tail}", f"bore of hose {mark}", hose.bore.number(wide), wide, dotted_field(path, "bore")),
    )


def for_gun(gun: SprayGun, ask: Ask) -> Working:
    """The pressure at a gun of the project; no hose for the gun is an Absent list of hoses."""
    project = root_of(gun)
    supply, own = _hoses(project)
    all_guns = Quantity(_sum_drawn(project), "flow", gun.air_flow.unit)
    supplied = if_given(lambda: ask("air-supply"))
    arrives = None if supplied is None else supplied.quantity
    inputs = GunInputs.from_project(gun, ask, all_guns=all_guns, arrives=arrives, supply=supply, own=own)
    return gun_pressure(inputs)


@asked_once
def _sum_drawn(project: Description) -> Fraction:
    """The air of all guns at once, in the base unit."""
    return sum((one.air_flow.amount * one.count for one in project.guns), start=Fraction(0))


@asked_once
def _hoses(project: Description) -> tuple[tuple[AirHose, ...], AirHose]:
    """The supply hoses and the gun hose that loses most; raises Absent where no gun hose is listed."""
    air = [hose for hose in project.hoses if hose.use != "fluid"]
    own = [_read_hose(hose) for hose in air if hose.use == "air_gun"]
    if not own:
        raise Absent(("hoses",))
    worst = max(own, key=lambda hose: hose.length.to("m") / hose.bore.to("m") ** 5)
    return tuple(_read_hose(hose) for hose in air if hose.use == "air_supply"), worst


def _read_hose(hose: Hose) -> AirHose:
    return AirHose(hose.path, hose.length, hose.bore)


CHECKS = (
    Check(
        "pressure at the gun",
        "required at inlet",
        ("AIR-02a",),
        lambda gun, ask: at_least(ask("gun-pressure").quantity, gun.inlet_pressure),
        "guns.*.inlet_pressure",
    ),
)

PROVIDER = provide(
    "Spray gun pressure",
    GunInputs,
    gun_pressure,
    each=("guns",),
    by_keys=False,
    for_member=for_gun,
    reads=("guns", "guns.*.count", "hoses", "hoses.*.use", "hoses.*.length", "hoses.*.bore"),
    checks=CHECKS,
    order=30,
)
