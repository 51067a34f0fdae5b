"""The hold point before a step on an elevation, and whether the site record tells of its release."""

from collections.abc import Sequence

from specgen.model.project import Project
from specgen.model.standard import Standards, Step
from specgen.model.status import FaceStatus, StepState, StepStatus, tell_moment
from specgen.recording.gathering import find_wall
from specgen.recording.status import Asked, find_status
from specgen.scheduling.applying import list_steps
from specgen.weather.going import Before

_SAID = {
    StepState.FAILED: "refused",
    StepState.UNDER_WAY: "the work is not over",
    StepState.DRIES: "drying",
    StepState.WAITS: "not released",
    StepState.NOT_BEGUN: "not begun",
}


def find_before(project: Project, standards: Standards, step: str, elevation: str, asked: Asked) -> Before | None:
    """The hold point before a step; its release is not known without a record or an elevation. None where it has none.

    Without an elevation it is that of the first wall.
    """
    marks = project.members.get(("elevations",), ())
    wall = find_wall(project, elevation) if elevation else next(iter(project.members.get(("walls",), ())), "")
    hold = _find_hold(list(list_steps(project, standards, wall)), step)
    if hold is None:
        return None
    what = _say(hold)
    if not any(map(project.records.of, ("log", "release", "inspection"))):
        return Before(what)
    if not elevation:
        return Before(what, f"by the record: add --elevation {marks[0]}") if marks else Before(what)
    status = find_status(project, standards, asked)
    face = next(face for face in status.faces if face.elevation == elevation)
    return _judge(face, hold, what)


def _say(hold: Step) -> str:
    said = hold.title[:1].lower() + hold.title[1:]
    return said if hold.releases else f"release of {said}"


def _find_hold(steps: Sequence[Step], step: str) -> Step | None:
    """The last hold point before a step of those that a wall takes."""
    names = [one.name for one in steps]
    before = steps[: names.index(step)] if step in names else ()
    return next((one for one in reversed(before) if one.point == "H"), None)


def _judge(face: FaceStatus, hold: Step, what: str) -> Before:
    status = next((one for one in face.steps if one.step.name == hold.name), None)
    if status is None or status.state is StepState.SKIPPED:
        return Before(what, "no entry")
    if status.state in (StepState.RELEASED, StepState.DONE):
        return Before(what, _tell_day(status), released=True)
    free = [area.area for area in status.areas if area.state is StepState.RELEASED and area.area]
    if free:
        return Before(what, f"released on {', '.join(free)} alone")
    return Before(what, _SAID[status.state], released=False)


def _tell_day(status: StepStatus) -> str:
    """The last release of its areas."""
    signed = [area.released for area in status.areas if area.released is not None]
    last = max(signed, key=lambda one: one.moment.at, default=None)
    return "done" if last is None else tell_moment(last.moment)
