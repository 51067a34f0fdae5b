"""The steps that a wall takes, looked up once, and those of them behind which something dries."""

from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.scheduling.applying import list_steps
from specgen.scheduling.drying import BETWEEN, DRYING


def list_step_names(project: Project, standards: Standards, wall: str) -> tuple[str, ...]:
    """The names of the steps that a wall takes, in the order of the work."""

    def look_up() -> tuple[str, ...]:
        return tuple(step.name for step in list_steps(project, standards, wall))

    return project.remember(("steps of a wall", wall), look_up)


def list_drying_before(project: Project, standards: Standards, step: str, wall: str) -> tuple[str, ...]:
    """The steps before one that a wall takes and behind which something dries, the nearest first.

    A step that the wall does not take is none of them; none stand before a step that it does not take itself.
    """
    names = list_step_names(project, standards, wall)
    before = names[: names.index(step)] if step in names else ()
    return tuple(name for name in reversed(before) if name in DRYING or name in BETWEEN)
