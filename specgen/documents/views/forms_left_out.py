"""The forms that a draft leaves out: what each waits for, and from whom."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.package_documents import tell_missing


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A line for each form that is issued with the package; none where every form is printed."""
    lines = tuple(
        (f"{form.id} {form.title}", tell_missing(context, composer, form)) for form in context.rest.forms_left_out
    )
    return TableView(("Form", "Pending, and from whom"), lines, (30, 70))
