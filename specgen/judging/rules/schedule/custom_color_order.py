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

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.judging.three_valued import every
from specgen.model.dates import days_after
from specgen.quantities.comparison import less, more

RULE = Rule(
    "SCH-02",
    "Custom color ordered in time",
    remedy="Order about 3 weeks ahead, twice: mockup and job.",
    steps="mockup primer",
    documents="D13 D14",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Sample color arrives on {found}; the mockup starts on {wanted}.",
    each="colors",
    needs="colors.*.kind colors.*.lead_time_days mockup.planned_on schedule.color_sample_order_on",
    basis="practice",
)
def sample_late(color: Any, project: Any) -> Iterator[Found]:
    """The color for the mockup arrives after the mockup was to start."""

    def arrives() -> Any:
        return days_after(project.schedule.color_sample_order_on, color.lead_time_days)

    if every(lambda: color.kind == "custom", lambda: more(arrives(), project.mockup.planned_on)):
        yield found(arrives(), wanted=project.mockup.planned_on)


@RULE.clause(
    "b",
    STOP,
    "Color for the job arrives on {found}; spraying starts on {wanted}.",
    each="colors",
    needs="colors.*.kind colors.*.lead_time_days schedule.spray_start schedule.color_main_order_on",
    basis="practice",
    step="primer",
)
def color_late(color: Any, project: Any) -> Iterator[Found]:
    """The color for the job arrives after spraying was to start."""

    def arrives() -> Any:
        return days_after(project.schedule.color_main_order_on, color.lead_time_days)

    if every(lambda: color.kind == "custom", lambda: more(arrives(), project.schedule.spray_start)):
        yield found(arrives(), wanted=project.schedule.spray_start)


@RULE.clause(
    "c",
    STOP,
    "{found} days are planned for a custom color; about {wanted} is usual.",
    each="colors",
    needs="colors.*.kind colors.*.lead_time_days",
    limit="color.custom_lead",
)
def lead_too_short(color: Any, limit: Any) -> Iterator[Found]:
    """Less time is planned for a custom color than it usually takes."""
    if every(lambda: color.kind == "custom", lambda: less(color.lead_time_days, limit)):
        yield found(color.lead_time_days, wanted=limit)
