"""Gun, air, hoses, tank and first settings are those that are usual for this finish.

Why: every change of gun, air or hose changes the fan and the wetness of the coat, and so the lie of the
flakes. Water, oil and dirt in the air end in the gloss.

passes
    guns: {G1: {kind: conventional_pressure_fed}}
    compressor: {dryer: yes, filter: 1 um}
    hoses: {H1: {use: air_gun, length: 12 ft, bore: 3/8 in}, H2: {use: fluid, length: 12 ft, clear: yes}}
    spray: {atomizing_pressure: 40 psi, pattern: oval}
    tank: {regulators: 2}
fails AIR-04a at guns.G1.kind
    guns: {G1: {kind: airless}}
fails AIR-04b at compressor.dryer
    compressor: {dryer: no}
fails AIR-04c at compressor.filter
    compressor: {filter: 5 um}
fails AIR-04d at hoses.H1.length
    hoses: {H1: {use: air_gun, length: 50 ft}}
fails AIR-04e at hoses.H1.bore
    hoses: {H1: {use: air_gun, bore: 1/4 in}}
fails AIR-04f at spray.atomizing_pressure
    spray: {atomizing_pressure: 55 psi}
fails AIR-04g at tank.regulators
    tank: {regulators: 1}
fails AIR-04h at spray.pattern
    spray: {pattern: round}
fails AIR-04i at hoses.H1.clear
    hoses: {H1: {use: fluid, clear: no}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.judging.three_valued import every
from specgen.quantities.comparison import equal, less, more

RULE = Rule(
    "AIR-04",
    "Usual gun, air, hoses and settings",
    remedy="Dry, filtered air; settings proven on the mockup, written down, kept.",
    steps="equipment setup",
    documents="D08 D12a",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The gun is {found}; common practice is conventional, pressure fed.",
    each="guns",
    needs="guns.*.kind",
    basis="practice",
)
def other_gun(gun: Any) -> Iterator[Found]:
    """The gun is of another kind than usual."""
    if gun.kind != "conventional_pressure_fed":
        yield found(gun.kind, wanted="conventional_pressure_fed")


@RULE.clause(
    "b",
    CAUTION,
    "The air is not dried, and water ruins a metal-look coat.",
    needs="compressor.dryer",
    basis="memory",
)
def wet_air(project: Any) -> Iterator[Found]:
    """The compressor has no dryer."""
    if not project.compressor.dryer:
        yield found(project.compressor.dryer)


@RULE.clause(
    "c",
    CAUTION,
    "The air filter passes {found}; {wanted} is usual before a metal-look coat.",
    needs="compressor.filter",
    limit="compressor.filter",
)
def coarse_filter(project: Any, limit: Any) -> Iterator[Found]:
    """The filter lets coarser dirt through than usual."""
    if more(project.compressor.filter, limit):
        yield found(project.compressor.filter, wanted=limit)


@RULE.clause(
    "d",
    CAUTION,
    "The hose is {found} long; {wanted} is usual.",
    each="hoses",
    needs="hoses.*.use hoses.*.length",
    limit="hose.length",
)
def long_hose(hose: Any, limit: Any) -> Iterator[Found]:
    """An air or fluid hose to the gun is longer than usual."""
    if every(lambda: hose.use in ("air_gun", "fluid"), lambda: more(hose.length, limit)):
        yield found(hose.length, wanted=limit)


@RULE.clause(
    "e",
    CAUTION,
    "The air hose has a bore of {found}; {wanted} is the least for steady air.",
    each="hoses",
    needs="hoses.*.use hoses.*.bore",
    limit="hose.bore",
    basis="computed",
)
def narrow_hose(hose: Any, limit: Any) -> Iterator[Found]:
    """The air hose to the gun is too narrow."""
    if every(lambda: hose.use == "air_gun", lambda: less(hose.bore, limit)):
        yield found(hose.bore, wanted=limit)


@RULE.clause(
    "f",
    CAUTION,
    "Atomizing air starts at {found}; {wanted} is the first setting.",
    needs="spray.atomizing_pressure",
    limit="spray.atomizing_pressure",
    step="setup",
)
def other_pressure(project: Any, limit: Any) -> Iterator[Found]:
    """The atomizing air starts at another pressure."""
    if not equal(project.spray.atomizing_pressure, limit):
        yield found(project.spray.atomizing_pressure, wanted=limit)


@RULE.clause(
    "g",
    CAUTION,
    "The tank has {found} regulators; {wanted} are due, one for atomizing air and one for fluid.",
    needs="tank.regulators",
    limit="tank.regulators",
)
def other_regulators(project: Any, limit: Any) -> Iterator[Found]:
    """The tank has another number of regulators."""
    if not equal(project.tank.regulators, limit):
        yield found(project.tank.regulators, wanted=limit)


@RULE.clause(
    "h",
    CAUTION,
    "The pattern is {found}; it is {wanted}.",
    needs="spray.pattern",
    limit="spray.pattern",
    step="setup",
)
def other_pattern(project: Any, limit: Any) -> Iterator[Found]:
    """The spray has another shape."""
    if project.spray.pattern != limit:
        yield found(project.spray.pattern, wanted=limit)


@RULE.clause(
    "i",
    CAUTION,
    "The fluid hose is not clear, so air and dirt in it are not seen.",
    each="hoses",
    needs="hoses.*.use hoses.*.clear",
    basis="practice",
)
def blind_hose(hose: Any) -> Iterator[Found]:
    """The fluid in its hose cannot be seen."""
    if every(lambda: hose.use == "fluid", lambda: not hose.clear):
        yield found(hose.clear)
