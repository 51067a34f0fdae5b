"""The steps of the mockup in order, with waiting times and hold or witness points."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.steps import StepPage, steps

# The mockup cannot wait for itself, and the meeting is held once for the whole job.
_LEFT_OUT = {"site_conditions", "mockup"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row per step: number, title, waiting time, hold or witness point."""
    lines = [
        (
            str(number),
            step.title,
            composer.inlines(step.wait) if step.wait else "none",
            f"{step.point} ({step.point_of})" if step.point_of else step.point,
        )
        for number, step in enumerate(_in_order(context, composer), 1)
    ]
    return TableView(("No.", "Step", "Wait", "Point"), tuple(lines), (7, 33, 38, 22))


def _in_order(context: DocumentContext, composer: Composer) -> list[StepPage]:
    """The steps of the work, with acceptance last, after the sealant joint."""
    mockup_steps = [step for step in steps(context, composer) if step.name not in _LEFT_OUT]
    return sorted(mockup_steps, key=lambda step: step.name == "acceptance")
