"""The mockup is finished before the work starts.

Why: the accepted mockup is the standard the wall is judged by. Work that begins before it has
nothing to be held against.

passes
    mockup: {planned_on: 2027-03-01, duration_days: 14}
    schedule: {work_start: 2027-03-15}
fails MOC-01a at mockup.planned_on
    mockup: {planned_on: 2027-03-01, duration_days: 14}
    schedule: {work_start: 2027-03-08}
fails MOC-01b at mockup.duration_days
    smoothing: {between_hours: 8}
    gloss: {touch_dry_hours: 4}
    walls:
      W1:
        attachment: {cure_hours: 24}
        base_coat: {first_pass_dry_hours: 12, cure_hours: 24}
        mesh: {layers: [{kind: standard}]}
    mockup: {duration_days: 1}
"""

from specgen.computing.time.minimum_elapsed import is_on_mockup
from specgen.judging.rule import CAUTION, STOP, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.dates import days_after
from specgen.model.typed_views import Description, Wall
from specgen.quantities.comparison import less
from specgen.quantities.quantity import Quantity, round_quantity

RULE = Rule(
    "MOC-01",
    "Mockup before the work",
    remedy="Build and get the mockup accepted before the work starts.",
    steps="mockup",
    documents="D09 D14",
)


@RULE.test(
    "a",
    STOP,
    "The mockup ends on {found}; the work starts on {wanted}.",
    at="mockup.planned_on",
    basis="practice",
    remedy="Plan the mockup and its acceptance before the work: it is the standard of approval.",
)
def ends_after_start(project: Description) -> Violations:
    """The mockup ends after the work has begun."""
    start, days, work = read_all(
        lambda: project.mockup.planned_on, lambda: project.mockup.duration_days, lambda: project.schedule.work_start
    )
    end = days_after(start, days - 1)  # the day of the start is the first of them
    if not less(end, work):
        yield violation(end, wanted=work)


@RULE.test(
    "b",
    CAUTION,
    "The mockup is planned to take {found} d; its coats alone dry for {wanted}.",
    each="walls",
    at="mockup.duration_days",
    basis="computed",
    remedy="Plan at least the drying times, and the days of work between them.",
)
def shorter_than_drying(wall: Wall, project: Description, minimum_elapsed: Computed) -> Violations:
    """The mockup is over before its coats can have dried."""
    if not is_on_mockup(wall):
        return
    days, drying = read_all(lambda: project.mockup.duration_days, minimum_elapsed)
    if less(Quantity.of(days, "d"), drying.quantity):
        yield violation(days, wanted=round_quantity(drying.quantity, 3))
