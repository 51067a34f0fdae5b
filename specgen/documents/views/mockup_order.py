"""The steps of the mockup in order, with their waits and points."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.steps import StepPage, steps

# The mockup does not hold itself up, and the meeting is held for the whole work.
_LEFT_OUT = {"site_conditions", "mockup"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Number, step, what is waited for, and who is there."""
    made = [
        (
            str(number),
            step.title,
            composer.inlines(step.wait) if step.wait else "none",
            f"{step.point} ({step.point_of})" if step.point_of else step.point,
        )
        for number, step in enumerate(_in_order(context, composer), 1)
    ]
    return TableView(("No.", "Step", "Wait", "Point"), tuple(made), (7, 33, 38, 22))


def _in_order(context: DocumentContext, composer: Composer) -> list[StepPage]:
    """The steps of the work, but the mockup is accepted last, its sealant joint included."""
    made = [step for step in steps(context, composer) if step.name not in _LEFT_OUT]
    return sorted(made, key=lambda step: step.name == "acceptance")
