"""The gun is set as on the accepted mockup, and kept at its distance from the wall.

Why: the look of a flake coat lies in how wet it lands. Other pressures, or a gun held nearer or farther off, lay the
flakes otherwise, and the change shows as a band at the next natural break.

passes
    accepted: {atomizing_pressure: 40 psi, fluid_pressure: 12 psi, distance: 18 in}
    spray: {distance: 18 in}
    elevations: {E1: {wall: W1}}
    log: [{step: gloss, elevation: E1, atomizing_pressure: 42 psi, fluid_pressure: 14 psi, distance: 20 in}]
fails AIR-09a at log.0.atomizing_pressure
    accepted: {atomizing_pressure: 40 psi}
    log: [{step: gloss, atomizing_pressure: 55 psi}]
fails AIR-09b at log.0.fluid_pressure
    accepted: {fluid_pressure: 12 psi}
    log: [{step: gloss, fluid_pressure: 30 psi}]
fails AIR-09c at log.0.distance
    spray: {distance: 18 in}
    log: [{step: gloss, distance: 10 in}]
fails AIR-09d at log.0.distance
    spray: {distance: 18 in}
    log: [{step: gloss, distance: 30 in}]
"""

from specgen.judging.entry_view import ask_fact
from specgen.judging.rule import CAUTION, Limits, Rule, Violations, violation
from specgen.judging.site_limits import Figure, planned
from specgen.model.absence import if_given, read_all
from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.model.typed_views import Description, SiteRecordEntry
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity
from specgen.recording.entry_kinds import is_on_mockup

RULE = Rule(
    "AIR-09",
    "Settings kept from the mockup",
    remedy="Spray with the settings of the accepted mockup; prove any other on a repeat of it and record it.",
    steps="setup primer gloss",
    documents="D10 D12a",
)


@RULE.test(
    "a",
    CAUTION,
    "Atomizing air ran at {found}; on the accepted mockup {wanted}, plus or minus {spray.atomizing_band}.",
    at="log.atomizing_pressure",
    limit="spray.atomizing_band",
    remedy=(
        "Set the accepted pressure with the trigger pulled, and prove the pattern over an empty pail. View what was "
        "sprayed against the mockup; recoat stripes, dry spray, and dull panels to a natural break."
    ),
    why="more air dries the mist before it lands and lays the flakes otherwise, less air spits",
)
def other_atomizing(log: SiteRecordEntry, project: Description, limit: Quantity) -> Violations:
    """The atomizing air differs from that of the accepted mockup by more than a gauge and a regulator do."""
    if not ask_fact(log, _on_mockup):
        used, accepted = read_all(lambda: log.atomizing_pressure, lambda: project.accepted.atomizing_pressure)
        yield from _tell_apart(used, accepted, limit)


@RULE.test(
    "b",
    CAUTION,
    "Fluid pressure was {found}; on the accepted mockup {wanted}, plus or minus {spray.fluid_band}.",
    at="log.fluid_pressure",
    limit="spray.fluid_band",
    remedy=(
        "Check gauge, strainer, and hose, and the height of the gun over the tank; set the fluid pressure until the "
        "stream is as long as on the mockup, and record both. View what was sprayed against the mockup, and recoat "
        "runs or dry panels to a natural break."
    ),
    why="more fluid floods the wall and lets the flakes drift, less leaves a dry film",
)
def other_fluid(log: SiteRecordEntry, project: Description, limit: Quantity) -> Violations:
    """The fluid pressure differs from that of the accepted mockup by more than a lift of the gun asks for."""
    if not ask_fact(log, _on_mockup):
        used, accepted = read_all(lambda: log.fluid_pressure, lambda: project.accepted.fluid_pressure)
        yield from _tell_apart(used, accepted, limit)


def _tell_apart(used: Quantity, accepted: Quantity, band: Quantity) -> Violations:
    apart = Quantity(abs(used.amount - accepted.amount), band.dimension, used.unit)
    if more(apart, band):
        yield violation(used, wanted=accepted)


def _on_mockup(project: Project, entry: Entry) -> bool:  # noqa: ARG001  (as a Fact)
    """Whether the settings are tried on the mockup, where those to keep are found."""
    return is_on_mockup(entry)


@RULE.test(
    "c",
    CAUTION,
    "The gun was held {found} from the wall; minimum {wanted}.",
    at="log.distance",
    limit="spray.distance",
    step="gloss",
    remedy=(
        "Hold the gun a minimum of {wanted} from the wall. Look for runs, heavy edges, and stroke marks while the coat "
        "is wet; recoat marked panels to a natural break."
    ),
    why="held close, the gun floods the wall and every stroke shows",
)
def gun_too_near(log: SiteRecordEntry, project: Description, limits: Limits) -> Violations:
    """The gun was nearer than the project, the trade, and the accepted mockup have it."""
    used, accepted = log.distance, if_given(lambda: project.accepted.distance)
    if accepted is not None and not less(used, accepted):
        return
    own = _find_planned(project, limits)
    if less(used, own.value):
        yield violation(used, wanted=own.value, sources=own.sources)


@RULE.test(
    "d",
    CAUTION,
    "The gun was held {found} from the wall; maximum {wanted}.",
    at="log.distance",
    limit="spray.distance_most",
    step="gloss",
    remedy=(
        "Hold the gun a maximum of {wanted} from the wall. Feel and view what was sprayed against the mockup; recoat "
        "rough, dry-sprayed panels to a natural break."
    ),
    why="held far off, the mist dries before it lands and the film is rough",
)
def gun_too_far(log: SiteRecordEntry, project: Description, limits: Limits) -> Violations:
    """The gun was farther off than the project, the trade, and the accepted mockup have it."""
    used, accepted = log.distance, if_given(lambda: project.accepted.distance)
    if accepted is not None and not more(used, accepted):
        return
    usual, own = Figure(limits("spray.distance_most")), _find_planned(project, limits)
    most = own if more(own.value, usual.value) else usual
    if more(used, most.value):
        yield violation(used, wanted=most.value, sources=most.sources)


def _find_planned(project: Description, limits: Limits) -> Figure:
    """The distance of the project; the least usual one where it names none."""
    if if_given(lambda: project.spray.distance) is None:
        return Figure(limits("spray.distance"))
    return planned(project, "spray", "distance")
