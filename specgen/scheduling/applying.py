"""Which steps of the work a wall takes, in the order of the work."""

from specgen.model.evaluation import evaluate
from specgen.model.project import Project
from specgen.model.standard import Standards, Step


def applies(when: str, project: Project, wall: str) -> bool:
    """Whether a condition holds for a wall; an empty one does."""
    return not when or evaluate(when, project, ("walls", wall))


def list_steps(project: Project, standards: Standards, wall: str) -> tuple[Step, ...]:
    """The steps that a wall takes, in the order of the work."""
    steps = standards.steps.values()
    return project.remember(
        ("steps taken by a wall", wall), lambda: tuple(step for step in steps if applies(step.when, project, wall))
    )
