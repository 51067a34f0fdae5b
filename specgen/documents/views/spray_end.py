"""The end of the spray record: where the day stops, that the equipment is clean, who signs."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import make_blank
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two entries in a line."""
    cleaned = CheckBox("cleaned and dried after the coat", "log.equipment_cleaned.a", "yes")
    relieved = CheckBox("pressure released before the lid is opened", "form.pressure_released.a", "yes")
    lines = (
        (
            "Stop line",
            make_blank("Stop line, joint or corner", "form.stop_line", "a"),
            "Equipment",
            [relieved, " ", cleaned],
        ),
        ("Remarks", make_blank("Remarks", "form.remarks", "a"), "Signed", make_blank("Signed", "form.signed_by", "a")),
    )
    return TableView(("End of work", "Entry", "End of work", "Entry"), lines, (11, 31, 11, 47))
