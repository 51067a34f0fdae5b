"""The coats by quantity: area, coats, coverage, what is sprayed, the reserve, and whole pails."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.takeoff import tell_volume
from specgen.documents.views._areas import name_missing
from specgen.documents.views._bare import bare, head_unit
from specgen.model.absence import Absent
from specgen.model.working import InputRow, Step, Working
from specgen.quantities.quantity import Quantity, round_quantity

Known = dict[str, InputRow | Step]
_VOLUMES = ("All coats", "Order")
_TITLES = {"smoothing": "Smoothing coat", "primer": "Primer", "gloss": "Gloss"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each coat over the base coat; two where a mockup is ordered apart from the work."""
    coats = [coat for coat in _TITLES if context.project.get((coat, "coats")) != 0]
    lines = tuple(line for coat in coats for line in _tell_coat(context, coat))
    area, (every, order) = head_unit(context, "Area", "area"), (head_unit(context, t, "volume") for t in _VOLUMES)
    header = ("Coat", "For", area, "Coats", "Coverage, each coat", every, "Reserve", order, "Pails")
    return TableView(header, lines, (20, 11, 9, 7, 14, 9, 9, 9, 12))


def _tell_coat(context: DocumentContext, coat: str) -> Iterator[tuple[Any, ...]]:
    product, coats = context.display((coat, "product")), context.display((coat, "coats"))
    name = [_TITLES[coat], ", ", product]
    try:
        working = _resolve(context, coat)
    except Absent as absent:
        yield (name, "", name_missing(context, absent), coats, *("",) * 5)
        return
    if working is None:
        yield (name, "", "", coats, *("",) * 5)
        return
    known = {row.symbol: row for row in working.inputs} | {step.symbol: step for step in working.steps}
    for number, (said, part, pails) in enumerate(_list_orders(known)):
        yield ("" if number else name, said, *_tell_order(context, coat, working, part), _pails(context, coat, pails))


def _list_orders(known: Known) -> Iterator[tuple[str, float, float | None]]:
    """The mockup and the work, each with its part of the coated area and its whole pails."""
    whole, mockup = known["A"].value, known["A_m"].value if "A_m" in known else 0.0
    pails, first = (known[symbol].value if symbol in known else None for symbol in ("N", "N_m"))
    share = mockup / whole if whole else 0.0  # nothing is coated where openings take a face whole
    if share:
        yield "Mockup", share, first
    yield "Work", 1 - share, pails - first if pails is not None and first is not None else pails


def _tell_order(context: DocumentContext, coat: str, working: Working, part: float) -> tuple[Any, ...]:
    """Area to order of a part of what is coated; each figure is rounded from the exact one."""
    known = {row.symbol: row for row in working.inputs} | {step.symbol: step for step in working.steps}

    def tell(symbol: str, digits: int, share: float) -> DisplayValue:
        row = known[symbol]
        rounded = round_quantity(Quantity.of(repr(row.value * share), row.unit), digits)
        return DisplayValue(context.text(rounded, None), rounded, OF_A_SUM)

    def tell_part(quantity: Quantity) -> DisplayValue:
        return bare(context, tell_volume(context, quantity * Fraction(part)))

    sprayed = Quantity.of(repr(known["Q"].value), known["Q"].unit)
    reserve = context.display((coat, "reserve")) if "R" in known else ""
    coats, rate = context.display((coat, "coats")), known["C"]
    # The manufacturer gives it, or it is a step of the sum.
    coverage = context.display(tuple(rate.origin.split("."))) if isinstance(rate, InputRow) else tell("C", 3, 1)
    return bare(context, tell("A", 4, part)), coats, coverage, tell_part(sprayed), reserve, tell_part(working.quantity)


def _resolve(context: DocumentContext, coat: str) -> Working | None:
    """The quantity of a coat; None where nothing is smoothed. Raises Absent."""
    name, path = ("smoothing-quantity", ()) if coat == "smoothing" else ("coating-quantity", (coat,))
    working = context.resolve(path, name)
    return working if isinstance(working, Working) else None


def _pails(context: DocumentContext, coat: str, number: float | None) -> Any:
    if number is None:
        return ""
    pails = round(number)
    return [DisplayValue(str(pails), pails, OF_A_SUM), " x ", context.display((coat, "pail"))]
