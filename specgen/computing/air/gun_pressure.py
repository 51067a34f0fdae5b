"""Pressure that reaches a spray gun: set pressure or what the supply hose leaves of the compressor's, less its hose."""

from typing import Any

from specgen.computing.air import _atmosphere
from specgen.computing.air._hoses import FORMULA, MOST, NOTES, REACH, constants, flow_by, loss_by, units
from specgen.model.absence import Absent
from specgen.model.field import below
from specgen.model.project import View
from specgen.model.working import Given, Sum, Working
from specgen.resolving.provider import Ask, Provider

BEYOND = "A hose loses more than the formula holds for: no pressure is counted on behind it."


def for_gun(gun: View, ask: Ask) -> Working:
    """Gauge pressure at the gun in psi or kPa, trigger pulled; no hose for the gun is an Absent list of hoses.

    All guns pull at once through the supply hoses, joined end to end; the gun hose is the one that loses most.
    """
    project = gun.project.root()
    system = project.project.system
    supply, own = _hoses(project)
    unit = units(system)[0]
    made = Sum(_given(gun, project, supply, own, system))
    made.step("q_n", "air through the supply hose", flow_by("Q_n", unit), "m³/s")
    made.step("q_g", "air through the gun hose", flow_by("Q_g", unit), "m³/s")
    _atmosphere.pressure(made, unit)
    left = "p_c"
    for at, hose in enumerate(supply, 1):
        left = _behind(made, left, "q_n", f"s{at}", f"supply hose {hose.mark}", unit)
    made.step("p_i", "pressure into the gun hose", f"min(p_a, {left})", unit)
    last = _behind(made, "p_i", "q_g", "g", f"gun hose {own.mark}", unit)
    found = made.known[last]
    governs = "set pressure" if made.known["p_a"] <= made.known[left] else "compressor and supply hose"
    beyond = any(step.symbol.startswith("h_") for step in made.steps)
    notes = (*NOTES, *((BEYOND,) if beyond else ()), *(() if supply else ("No supply hose is listed.",)))
    sources = (FORMULA, REACH, _atmosphere.SOURCE)
    return Working("gun-pressure", made.given, tuple(made.steps), found, unit, sources, notes, governs, ("dP_g",))


def _hoses(project: View) -> tuple[list[View], View]:
    """The supply hoses and the gun hose that loses most; raises Absent where no gun hose is listed."""
    air = [hose for hose in project.hoses if hose.use != "fluid"]
    own = [hose for hose in air if hose.use == "air_gun"]
    if not own:
        raise Absent(("hoses",))
    worst = max(own, key=lambda hose: hose.length.to("m") / hose.bore.to("m") ** 5)
    return [hose for hose in air if hose.use == "air_supply"], worst


def _behind(made: Sum, inlet: str, flow: str, tail: str, name: str, unit: str) -> str:
    """Adds the loss in a hose and what it leaves; the symbol of the pressure behind it."""
    absolute = made.step(f"P_{tail}", f"pressure into {name}, absolute", f"{inlet} + P_a", unit)
    lost = made.step(f"dP_{tail}", f"loss in {name}", loss_by(flow, f"L_{tail}", f"d_{tail}", f"P_{tail}", unit), unit)
    left = f"max({inlet} - dP_{tail}, 0)"
    if lost > MOST * absolute:
        made.step(f"h_{tail}", "the formula holds: 1 yes, 0 no", f"floor(min(w * P_{tail} / dP_{tail}, 1))", "")
        left = f"h_{tail} * {left}"
    made.step(f"p_{tail}", f"pressure left behind {name}", left, unit)
    return f"p_{tail}"


def _given(gun: View, project: View, supply: list[View], own: View, system: str) -> tuple[Given, ...]:
    unit, air, _, _ = units(system)
    all_guns: Any = sum((one.air_flow.to(air) * one.count for one in project.guns), start=0)
    given = [
        Given("Q_g", "air of this gun", gun.air_flow.number(air), air),
        Given("Q_n", "air of all guns at once", float(all_guns), air),
        Given("p_c", "pressure of the compressor, gauge", project.compressor.at_pressure.number(unit), unit),
        Given("p_a", "set pressure, gauge", project.spray.atomizing_pressure.number(unit), unit),
        *_atmosphere.given(project.site.altitude, system),
        Given("w", "share of the inlet the formula bears", MOST, "", source=REACH),
        *constants(unit),
    ]
    for tail, hose in [*((f"s{at}", hose) for at, hose in enumerate(supply, 1)), ("g", own)]:
        given += _hose(tail, hose, system)
    return tuple(given)


def _hose(tail: str, hose: View, system: str) -> tuple[Given, ...]:
    _, _, far, wide = units(system)
    return (
        Given(f"L_{tail}", f"length of hose {hose.mark}", hose.length.number(far), far, below(hose.path, "length")),
        Given(f"d_{tail}", f"bore of hose {hose.mark}", hose.bore.number(wide), wide, below(hose.path, "bore")),
    )


PROVIDER = Provider(
    "gun-pressure",
    "Pressure at the spray gun",
    ("guns",),
    for_gun,
    reads=(
        "compressor.at_pressure",
        "guns",
        "guns.*.air_flow",
        "guns.*.count",
        "hoses",
        "hoses.*.use",
        "hoses.*.length",
        "hoses.*.bore",
        "site.altitude",
        "spray.atomizing_pressure",
    ),
    units=("psi", "kPa"),
    order=30,
    origins={
        "Q_g": "guns.*.air_flow",
        "Q_n": "air flow and number of all guns (guns)",
        "p_c": "compressor.at_pressure",
        "p_a": "spray.atomizing_pressure",
        "z": "site.altitude",
    },
)
