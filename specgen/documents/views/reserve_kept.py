"""The coating kept in reserve, its batches as recorded, and the place where it is kept."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.records.panel_work import COATS
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each coat."""
    lines = []
    for coat in COATS:
        product, reserve = (context.display((coat, name)) for name in ("product", "reserve"))
        log = context.project.records.of("log")
        used = dict.fromkeys(str(e.values["batch"]) for e in log if e.get("step") == coat and e.get("batch"))
        lines.append(
            (
                [coat.capitalize(), ", ", product],
                [reserve, " of the quantity of all coats"],
                ", ".join(used) or "not recorded",
                Blank(f"Quantity of {coat} in reserve", field=f"form.reserve_quantity.{coat}"),
                Blank(f"Place of the reserve of {coat}", field=f"form.reserve.{coat}"),
            )
        )
    header = ("Coating", "Reserve", "Batches sprayed", "Handed over: quantity, batch", "Kept at")
    return TableView(header, tuple(lines), (26, 20, 18, 18, 18))
