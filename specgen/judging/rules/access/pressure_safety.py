"""Wide air hoses have a safety device at their source, and the pressure tank has a relief valve.

Why: a wide hose that tears off lashes about with the whole compressor behind it. A tank without a valve is
a bomb beside the crew.

passes
    safety: {rules: us_osha}
    hoses: {H1: {use: air_supply, bore: 3/4 in, safety_device: yes}}
    tank: {relief_valve: yes}
fails ACC-08a at hoses.H1.bore
    safety: {rules: us_osha}
    hoses: {H1: {use: air_supply, bore: 3/4 in, safety_device: no}}
fails ACC-08b at hoses.H1.bore
    safety: {rules: other}
    hoses: {H1: {use: air_supply, bore: 3/4 in, safety_device: no}}
fails ACC-08c at tank.relief_valve
    safety: {rules: us_osha}
    tank: {relief_valve: no}
fails ACC-08d at tank.relief_valve
    safety: {rules: other}
    tank: {relief_valve: no}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, STOP, Found, Rule, found
from specgen.judging.three_valued import every
from specgen.quantities.comparison import more

RULE = Rule(
    "ACC-08",
    "Pressure held safely",
    remedy="Fit it; blow-down air under 30 psi.",
    steps="equipment setup",
    documents="D15",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "An air hose with a bore of {found} has no safety device; above {wanted} it is due.",
    each="hoses",
    lift="never",
    needs="safety.rules hoses.*.use hoses.*.safety_device hoses.*.bore",
    limit="hose.safety_bore",
)
def hose_may_whip(hose: Any, project: Any, limit: Any) -> Iterator[Found]:
    """A wide air hose has no safety device, under federal rules."""
    if _whips(hose, project, "us_osha", limit):
        yield found(hose.bore, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "An air hose with a bore of {found} has no safety device; above {wanted} it is due: local law governs, confirm.",
    each="hoses",
    needs="safety.rules hoses.*.use hoses.*.safety_device hoses.*.bore",
    limit="hose.safety_bore",
)
def hose_may_whip_elsewhere(hose: Any, project: Any, limit: Any) -> Iterator[Found]:
    """A wide air hose has no safety device, where local law governs."""
    if _whips(hose, project, "other", limit):
        yield found(hose.bore, wanted=limit)


@RULE.clause(
    "c",
    STOP,
    "The pressure tank has no relief valve.",
    lift="never",
    needs="safety.rules tank.relief_valve",
    basis="memory",
)
def no_relief(project: Any) -> Iterator[Found]:
    """The pressure tank has no relief valve, under federal rules."""
    if every(lambda: not project.tank.relief_valve, lambda: project.safety.rules == "us_osha"):
        yield found(project.tank.relief_valve)


@RULE.clause(
    "d",
    CAUTION,
    "The pressure tank has no relief valve: local law governs, confirm.",
    needs="safety.rules tank.relief_valve",
    basis="memory",
)
def no_relief_elsewhere(project: Any) -> Iterator[Found]:
    """The pressure tank has no relief valve, where local law governs."""
    if every(lambda: not project.tank.relief_valve, lambda: project.safety.rules == "other"):
        yield found(project.tank.relief_valve)


def _whips(hose: Any, project: Any, rules: str, limit: Any) -> bool:
    """Whether these rules apply and an air hose wider than the limit has no safety device."""
    return every(
        lambda: hose.use in ("air_supply", "air_gun"),
        lambda: more(hose.bore, limit),
        lambda: not hose.safety_device,
        lambda: project.safety.rules == rules,
    )
