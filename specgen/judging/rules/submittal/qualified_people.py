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

from specgen.judging.choice_groups import normalize
from specgen.judging.papers import to_enter
from specgen.judging.rule import STOP, Rule, Violations, is_draft, violation
from specgen.judging.three_valued import is_held, members_where
from specgen.model.absence import all_known, read_all
from specgen.model.typed_views import Description, Person

RULE = Rule(
    "SUB-08",
    "Key personnel named and qualified",
    remedy="Name qualified people, and attach their certificates.",
    steps="site_conditions",
    documents="D04",
)

NAMED = ("foreman", "sprayer", "sealant_applicator")
QUALIFIED = (*NAMED, "inspector")


@RULE.test(
    "a",
    STOP,
    "The qualification sheet has no certificate.",
    at="person.certificates",
    basis="guide_eifs_p25",
    remedy="Attach the certificate.",
)
def no_certificate(person: Person) -> Violations:
    """A person who must be qualified shows no certificate."""
    if all_known(lambda: person.role in QUALIFIED, lambda: not person.certificates):
        yield violation(person.certificates)


RULE.clause(
    "b",
    STOP,
    "The inspector has {found} years on the system; minimum {wanted}.",
    when="person.role = inspector and person.years_on_system < limit",
    limit="inspector.years_on_system",
    remedy="Name an inspector with at least {inspector.years_on_system} years on the system.",
)

RULE.clause(
    "c",
    STOP,
    "The inspector has {found} years of experience; minimum {wanted}.",
    when="person.role = inspector and person.years < limit",
    limit="inspector.years",
    remedy="Name an inspector with at least {inspector.years} years of experience.",
)


@RULE.test(
    "d",
    STOP,
    "Nobody is named as {found:or}.",
    at="people.*.role",
    basis="guide_eifs_p25",
    remedy="Name a person for each role, with certificates.",
)
def role_open(project: Description) -> Violations:
    """Nobody is named for a role that the work hangs on."""
    if not is_draft(project):
        for role in members_where(NAMED, lambda role: not is_held(project, role)):
            yield violation(role, to_add=to_enter("people", [("role", role)]))


@RULE.test(
    "e",
    STOP,
    "Nobody is named as inspector.",
    at="people.*.role",
    basis="guide_eifs_p25",
    remedy="Name an inspector who is independent of the applicator.",
)
def no_inspector(project: Description) -> Violations:
    """The contract has the work inspected, and no inspector is named."""
    if not is_draft(project) and all_known(
        lambda: project.contract.inspection_level != "none", lambda: not is_held(project, "inspector")
    ):
        yield violation(to_add=to_enter("people", [("role", "inspector")]))


@RULE.test(
    "f",
    STOP,
    "The inspector is also the applicator.",
    at="parties.inspector.name",
    basis="guide_eifs_p25",
    remedy="Name an inspector who is independent of the applicator.",
    why="few find the faults of their own work",
)
def inspects_himself(project: Description) -> Violations:
    """Inspector and applicator are one firm."""
    inspector, applicator = read_all(lambda: project.parties.inspector.name, lambda: project.parties.applicator.name)
    if normalize(inspector) == normalize(applicator):
        yield violation(inspector)
