"""The steps of a wall behind which something dries, before a step of the work."""

from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.resolving.drying import BETWEEN, DRYING
from specgen.scheduling.applying import list_steps


def list_drying_before(project: Project, standards: Standards, step: str, wall: str) -> tuple[str, ...]:
    """The steps before one that a wall takes and behind which something dries, the nearest first.

    A step that the wall does not take is none of them; none stand before a step that it does not take itself.
    """
    names = project.remember(("steps of a wall", wall), lambda: _list_names(project, standards, wall))
    before = names[: names.index(step)] if step in names else ()
    return tuple(name for name in reversed(before) if name in DRYING or name in BETWEEN)


def _list_names(project: Project, standards: Standards, wall: str) -> tuple[str, ...]:
    return tuple(step.name for step in list_steps(project, standards, wall))
