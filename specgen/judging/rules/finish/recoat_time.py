"""The next coat goes on before the one beneath is past its recoat time.

Why: a water-borne film grows hard and closed as it cures. A coat that comes too late lies on it without
biting in, and peels.

passes
    primer: {most_recoat_hours: 168}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 16}]}
fails FIN-15a at schedule.gaps.0.hours
    primer: {most_recoat_hours: 168}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 240}]}
"""

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Description, PlannedWait
from specgen.quantities.comparison import more
from specgen.resolving.limits_in_force import given_source

RULE = Rule(
    "FIN-15",
    "Recoat time",
    remedy="Shorten the wait, or abrade the film and get a letter of the finish manufacturer.",
    steps="release_primer gloss",
    documents="D08 D14",
)

# What follows each coat while it waits for the next.
NEXT = {"primer": ("release_primer", "gloss"), "gloss": ("gloss",)}


@RULE.test(
    "a",
    STOP,
    "A wait of {found} h before the next coat is planned; the recoat time ends after {wanted} h.",
    at="planned_wait.hours",
    basis="practice",
)
def past_recoat_time(wait: PlannedWait, project: Description) -> Violations:
    """The plan lets a coat wait longer than the finish manufacturer allows before the next one."""
    coat, to_step = read_all(lambda: wait.from_step, lambda: wait.to_step)
    if to_step not in NEXT.get(coat, ()):
        return
    hours, most = read_all(lambda: wait.hours, lambda: project[coat].most_recoat_hours)
    if more(hours, most):
        source = given_source(project.project, (coat, "most_recoat_hours"))
        yield violation(hours, wanted=most, sources=(source,))
