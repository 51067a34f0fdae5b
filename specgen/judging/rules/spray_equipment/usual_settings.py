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
fails AIR-04j at spray.strainer_mesh
    spray: {strainer_mesh: 30}
fails AIR-04k at primer.transfer_efficiency
    guns: {G1: {kind: conventional_pressure_fed}}
    primer: {transfer_efficiency: 80}
fails AIR-04l at gloss.transfer_efficiency
    guns: {G1: {kind: conventional_pressure_fed}}
    gloss: {transfer_efficiency: 80}
fails AIR-04m at log.0.stream_length
    accepted: {stream_length: 7-1/2 in, stream_tolerance: 1 in}
    log: [{step: gloss, stream_length: 9 in}]
fails AIR-04n at log.0.regulators_at_zero
    log: [{step: gloss, regulators_at_zero: no}]
fails AIR-04o at log.0.lid_tight
    log: [{step: gloss, lid_tight: no}]
fails AIR-04p at log.0.pattern
    log: [{step: gloss, pattern: round}]
"""

from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.judging.site_limits import planned
from specgen.model.absence import if_given, read_all
from specgen.model.typed_views import Description, SiteRecordEntry
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "AIR-04",
    "Gun, air, hose, and setting ranges",
    remedy="Use dry, filtered air and the usual settings; prove any other on the mockup and record it.",
    steps="equipment setup",
    documents="D08 D12a",
)

RULE.clause(
    "a",
    CAUTION,
    "The gun is {found}; common practice is conventional air spray, pressure fed.",
    when="spray_gun.kind != conventional_pressure_fed",
    wanted="conventional_pressure_fed",
    basis="practice",
    remedy="Use a pressure-fed conventional gun, or prove this one on the mockup and keep it for the work.",
)

RULE.clause(
    "b",
    CAUTION,
    "The spraying air is not dried; water in it ruins a metallic finish.",
    when="compressor.dryer = no",
    basis="memory",
    remedy="Fit an air dryer.",
    why="water in the air leaves craters and dull spots in the film",
)

RULE.clause(
    "c",
    CAUTION,
    "The air filter passes {found}; maximum {wanted} is usual for a metallic finish.",
    when="compressor.filter > limit",
    limit="compressor.filter",
    remedy="Fit a filter of {wanted} or finer.",
)

RULE.clause(
    "d",
    CAUTION,
    "The hose is {found} long; maximum {wanted} is usual.",
    when="hose.use in {air_gun, fluid} and hose.length > limit",
    limit="hose.length",
    remedy="Shorten the hose, or prove the pressure at the gun with the trigger pulled.",
    why="a long hose loses pressure between the gauge and the gun",
)

RULE.clause(
    "e",
    CAUTION,
    "The air hose has a bore of {found}; minimum {wanted} for steady air.",
    when="hose.use = air_gun and hose.bore < limit",
    basis="computed",
    limit="hose.bore",
    remedy="Use an air hose with a bore of {hose.bore} or more.",
    why="a narrow hose loses pressure between the gauge and the gun",
)

RULE.clause(
    "f",
    CAUTION,
    "Atomizing air starts at {found}; {wanted} is the usual first setting.",
    when="spray.atomizing_pressure != limit",
    limit="spray.atomizing_pressure",
    step="setup",
    remedy="Start at {spray.atomizing_pressure}, or prove this setting on the mockup and record it.",
)

RULE.clause(
    "g",
    CAUTION,
    "Regulators on the tank: {found}; required: {wanted}, one for atomizing air and one for fluid.",
    when="tank.regulators != limit",
    limit="tank.regulators",
    remedy="Fit {tank.regulators} regulators: one for atomizing air, one for fluid.",
)

RULE.clause(
    "h",
    CAUTION,
    "The spray pattern is {found}; {wanted} is usual.",
    when="spray.pattern != limit",
    limit="spray.pattern",
    step="setup",
    remedy="Set the usual pattern, or prove this one on the mockup and record it.",
)

RULE.clause(
    "i",
    CAUTION,
    "The fluid hose is not clear, so air and dirt in it stay unseen.",
    when="hose.use = fluid and hose.clear = no",
    basis="practice",
    remedy="Use a clear fluid hose.",
)

RULE.clause(
    "j",
    CAUTION,
    "The strainer has {found} mesh; minimum {wanted} mesh for a metallic finish.",
    when="spray.strainer_mesh < limit",
    limit="spray.strainer_least",
    step="setup",
    remedy="Strain every pail through {spray.strainer_least} mesh or finer.",
    why="what a coarse strainer lets through clogs the nozzle or lands on the wall",
)

RULE.clause(
    "k",
    CAUTION,
    (
        "The quantities assume {found} % of the primer on the wall; air spray leaves a maximum of {wanted} % "
        "there, and the pails run out."
    ),
    when="spray_gun.kind in air_spray and primer.transfer_efficiency > limit",
    limit="spray.transfer",
    step="primer",
    remedy="Order primer for {spray.transfer} on the wall, or prove the higher figure on the mockup.",
    why="what does not reach the wall has to be bought all the same",
)

RULE.clause(
    "l",
    CAUTION,
    (
        "The quantities assume {found} % of the gloss on the wall; air spray leaves a maximum of {wanted} % "
        "there, and the pails run out."
    ),
    when="spray_gun.kind in air_spray and gloss.transfer_efficiency > limit",
    limit="spray.transfer",
    step="gloss",
    remedy="Order gloss for {spray.transfer} on the wall, or prove the higher figure on the mockup.",
    why="what does not reach the wall has to be bought all the same",
)


@RULE.test(
    "m",
    CAUTION,
    "The stream ran {found} long; on the accepted mockup it ran {wanted}.",
    at="log.stream_length",
    basis="practice",
    step="setup",
    remedy=(
        "Set the fluid pressure until the stream is as long as on the mockup, and record the setting before spraying."
    ),
    why="a longer or shorter stream lays down a wetter or drier coat than the one accepted",
)
def other_stream(log: SiteRecordEntry, project: Description) -> Violations:
    """The stream is longer or shorter than on the accepted mockup by more than was agreed."""
    stream, accepted, tolerance = read_all(
        lambda: log.stream_length, lambda: project.accepted.stream_length, lambda: project.accepted.stream_tolerance
    )
    apart = Quantity(abs(stream.amount - accepted.amount), tolerance.dimension, stream.unit)
    if more(apart, tolerance):
        yield violation(stream, wanted=accepted)


RULE.clause(
    "n",
    CAUTION,
    "The compressor was started before both regulators stood at zero.",
    when="log.regulators_at_zero = no",
    basis="practice",
    step="setup",
    remedy="Stop the compressor, release the pressure, turn both regulators to zero, and begin the setup again.",
    why="full pressure shoots through hoses and gun at the first touch of the trigger",
)

RULE.clause(
    "o",
    STOP,
    "The tank lid was not tight when the compressor was started.",
    when="log.lid_tight = no",
    basis="practice",
    lift="never",
    step="setup",
    remedy=(
        "Stop the compressor and release all pressure before anybody touches the lid; tighten every clamp, and start "
        "again."
    ),
    why="a loose lid of a pressure tank is thrown off and can kill",
)


@RULE.test(
    "p",
    CAUTION,
    "The pattern was {found}; it is proven {wanted} before spraying.",
    at="log.pattern",
    limit="spray.pattern",
    step="setup",
    remedy=(
        "Set the air nozzle until the pattern over an empty pail is the accepted one; respray stripes to a natural "
        "break."
    ),
    why="another pattern overlaps otherwise and leaves stripes",
)
def other_pattern(log: SiteRecordEntry, project: Description, limit: str) -> Violations:
    """The pattern is another than the project's, or the usual one where the project names none."""
    if log.pattern != limit and if_given(lambda: project.spray.pattern) is None:
        yield violation(log.pattern, wanted=limit)
        return
    own = planned(project, "spray", "pattern")
    if log.pattern != own.value:
        yield violation(log.pattern, wanted=own.value, sources=own.sources)
