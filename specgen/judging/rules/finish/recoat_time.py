"""The next coat goes on before the one beneath is past its recoat time.

Why: a water-borne film grows hard and closed as it cures. A coat that comes too late lies on it without
biting in, and peels.

passes
    primer: {most_recoat_hours: 168}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 16}]}
fails FIN-15a at schedule.gaps.0.hours
    primer: {most_recoat_hours: 168}
    schedule: {gaps: [{from_step: primer, to_step: gloss, hours: 240}]}
fails FIN-15b at log.1.started_at
    elevations: {E1: {wall: W1}}
    gloss: {most_recoat_hours: 72}
    log:
      - {step: gloss, coat: 1, elevation: E1, date: 2027-06-16, started_at: 08:00, ended_at: 09:00}
      - {step: gloss, coat: 2, elevation: E1, date: 2027-06-21, started_at: 09:00}
"""

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.site_limits import planned
from specgen.judging.site_work import hours_since, tells_of_work
from specgen.model.absence import read_all
from specgen.model.typed_views import Description, PlannedWait, SiteRecordEntry
from specgen.quantities.comparison import more
from specgen.recording.elapsed import hours_text
from specgen.recording.history import History
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


@RULE.test(
    "b",
    STOP,
    "This coat was begun {found} after the one before it; the recoat time ends after {wanted}.",
    at="log.started_at",
    basis="practice",
    step="gloss",
    remedy=(
        "Stop. Test the adhesion there and prepare the film per the finish manufacturer's written instructions, or "
        "take the coat off to a natural break; go on with the manufacturer's letter."
    ),
)
def coat_too_late(log: SiteRecordEntry, history: History, project: Description) -> Violations:
    """A coat of gloss went on when the primer or the coat below it was past its recoat time."""
    if log.step != "gloss" or not tells_of_work(log):
        return
    coat = log.coat
    below = "primer" if coat == 1 else "gloss"
    hours = hours_since(log, below, history, project, coat=None if coat == 1 else coat - 1)
    if hours is not None:
        most = planned(project, below, "most_recoat_hours")
        if hours > most.value:
            yield violation(hours_text(hours), wanted=hours_text(most.value), sources=most.sources)
