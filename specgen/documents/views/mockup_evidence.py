"""What is kept of the evaluation: photographs and samples."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row with a blank for each."""
    header = ("Photographs (number, file)", "Retained samples (marks)", "Samples kept by")
    return TableView(
        header, (tuple(Blank(h, field=f"form.evidence.{n}") for n, h in enumerate(header, 1)),), (36, 36, 28)
    )
