"""The hold points of the work, each with who releases it and room for the release."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.steps import steps
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each hold point, in the order of the work."""
    lines = tuple(
        (
            str(step.hold),
            f"{step.title}: {step.point_of}" if step.point_of else step.title,
            composer.inlines(step.released_by),
            step.forms.removeprefix("Form ").removeprefix("Forms "),
            Blank("Released", "date"),
        )
        for step in steps(context, composer)
        if step.hold
    )
    return TableView(("No.", "Hold point", "Released by", "Form", "Signed, date"), lines, (5, 27, 36, 13, 19))
