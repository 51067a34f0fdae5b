"""The end of the spray record: where the day stops, that the equipment is clean, how long tape stood, who signs."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import make_blank
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names."""
    cleaned = CheckBox("cleaned and dried after the coat", "log.equipment_cleaned.a", "yes")
    relieved = CheckBox("pressure released before the lid is opened", "form.pressure_released.a", "yes")
    line = (
        make_blank("Stop line, joint or corner", "form.stop_line", "a"),
        [relieved, " ", cleaned],
        ["on ", make_blank("Tape applied, date and hour", "form.tape_on", "a"), " off "]
        + [make_blank("Tape removed, date and hour", "form.tape_off", "a")],
        make_blank("Remarks", "form.remarks", "a"),
        make_blank("Signed", "form.signed_by", "a"),
    )
    return TableView(("Stop line", "Equipment", "Tape", "Remarks", "Signed"), (line,), (16, 30, 20, 19, 15))
