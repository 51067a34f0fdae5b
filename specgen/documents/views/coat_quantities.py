"""The coats by quantity: area, coats, coverage, what is sprayed, the reserve, and whole pails."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.takeoff import tell_volume
from specgen.documents.views._areas import name_missing
from specgen.model.absence import Absent
from specgen.model.working import InputRow, Step, Working
from specgen.quantities.quantity import Quantity, round_quantity

_TITLES = {"smoothing": "Smoothing coat", "primer": "Primer", "gloss": "Gloss"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each coat over the base coat."""
    lines = tuple(_line(context, coat) for coat in _TITLES if context.project.get((coat, "coats")) != 0)
    header = ("Coat", "Product", "Area", "Coats", "Coverage, each coat", "All coats", "Reserve", "Order", "Pails")
    return TableView(header, lines, (12, 15, 11, 6, 14, 10, 8, 10, 14))


def _line(context: DocumentContext, coat: str) -> tuple[Any, ...]:
    product, coats = context.display((coat, "product")), context.display((coat, "coats"))
    begin = (_TITLES[coat], product)
    try:
        working = _resolve(context, coat)
    except Absent as absent:
        return (*begin, name_missing(context, absent), coats, "", "", "", "", "")
    if working is None:
        return (*begin, "", coats, "", "", "", "", "")
    steps: dict[str, InputRow | Step] = {row.symbol: row for row in working.inputs}
    steps |= {step.symbol: step for step in working.steps}

    def tell(symbol: str, digits: int) -> DisplayValue:
        row = steps[symbol]
        rounded = round_quantity(Quantity.of(repr(row.value), row.unit), digits)
        return DisplayValue(context.text(rounded, None), rounded, OF_A_SUM)

    reserve = context.display((coat, "reserve")) if coat != "smoothing" else ""
    return (
        *begin,
        tell("A", 4),
        coats,
        tell("C", 3),
        tell("Q", 3),
        reserve,
        tell_volume(context, working.quantity),
        _pails(context, coat, steps["N"].value) if "N" in steps else "",
    )


def _resolve(context: DocumentContext, coat: str) -> Working | None:
    """The quantity of a coat; None where nothing is smoothed. Raises Absent."""
    name, path = ("smoothing-quantity", ()) if coat == "smoothing" else ("coating-quantity", (coat,))
    working = context.resolve(path, name)
    return working if isinstance(working, Working) else None


def _pails(context: DocumentContext, coat: str, number: float) -> list[Any]:
    return [f"{round(number)} of ", context.display((coat, "pail"))]
