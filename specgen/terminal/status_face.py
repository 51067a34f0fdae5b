"""What `status --elevation` prints: the steps of one elevation with dates, crews, areas and releases."""

from collections.abc import Iterator

from specgen.model.status import AreaStatus, FaceStatus, ProjectStatus, StepState, StepStatus, tell_moment, tell_time
from specgen.model.value_text import count
from specgen.quantities.format import format_decimal
from specgen.terminal.ranges import join_marks
from specgen.terminal.screen import Line
from specgen.terminal.status_text import list_next, list_owed, tell_head
from specgen.terminal.status_words import tell_remark, tell_state

_STYLES = {StepState.FAILED: "stop", StepState.WAITS: "caution", StepState.RELEASED: "good"}
_UNRECORDED = (StepState.NOT_BEGUN, StepState.SKIPPED)


def list_face_lines(status: ProjectStatus, face: FaceStatus) -> Iterator[Line]:
    """The lines of one elevation: what is next, what is owed, what failed, the other steps, the names of the rest."""
    yield from tell_head(status)
    name = f" {face.name}" if face.name else ""
    wall = f", wall {face.wall}" if face.wall else ""
    yield Line(f"{face.elevation}{name}{wall}", style="bold")
    yield from list_next([face])
    yield from list_owed(face.owed)
    recorded = [step for step in face.steps if step.areas or step.state not in _UNRECORDED]
    against = [step for step in recorded if step.state is StepState.FAILED or step.early or step.pending]
    for title, steps in (
        ("Failed, begun too early, or without disposition", against),
        ("Steps", [step for step in recorded if step not in against]),
    ):
        yield from (Line(), Line(title, style="bold")) if steps else ()
        for step in steps:
            yield from _tell_step(step)
    yield from _name_others(face)
    told = [tell_remark(remark) for remark in (*face.remarks, *status.remarks, *status.failed)]
    if told:
        yield from (Line(), Line("Also", style="bold"))
        yield from (Line(f"  {text}", 4) for text in dict.fromkeys(told))


def _tell_step(step: StepStatus) -> Iterator[Line]:
    state = tell_state(step) if len(step.areas) != 1 else tell_state(step.areas[0])
    state = tell_state(step) if step.missing else state
    by = f" by {step.releaser.name}" if step.releaser is not None and step.state is StepState.WAITS else ""
    yield Line(f"{step.step.title}: {state}{by}", 4, state, _STYLES.get(step.state, ""))
    if step.hours is not None and step.state is StepState.DRIES:
        yield Line(f"  dries {format_decimal(step.hours.hours, 4)} h ({step.hours.source})", 4)
    for area in step.areas:
        yield from _tell_area(area, alone=len(step.areas) == 1 and not step.missing)
    if step.missing and not step.step.releases:
        yield Line(f"  not begun: {join_marks(step.missing)}", 4)


def _tell_area(area: AreaStatus, *, alone: bool) -> Iterator[Line]:
    where = area.area or ("" if alone else "whole face")
    where += f"{', ' if where else ''}worked anew" if area.again else ""
    told = [*_tell_work(area), *([] if alone else [tell_state(area)])]
    if told:
        yield Line(f"  {f'{where}: ' if where else ''}{'; '.join(told)}", 4)
    for remark in (*area.reasons, *area.early):
        yield Line(f"    {tell_remark(remark)}", 6, "", "stop")
    for remark in area.pending:
        yield Line(f"    without disposition: {tell_remark(remark)}", 6, "", "caution")
    for remark in area.remarks:
        yield Line(f"    {tell_remark(remark)}", 6)


def _tell_work(area: AreaStatus) -> Iterator[str]:
    """`2027-06-15 07:00 to 10:00`, crews, panels, coats."""
    if area.began is not None:
        same_day = area.ended is not None and area.ended.date() == area.began.at.date()
        ended = f"{area.ended:%H:%M}" if same_day else tell_time(area.ended) if area.ended else ""
        yield f"{tell_moment(area.began)}{f' to {ended}' if ended and area.began.timed else ''}"
    if area.crews:
        yield f"{'crew' if len(area.crews) == 1 else 'crews'} {', '.join(area.crews)}"
    if area.panels:
        yield f"{'panel' if len(area.panels) == 1 else 'panels'} {join_marks(area.panels)}"
    done, due = area.coats
    if due > 1:
        yield f"coat {done} of {due}"


def _name_others(face: FaceStatus) -> Iterator[Line]:
    """The steps without an entry."""
    for state, words in (
        (StepState.SKIPPED, "No entry, and a later step has begun"),
        (StepState.NOT_BEGUN, "Not begun"),
    ):
        names = [step.step.title for step in face.steps if step.state is state and not step.areas]
        if names:
            yield from (Line(), Line(f"{words} ({count(len(names), 'step')})", style="bold"))
            yield Line(f"  {'; '.join(names)}", 2)
