"""What lies before the work on the wall as tasks: review, colors ordered, and the mockup with its acceptance."""

from collections.abc import Iterator
from datetime import timedelta

from specgen.computing.calendars import midnight
from specgen.computing.time.earliest_start import is_ordered_behind_review
from specgen.model.field import Path
from specgen.model.typed_views import Color, Description
from specgen.model.working import Working
from specgen.scheduling.tasks import GivenDay, Task, take

# Marks of tasks of the whole project; those of the mockup from its first coat of primer on stand apart, where known.
REVIEW, MOCKUP, COATS, ACCEPTANCE = "review", "mockup", "mockup.coats", "mockup.hold"
_ORDER = ("schedule", "color_sample_order_on")


def list_tasks_before(project: Description, earliest: Working) -> Iterator[Task]:
    """Review, sample colors and mockup, as the earliest start reckons them."""
    days = {row.symbol: row.value for row in earliest.inputs} | {step.symbol: step.value for step in earliest.steps}
    review = take(timedelta(days=round(days["R"])))
    submitted = find_given_day(project, ("schedule", "submit_on"))
    yield Task(REVIEW, "Review of the submittal", "review", review, not_before=submitted)
    samples = list(_list_deliveries(project, "sample", _ORDER))
    if is_ordered_behind_review(days):
        samples = [task._replace(after=(REVIEW,)) for task in samples]
    yield from samples
    starts = None if submitted is None else GivenDay(submitted.moment + timedelta(days=round(days["M"])), _ORDER)
    built = list(_list_mockup(project, tuple(task.mark for task in samples), round(days.get("c", 0)), starts))
    yield from built
    accepted = find_given_day(project, ("mockup", "accepted_on"))
    hold = Task(ACCEPTANCE, "Acceptance of the mockup", "hold", step="mockup")
    # The days of the mockup hold its acceptance, on the last of them.
    yield hold._replace(not_before=accepted) if accepted else hold._replace(after=(built[-1].mark,), at_once=True)


def _list_mockup(
    project: Description, samples: tuple[str, ...], to_primer: int, starts: GivenDay | None
) -> Iterator[Task]:
    """The mockup, with the days before its first coat of primer apart, as the sample color is needed behind them.

    It starts no sooner than it can go on with its color.
    """
    days, planned = project.mockup.duration_days, find_given_day(project, ("mockup", "planned_on"))
    if not to_primer:
        length = take(timedelta(days=days))
        yield Task(MOCKUP, "Mockup, with drying", "mockup", length, (REVIEW, *samples), planned)
        return
    held = planned if starts is None or (planned and planned.moment >= starts.moment) else starts
    yield Task(MOCKUP, "Mockup, to primer", "mockup", take(timedelta(days=to_primer)), (REVIEW,), held)
    rest = take(timedelta(days=days - to_primer))
    yield Task(COATS, "Mockup, from primer, with drying", "mockup", rest, (*samples, MOCKUP))


def list_main_orders(project: Description) -> Iterator[Task]:
    """The colors of the work from order to delivery, where the order is dated."""
    yield from _list_deliveries(project, "order", ("schedule", "color_main_order_on"))


def find_given_day(project: Description, path: Path) -> GivenDay | None:
    """The beginning of the day that a field names; None where it is not given."""
    day = project.project.get(path)
    return None if day is None else GivenDay(midnight(day), path)


def _list_deliveries(project: Description, name: str, path: Path) -> Iterator[Task]:
    words = {"sample": "Sample color", "order": "Color for the work"}[name]
    ordered = find_given_day(project, path)
    for color in _list_custom(project) if ordered else ():
        lead = color.get("lead_time_days")
        if lead is not None:
            length, mark = take(timedelta(days=lead)), order_mark(color.mark, name)
            yield Task(mark, f"{words} {color.mark}", "delivery", length, not_before=ordered)


def _list_custom(project: Description) -> list[Color]:
    return [color for color in project.colors if color.get("kind") == "custom"] if project.colors.is_given() else []


def order_mark(color: str, name: str = "order") -> str:
    """The mark of the delivery of a color, for the work or as a sample."""
    return f"{color}.{name}"
