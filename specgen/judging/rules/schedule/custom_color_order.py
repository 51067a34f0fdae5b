"""A custom color is ordered early enough, once for the mockup and once for the job.

Why: a custom color is made to order, and the mockup comes before the job. Ordered after acceptance, it
keeps an empty scaffold waiting.

passes
    colors: {C1: {kind: custom, lead_time_days: 21}}
    schedule: {color_sample_order_on: 2027-03-01, color_main_order_on: 2027-05-01, spray_start: 2027-06-14}
    mockup: {planned_on: 2027-03-22}
fails SCH-02a at schedule.color_sample_order_on
    colors: {C1: {kind: custom, lead_time_days: 21}}
    schedule: {color_sample_order_on: 2027-03-01}
    mockup: {planned_on: 2027-03-15}
fails SCH-02b at schedule.color_main_order_on
    colors: {C1: {kind: custom, lead_time_days: 21}}
    schedule: {color_main_order_on: 2027-06-01, spray_start: 2027-06-14}
fails SCH-02c at colors.C1.lead_time_days
    colors: {C1: {kind: custom, lead_time_days: 10}}
"""

from collections.abc import Callable
from datetime import date

from specgen.computing.mockup_days import count_days_to_primer
from specgen.judging.rule import CAUTION, STOP, Rule, Violations, violation
from specgen.model.absence import all_known, read_all
from specgen.model.dates import days_after
from specgen.model.typed_views import Color, Description
from specgen.quantities.comparison import more

RULE = Rule(
    "SCH-02",
    "Custom color ordered in time",
    remedy="Order the custom color in time, for the mockup and for the work.",
    steps="mockup primer",
    documents="D13 D14",
)


@RULE.test(
    "a",
    STOP,
    "The sample color arrives on {found}; the mockup needs it on {wanted}.",
    each="colors",
    at="schedule.color_sample_order_on",
    basis="practice",
    remedy="Order the sample color earlier, or move the mockup.",
)
def sample_late(color: Color, project: Description) -> Violations:
    """The color for the mockup arrives after its first primer, or its start where drying before that is not told."""
    yield from _late(color, lambda: project.schedule.color_sample_order_on, lambda: _find_need(project))


@RULE.test(
    "b",
    STOP,
    "The color for the work arrives on {found}; spraying starts on {wanted}.",
    each="colors",
    at="schedule.color_main_order_on",
    basis="practice",
    step="primer",
    remedy="Order the color for the work earlier, or move the start of spraying.",
)
def color_late(color: Color, project: Description) -> Violations:
    """The color for the job arrives after spraying was to start."""
    yield from _late(color, lambda: project.schedule.color_main_order_on, lambda: project.schedule.spray_start)


RULE.clause(
    "c",
    CAUTION,
    "A lead time of {found} d is planned for a custom color; about {wanted} d is usual.",
    when="color.kind = custom and color.lead_time_days < limit",
    limit="color.custom_lead",
    remedy="Get the lead time in writing; the manufacturer's figure governs.",
)


def _find_need(project: Description) -> date:
    """The day of the first coat of primer of the mockup, at the latest on its last day."""
    start = project.mockup.planned_on
    before, days = count_days_to_primer(project, start) or 0, project.mockup.get("duration_days")
    return days_after(start, before if days is None else min(before, days))


def _late(color: Color, ordered_on: Callable[[], date], wanted_on: Callable[[], date]) -> Violations:
    """The day a custom color arrives, where that is later than it is wanted."""

    def dates() -> tuple[date, date]:
        ordered, lead, wanted = read_all(ordered_on, lambda: color.lead_time_days, wanted_on)
        return days_after(ordered, lead), wanted

    if all_known(lambda: color.kind == "custom", lambda: more(*dates())):
        arrives, wanted = dates()
        yield violation(arrives, wanted=wanted)
