"""Primer and gloss are read in one kind of cup, and thinned into one window of cup time.

Why: thick material spits and leaves orange peel, thin material runs and lets the flakes drift. Only one
cup and one window make every pail like that of the mockup.

passes
    primer: {cup: zahn_4, cup_least: 25 s, cup_most: 35 s}
    gloss: {cup: zahn_4, cup_least: 25 s, cup_most: 35 s}
fails FIN-05a at primer.cup
    primer: {cup: ford_4}
fails FIN-05b at gloss.cup
    gloss: {cup: zahn_2}
fails FIN-05c at primer.cup_least
    primer: {cup_least: 20 s}
fails FIN-05d at gloss.cup_least
    gloss: {cup_least: 20 s}
fails FIN-05e at primer.cup_most
    primer: {cup_most: 40 s}
fails FIN-05f at gloss.cup_most
    gloss: {cup_most: 40 s}
fails FIN-05g at log.0.cup_time
    primer: {cup_least: 25 s, cup_most: 35 s}
    log: [{step: primer, cup_time: 38 s}]
fails FIN-05h at log.0.cup_time
    gloss: {cup_least: 25 s, cup_most: 35 s}
    log: [{step: gloss, cup_time: 22 s}]
"""

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.site_limits import planned
from specgen.model.typed_views import Description, SiteRecordEntry
from specgen.quantities.comparison import less, more

RULE = Rule(
    "FIN-05",
    "Cup time window",
    remedy="Thin or warm the coating until its cup time is within the limits.",
    steps="setup primer gloss",
    documents="D08 D12b",
)

RULE.clause(
    "a",
    STOP,
    "Cup of the primer: {found}; required: {wanted}.",
    when="primer.cup != limit",
    limit="primer.cup",
    step="primer",
    remedy="Use the required cup; another only with a letter of the manufacturer that gives its cup time.",
)

RULE.clause(
    "b",
    STOP,
    "Cup of the gloss: {found}; required: {wanted}.",
    when="gloss.cup != limit",
    limit="gloss.cup",
    step="gloss",
    remedy="Use the required cup; another only with a letter of the manufacturer that gives its cup time.",
)

RULE.clause(
    "c",
    STOP,
    "Minimum primer cup time planned: {found}; permitted: {wanted}. Thinner primer runs.",
    when="primer.cup_least < limit",
    limit="primer.cup_least",
    step="primer",
    remedy="Raise the minimum to {primer.cup_least}.",
)

RULE.clause(
    "d",
    STOP,
    "Minimum gloss cup time planned: {found}; permitted: {wanted}. Thinner gloss runs.",
    when="gloss.cup_least < limit",
    limit="gloss.cup_least",
    step="gloss",
    remedy="Raise the minimum to {gloss.cup_least}.",
)

RULE.clause(
    "e",
    STOP,
    "Maximum primer cup time planned: {found}; permitted: {wanted}. Thicker primer sprays rough.",
    when="primer.cup_most > limit",
    limit="primer.cup_most",
    step="primer",
    remedy="Lower the maximum to {primer.cup_most}; thin or warm the primer.",
)

RULE.clause(
    "f",
    STOP,
    "Maximum gloss cup time planned: {found}; permitted: {wanted}. Thicker gloss sprays rough.",
    when="gloss.cup_most > limit",
    limit="gloss.cup_most",
    step="gloss",
    remedy="Lower the maximum to {gloss.cup_most}; thin or warm the gloss.",
)

OFF_WINDOW = (
    "Do not spray this pail. Bring it to its temperature, stir, and thin or warm it until the cup reads within its "
    "limits; recoat to a natural break what was sprayed from it."
)


@RULE.test(
    "g",
    STOP,
    "The pail of primer ran {found}; limit {wanted}.",
    at="log.cup_time",
    basis="practice",
    step="primer",
    remedy=OFF_WINDOW,
)
def primer_off_window(log: SiteRecordEntry, project: Description) -> Violations:
    """A pail of primer is thicker or thinner than planned."""
    if log.step == "primer":
        yield from _list_off_window(log, project)


@RULE.test(
    "h",
    STOP,
    "The pail of gloss ran {found}; limit {wanted}.",
    at="log.cup_time",
    basis="practice",
    step="gloss",
    remedy=OFF_WINDOW,
)
def gloss_off_window(log: SiteRecordEntry, project: Description) -> Violations:
    """A pail of gloss is thicker or thinner than planned."""
    if log.step == "gloss":
        yield from _list_off_window(log, project)


def _list_off_window(log: SiteRecordEntry, project: Description) -> Violations:
    """The end of the window of the coat that a cup time lies beyond."""
    least, most = planned(project, log.step, "cup_least"), planned(project, log.step, "cup_most")
    if less(log.cup_time, least.value):
        yield violation(log.cup_time, wanted=least.value, sources=least.sources)
    elif more(log.cup_time, most.value):
        yield violation(log.cup_time, wanted=most.value, sources=most.sources)
