"""Those who do and watch the work are named and proved fit for it.

Why: gloss is made by hands, and a reviewer accepts hands he can look up. An inspector who is new to the
system, or in the applicator's pay, sees too little.

passes
    package: {purpose: work_submittal}
    contract: {inspection_level: full_time}
    parties: {inspector: {name: Plumb Line}, applicator: {name: Northbank}}
    people:
      P1: {role: foreman, certificates: [A20]}
      P2: {role: sprayer, certificates: [A20]}
      P3: {role: sealant_applicator, certificates: [A20]}
      P4: {role: inspector, certificates: [A20], years_on_system: 2, years: 3}
    attachments: {A20: {kind: certificate}}
fails SUB-08a at people.P2.certificates
    people: {P2: {role: sprayer, certificates: []}}
fails SUB-08b at people.P4.years_on_system
    people: {P4: {role: inspector, years_on_system: 1}}
fails SUB-08c at people.P4.years
    people: {P4: {role: inspector, years: 2}}
fails SUB-08d at people.*.role
    package: {purpose: mockup_submittal}
    people: {P1: {role: foreman}}
fails SUB-08e at people.*.role
    package: {purpose: mockup_submittal}
    contract: {inspection_level: full_time}
    people: {P1: {role: foreman}}
fails SUB-08f at parties.inspector.name
    parties: {inspector: {name: Northbank}, applicator: {name: Northbank}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.choice_groups import plain
from specgen.judging.rule import STOP, Found, Rule, draft, found
from specgen.judging.three_valued import every, somebody, which
from specgen.quantities.comparison import less

RULE = Rule(
    "SUB-08",
    "People named and qualified",
    remedy="Complete before submitting.",
    steps="site_conditions",
    documents="D04",
    manual=__doc__,
)

NAMED = ("foreman", "sprayer", "sealant_applicator")
QUALIFIED = (*NAMED, "inspector")


@RULE.clause(
    "a",
    STOP,
    "The qualification sheet has no certificate.",
    each="people",
    needs="people.*.role people.*.certificates",
    basis="guide_eifs_p25",
)
def no_certificate(person: Any) -> Iterator[Found]:
    """A person who must be qualified shows no certificate."""
    if every(lambda: person.role in QUALIFIED, lambda: not person.certificates):
        yield found(person.certificates)


@RULE.clause(
    "b",
    STOP,
    "The inspector has {found} years on the system; {wanted} is the least.",
    each="people",
    needs="people.*.role people.*.years_on_system",
    limit="inspector.years_on_system",
)
def inspector_new_to_system(person: Any, limit: Any) -> Iterator[Found]:
    """An inspector has known the system for too short a time."""
    if every(lambda: person.role == "inspector", lambda: less(person.years_on_system, limit)):
        yield found(person.years_on_system, wanted=limit)


@RULE.clause(
    "c",
    STOP,
    "The inspector has {found} years in all; {wanted} is the least.",
    each="people",
    needs="people.*.role people.*.years",
    limit="inspector.years",
)
def inspector_new_to_trade(person: Any, limit: Any) -> Iterator[Found]:
    """An inspector has looked at EIFS for too short a time."""
    if every(lambda: person.role == "inspector", lambda: less(person.years, limit)):
        yield found(person.years, wanted=limit)


@RULE.clause(
    "d",
    STOP,
    "Nobody is named as {found}.",
    needs="package.purpose people.*.role",
    basis="guide_eifs_p25",
)
def role_open(project: Any) -> Iterator[Found]:
    """Nobody is named for a role that the work hangs on."""
    if not draft(project):
        yield from map(found, which(NAMED, lambda role: not somebody(project, role)))


@RULE.clause(
    "e",
    STOP,
    "Nobody is named as inspector.",
    needs="package.purpose contract.inspection_level people.*.role",
    basis="guide_eifs_p25",
)
def no_inspector(project: Any) -> Iterator[Found]:
    """The contract has the work inspected, and no inspector is named."""
    if not draft(project) and every(
        lambda: project.contract.inspection_level != "none", lambda: not somebody(project, "inspector")
    ):
        yield found()


@RULE.clause(
    "f",
    STOP,
    "The inspector may not be the applicator.",
    needs="parties.inspector.name parties.applicator.name",
    at="parties.inspector.name",
    basis="guide_eifs_p25",
)
def inspects_himself(project: Any) -> Iterator[Found]:
    """Inspector and applicator are one firm."""
    inspector = project.parties.inspector.name
    if plain(inspector) == plain(project.parties.applicator.name):
        yield found(inspector)
