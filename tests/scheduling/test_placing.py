"""Tasks in time: rules that any order must keep, and the longest way through a graph by a general library of graphs."""

from datetime import date, datetime, time, timedelta
from itertools import pairwise

import networkx
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.model.calendar import DAY, WEEK, WorkCalendar, WorkDays
from specgen.scheduling.placing import Placed, find_chain, find_last_starts, list_activities, place
from specgen.scheduling.tasks import NOBODY, Clock, GivenDay, Offer, Task, take

START = datetime(2027, 3, 1)
GIVEN = GivenDay(START, ("schedule", "work_start"))
HOUR = timedelta(hours=1)
FACES, CREWS = ("E1", "E2", "E3"), ("red", "blue")


@st.composite
def task_lists(draw: st.DrawFn) -> list[Task]:
    """The tasks of up to three elevations, one behind the other on each: work of crews, drying, and holds."""
    tasks: list[Task] = []
    for face in FACES[: draw(st.integers(1, 3))]:
        before: tuple[str, ...] = ()
        for number in range(draw(st.integers(1, 6))):
            kind = draw(st.sampled_from(("work", "work", "shift", "drying", "hold")))
            hours = draw(st.integers(1, 30)) * HOUR
            mark = f"{face}.{number}"
            task = Task(mark, mark, "hold", after=before, not_before=GIVEN, elevation=face)
            if kind == "drying":
                task = task._replace(kind="drying", offers=take(hours))
            if kind in ("work", "shift"):
                length = min(hours, 6 * HOUR) if kind == "shift" else hours
                crews = draw(st.sampled_from((CREWS[:1], CREWS[1:], CREWS)))
                offers = tuple(Offer(crew, length) for crew in crews)
                task = task._replace(kind="work", offers=offers, in_one_shift=kind == "shift")
            tasks.append(task)
            before = (mark,)
    return tasks


CLOCKS = st.builds(
    lambda week, dates, start, hours: Clock(
        WorkCalendar(WorkDays(frozenset(week), frozenset(dates)), time(start), timedelta(hours=hours))
    ),
    st.sets(st.sampled_from(WEEK), max_size=5),
    st.sets(st.dates(date(2027, 3, 1), date(2027, 4, 1)), max_size=6),
    st.integers(0, 23),
    st.integers(6, 24),
)


@settings(deadline=None)
@given(task_lists(), CLOCKS)
def test_no_crew_is_in_two_places(tasks: list[Task], clock: Clock) -> None:
    placed = place(tasks, clock).values()
    for crew in CREWS:
        of_crew = sorted((one.start, one.end) for one in placed if one.offer.crew == crew)
        assert all(before[1] <= after[0] for before, after in pairwise(of_crew))


@settings(deadline=None)
@given(task_lists(), CLOCKS)
def test_nothing_begins_before_what_it_waits_for_is_over(tasks: list[Task], clock: Clock) -> None:
    placed = place(tasks, clock)
    assert set(placed) == {task.mark for task in tasks}
    for one in placed.values():
        assert all(placed[other].end <= one.start for other in one.waits_for)
        assert one.driven_by in (*one.waits_for, "")


@settings(deadline=None)
@given(task_lists(), CLOCKS)
def test_work_is_done_in_shifts_and_what_dries_takes_its_hours(tasks: list[Task], clock: Clock) -> None:
    calendar = clock.calendar
    assert calendar is not None
    for one in place(tasks, clock).values():
        if one.task.kind == "drying":
            assert one.end - one.start == one.offer.length
            continue
        shift = calendar.find_shift(one.start)
        assert shift.start <= one.start < shift.end
        assert calendar.days.is_worked(shift.start.date())
        if one.task.in_one_shift:
            assert one.end == one.start + one.offer.length <= shift.end
        if one.offer.length:
            last = calendar.find_shift(one.end - timedelta(seconds=1))
            assert last.start < one.end <= last.end


def again(placed: dict[str, Placed], clock: Clock, moved: str, days: int) -> datetime:
    """The end of all where one task begins so many days later, in the order and by the crews found before."""
    tasks = []
    for one in placed.values():
        given_day = GivenDay(one.start + days * DAY, ()) if one.task.mark == moved else one.task.not_before
        tasks.append(
            one.task._replace(
                after=tuple(dict.fromkeys(one.waits_for)),
                offers=(one.offer._replace(crew=NOBODY),),
                not_before=given_day,
            )
        )
    return max(one.end for one in place(tasks, clock).values())


@settings(deadline=None, max_examples=40)
@given(task_lists(), CLOCKS)
def test_moved_by_its_slack_an_activity_leaves_the_end_where_it_is(tasks: list[Task], clock: Clock) -> None:
    placed = place(tasks, clock)
    end = max(one.end for one in placed.values())
    for activity in list_activities(placed, clock):
        assert again(placed, clock, activity.mark, activity.spare.days) == end
        assert again(placed, clock, activity.mark, activity.spare.days + 1) > end


@settings(deadline=None)
@given(task_lists(), CLOCKS)
def test_the_chain_leads_from_the_first_to_the_last_without_a_break(tasks: list[Task], clock: Clock) -> None:
    placed = place(tasks, clock)
    chain = find_chain(placed)
    assert placed[chain[-1]].end == max(one.end for one in placed.values())
    assert placed[chain[0]].driven_by == ""
    for before, after in pairwise(chain):
        one = placed[after]
        assert one.driven_by == before
        # It begins as soon as the clock lets it once the one before is over.
        assert clock.first_start(one.task, placed[before].end, one.offer.length) == one.start


@settings(deadline=None)
@given(task_lists())
def test_without_a_calendar_the_end_is_the_longest_way_through_the_graph(tasks: list[Task]) -> None:
    # networkx, longest path of a directed graph without circles; crews joined in the order found.
    clock = Clock(WorkCalendar(WorkDays(frozenset()), time(), DAY))
    whole = [task._replace(in_one_shift=False) for task in tasks]
    placed = place(whole, clock)
    graph = networkx.DiGraph()
    for mark, one in placed.items():
        graph.add_edge((mark, "start"), (mark, "end"), weight=one.offer.length / HOUR)
        graph.add_edge("begin", (mark, "start"), weight=0)
        graph.add_edge((mark, "end"), "done", weight=0)
        graph.add_edges_from((((other, "end"), (mark, "start")) for other in one.waits_for), weight=0)
    length = networkx.dag_longest_path_length(graph)
    assert max(one.end for one in placed.values()) == START + length * HOUR
    # Those on a longest way have no slack: the way through each of them is as long.
    turned = graph.reverse()
    for mark, last in find_last_starts(placed, clock).items():
        to = _longest_to(graph, (mark, "start"))
        behind = _longest_to(turned, (mark, "start"))
        assert last - placed[mark].start == (length - to - behind) * HOUR


def _longest_to(graph: networkx.DiGraph, node: object) -> float:
    """The longest way to a node of a graph, from any other."""
    part = graph.subgraph({*networkx.ancestors(graph, node), node})
    return float(networkx.dag_longest_path_length(part))


def test_of_two_that_can_start_the_first_told_is_placed_first_and_the_later_one_waits() -> None:
    # Worked by hand: one crew, shifts 8 to 16 on every day. Both faces can start on March 1 at 8; E1 takes 4 h, then
    # dries 20 h; E2 takes 6 h from noon, 2 h of them on March 2; then E1 is dry and takes 2 h.
    clock = Clock(WorkCalendar(WorkDays(frozenset()), time(8), 8 * HOUR))
    tasks = [
        Task("E1.a", "", "work", (Offer("red", 4 * HOUR),), not_before=GIVEN),
        Task("E1.dry", "", "drying", take(20 * HOUR), ("E1.a",)),
        Task("E1.b", "", "work", (Offer("red", 2 * HOUR),), ("E1.dry",)),
        Task("E2.a", "", "work", (Offer("red", 6 * HOUR),), not_before=GIVEN),
    ]
    placed = place(tasks, clock)
    assert {mark: (one.start, one.end, one.driven_by) for mark, one in placed.items()} == {
        "E1.a": (datetime(2027, 3, 1, 8), datetime(2027, 3, 1, 12), ""),
        "E1.dry": (datetime(2027, 3, 1, 12), datetime(2027, 3, 2, 8), "E1.a"),
        "E2.a": (datetime(2027, 3, 1, 12), datetime(2027, 3, 2, 10), "E1.a"),
        "E1.b": (datetime(2027, 3, 2, 10), datetime(2027, 3, 2, 12), "E2.a"),
    }
    assert find_chain(placed) == ("E1.a", "E2.a", "E1.b")
    slack = {activity.mark: activity.spare.days for activity in list_activities(placed, clock)}
    assert slack == {"E1.a": 0, "E1.dry": 0, "E2.a": 0, "E1.b": 0}


@settings(deadline=None)
@given(task_lists(), CLOCKS, st.data())
def test_while_one_crew_sprays_no_other_works(tasks: list[Task], clock: Clock, data: st.DataObject) -> None:
    works = [task.mark for task in tasks if task.kind == "work"]
    sprayed = data.draw(st.sets(st.sampled_from(works))) if works else set()
    placed = place([task._replace(alone=task.mark in sprayed) for task in tasks], clock)
    assert clock.calendar is not None
    # Hour by hour: all lengths and shifts are whole hours.
    at_work = {mark: _list_hours(one, clock.calendar) for mark, one in placed.items() if one.task.kind == "work"}
    mist = {hour: mark for mark, hours in at_work.items() for hour in hours if mark in sprayed}
    assert len(mist) == sum(len(hours) for mark, hours in at_work.items() if mark in sprayed)
    for mark, hours in at_work.items():
        own = [hour for hour in hours if mist.get(hour, mark) == mark]
        assert len(own) * HOUR == placed[mark].offer.length
        assert own[0] == placed[mark].start and own[-1] + HOUR == placed[mark].end


def _list_hours(one: Placed, calendar: WorkCalendar) -> list[datetime]:
    """The hours of the shifts from the start of a task to its end."""
    hours = (one.start + number * HOUR for number in range((one.end - one.start) // HOUR))
    return [hour for hour in hours if calendar.find_start(hour) == hour]


def test_other_work_goes_on_when_the_spraying_is_over() -> None:
    # By hand, shifts 8 to 16: the face is dry on March 2 at 8 and sprayed for 4 h. Blue has 10 h of work on another:
    # 8 h on March 1, and on March 2 from 12 to 14.
    clock = Clock(WorkCalendar(WorkDays(frozenset()), time(8), 8 * HOUR))
    tasks = [
        Task("E1.dry", "", "drying", take(32 * HOUR), not_before=GIVEN),
        Task("E1.spray", "", "work", (Offer("red", 4 * HOUR),), ("E1.dry",), alone=True),
        Task("E2.mesh", "", "work", (Offer("blue", 10 * HOUR),), not_before=GIVEN),
    ]
    placed = place(tasks, clock)
    assert (placed["E1.spray"].start, placed["E1.spray"].end) == (datetime(2027, 3, 2, 8), datetime(2027, 3, 2, 12))
    assert (placed["E2.mesh"].start, placed["E2.mesh"].end) == (datetime(2027, 3, 1, 8), datetime(2027, 3, 2, 14))
    # The mesh ends last: it cannot begin later, though the face could be sprayed two hours later.
    last = find_last_starts(placed, clock)
    assert last["E2.mesh"] == placed["E2.mesh"].start


def test_spraying_waits_for_what_is_under_way() -> None:
    # Blue began on March 1 at 8, before the face is dry on the same day at 10, and is done at 14: red sprays from 14.
    clock = Clock(WorkCalendar(WorkDays(frozenset()), time(8), 8 * HOUR))
    tasks = [
        Task("E2.mesh", "", "work", (Offer("blue", 6 * HOUR),), not_before=GIVEN),
        Task("E1.rasp", "", "work", (Offer("red", 2 * HOUR),), not_before=GIVEN),
        Task("E1.spray", "", "work", (Offer("red", 2 * HOUR),), ("E1.rasp",), alone=True),
    ]
    placed = place(tasks, clock)
    assert placed["E1.spray"].start == datetime(2027, 3, 1, 14)
    assert set(placed["E1.spray"].waits_for) == {"E1.rasp", "E2.mesh"}


def test_the_crew_that_is_done_first_is_taken() -> None:
    clock = Clock(WorkCalendar(WorkDays(frozenset()), time(8), 8 * HOUR))
    offers = (Offer("red", 6 * HOUR), Offer("blue", 3 * HOUR))
    tasks = [Task(f"E{n}.a", "", "work", offers, not_before=GIVEN) for n in (1, 2, 3)]
    # Blue is done with E1 at 11; E2 takes blue till 14, as red alone does; red is told first. E3: blue till 14.
    placed = place(tasks, clock)
    assert [(one.offer.crew, one.end.hour) for one in placed.values()] == [("blue", 11), ("red", 14), ("blue", 14)]


def test_a_date_that_is_given_drives_what_could_begin_earlier() -> None:
    clock = Clock(None)
    later = GivenDay(START + 3 * DAY, ("mockup", "planned_on"))
    tasks = [
        Task("review", "", "review", take(DAY), not_before=GIVEN),
        Task("mockup", "", "mockup", take(DAY), ("review",), later),
    ]
    placed = place(tasks, clock)
    assert (placed["mockup"].start, placed["mockup"].driven_by) == (START + 3 * DAY, "")
    assert find_chain(placed) == ("mockup",)
    assert [activity.spare.days for activity in list_activities(placed, clock)] == [2, 0]


DAYS = Clock(WorkCalendar(WorkDays(frozenset()), time(8), 8 * HOUR))


def test_a_crew_that_waits_takes_what_is_ready_before_what_it_waits_for() -> None:
    # Red waits from noon for E1 to dry until the third day at noon; blue is done with E2 on the second at 16, so
    # red goes on there on the third at 8, four hours before E1 is dry.
    tasks = [
        Task("E1.coat", "", "work", (Offer("red", 4 * HOUR),), not_before=GIVEN),
        Task("E1.dry", "", "drying", take(48 * HOUR), ("E1.coat",)),
        Task("E1.next", "", "work", (Offer("red", 2 * HOUR),), ("E1.dry",)),
        Task("E2.coat", "", "work", (Offer("blue", 16 * HOUR),), not_before=GIVEN),
        Task("E2.next", "", "work", (Offer("red", 2 * HOUR),), ("E2.coat",)),
    ]
    placed = place(tasks, DAYS)
    assert placed["E2.next"].start == datetime(2027, 3, 3, 8)
    assert placed["E1.next"].start == datetime(2027, 3, 3, 12)


def test_a_crew_goes_on_past_what_dries_before_it_turns_elsewhere() -> None:
    # Without it red would begin E2 at 9, while E1 dries until 12.
    tasks = [
        Task("E1.mask", "", "work", (Offer("red", HOUR),), not_before=GIVEN, goes_on=True),
        Task("E1.dry", "", "drying", take(3 * HOUR), ("E1.mask",)),
        Task("E1.coat", "", "work", (Offer("red", HOUR),), ("E1.dry",)),
        Task("E2.mask", "", "work", (Offer("red", HOUR),), not_before=GIVEN),
    ]
    assert [placed.start.hour for mark, placed in place(tasks, DAYS).items() if mark != "E1.dry"] == [8, 12, 13]
    other = [tasks[0], tasks[1], tasks[2]._replace(offers=(Offer("blue", HOUR),)), tasks[3]]
    assert place(other, DAYS)["E2.mask"].start.hour == 9  # another crew coats: red is free


def test_a_task_that_is_not_to_wait_begins_late_enough() -> None:
    # Two hours from 14 and the coat of 7 h from 8 of the next day are over at 15, 25 h on; from 8 of the second day on
    # they end on the third at 15, 31 h on: begun at 14 they are within 26 h, and nothing is gained by 24.
    tasks = [
        Task("rasp", "", "work", (Offer("red", 6 * HOUR),), not_before=GIVEN),
        Task("mask", "", "work", (Offer("red", 2 * HOUR),), ("rasp",), goes_on=True, within=26 * HOUR),
        Task("coat", "", "work", (Offer("red", 7 * HOUR),), ("mask",), in_one_shift=True),
    ]
    assert place(tasks, DAYS)["mask"].start == datetime(2027, 3, 1, 14)
    never = [tasks[0], tasks[1]._replace(within=24 * HOUR), tasks[2]]
    assert place(never, DAYS)["mask"].start == datetime(2027, 3, 1, 14)
