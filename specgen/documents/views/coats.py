"""The coats over the base coat side by side: film, solids, VOC, coverage, quantity, thinning, drying."""

from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction
from typing import Any

from specgen.computing.coats.wet_film import round_up_film
from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.views._areas import name_missing
from specgen.documents.views._film import reads_film_each
from specgen.model.absence import Absent
from specgen.model.working import Step, Working
from specgen.quantities.quantity import round_quantity

_COATS, _SPRAYED = ("smoothing", "primer", "gloss"), ("primer", "gloss")
_NONE = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each property that is known of any coat; the number of coats and the film always."""
    known = (row for row in _optional_rows(context) if any(map(_is_known, row[1:])))
    primer = "Primer, tinted" if context.project.get(("primer", "tinted")) else "Primer"
    return TableView(("Property", "Smoothing coat", primer, "Gloss"), (*_films(context), *known), (22, 24, 27, 27))


def _films(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    total = context.display(("smoothing", "total_thickness"))
    bound = "each coat, each reading" if reads_film_each(context) else "each coat, mean"
    each = [[bound, *_span(context, coat)] for coat in _SPRAYED]
    yield ("Coats", *(context.display((coat, "coats")) for coat in _COATS))
    yield ("Dry film", ["maximum ", total, " total"], *each)


def _span(context: DocumentContext, coat: str) -> Iterator[Any]:
    """` 1.5 mil to 2.2 mil, target 1.7 mil`; ` minimum 1.5 mil` where the finish manufacturer gives no more."""
    most, target = (coat, "most_dry_film"), (coat, "target_dry_film")
    least = context.display((coat, "dry_film"))
    yield from (" ", least, " to ", context.display(most)) if context.project.is_given(most) else (" minimum ", least)
    yield from (", target ", context.display(target)) if context.project.is_given(target) else ()


def _optional_rows(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    def fields(name: str, *, coats: Iterable[str] = _COATS, before: str = "") -> list[Any]:
        skipped = [_NONE] * (3 - len(tuple(coats)))
        return skipped + [[before, context.display((coat, name))] for coat in coats]

    limit = ("code", "voc_limit")
    allowed = [", limit ", context.display(limit)] if context.project.is_given(limit) else []
    yield ("Wet film, each coat", _NONE, *(_wet_film(context, coat) for coat in _SPRAYED))
    yield ("Volume solids", *fields("volume_solids", coats=_SPRAYED))
    yield (["VOC", *allowed], *fields("voc"))
    yield ("Coverage, each coat", context.display(("smoothing", "spreading_rate")), *_coverages(context))
    yield ("Quantity, all coats", _smoothing_quantity(context), *(_quantity(context, coat) for coat in _SPRAYED))
    yield ("Viscosity", _NONE, *(_viscosity(context, coat) for coat in _SPRAYED))
    yield ("Thinning water", _NONE, *fields("max_water", coats=_SPRAYED, before="maximum ")[1:])
    yield ("Drying between coats", *_between_coats(context))
    yield ("Drying before next work", *fields("dry_hours", before="minimum "))
    yield ("Recoating", *fields("most_recoat_hours", coats=_SPRAYED, before="within "))


def _between_coats(context: DocumentContext) -> Iterator[Any]:
    """The wait between the coats of one kind; a dash where there is only one."""
    for coat, name in (("smoothing", "between_hours"), ("primer", ""), ("gloss", "touch_dry_hours")):
        coats = context.display((coat, "coats"))
        yield ["minimum ", context.display((coat, name))] if name and coats != 1 else _NONE


def _wet_film(context: DocumentContext, coat: str) -> Any:
    """`4.3 mil with 8% water, 4.0 mil without`: as it is read with a gauge."""

    def show(working: Working) -> list[Any]:
        (dry,) = working.secondary_steps
        thinned, plain = (_round_film(context, value, working) for value in (working.result, dry.value))
        water = context.display((coat, "max_water"))
        return [thinned, " with ", water, " water, ", plain, " without"] if water else [plain]

    return _computed(context, coat, "wet-film", show)


def _round_film(context: DocumentContext, value: Any, working: Working) -> DisplayValue:
    """A wet film as a gauge is to read it at least."""
    film = round_up_film(float(value), working.unit)
    text = context.text(film, context.project.schema.field_at(("gloss", "dry_film")))
    if working.unit == "mil" and "." not in text:
        text = text.replace(" mil", ".0 mil")
    return DisplayValue(text, film, OF_A_SUM)


def _coverages(context: DocumentContext) -> list[Any]:
    field = context.project.schema.field_at(("smoothing", "spreading_rate"))

    def show(working: Working) -> list[Any]:
        rate = round_quantity(working.quantity, 3)
        return [DisplayValue(context.text(rate, field), rate, OF_A_SUM)]

    return [_computed(context, coat, "spreading-rate", show) for coat in _SPRAYED]


def _smoothing_quantity(context: DocumentContext) -> Any:
    """`34 gal, 7 pails of 5 gal, mockup (1 pail) and 10% reserve included`; a dash where its coverage is not given."""
    if not context.project.is_given(("smoothing", "spreading_rate")):
        return _NONE
    try:
        working = context.resolve((), "smoothing-quantity")
    except Absent as absent:
        return [name_missing(context, absent)]
    if not isinstance(working, Working):
        return _NONE
    told = _tell_quantity(context, "smoothing", working)
    return told if context.project.is_given(("smoothing", "reserve")) else [*told, ", waste not included"]


def _quantity(context: DocumentContext, coat: str) -> Any:
    return _computed(context, coat, "coating-quantity", lambda working: _tell_quantity(context, coat, working))


def _tell_quantity(context: DocumentContext, coat: str, working: Working) -> list[Any]:
    """`34 gal, 7 pails of 5 gal, mockup (1 pail) and 10% reserve included`."""
    if not working.quantity.amount:  # nothing is coated where openings take a face whole
        return [_NONE]
    steps = {step.symbol: step for step in working.secondary_steps}
    volume = round_quantity(working.quantity, 3)
    parts: list[Any] = [
        DisplayValue(context.text(volume, context.project.schema.field_at((coat, "pail"))), volume, OF_A_SUM)
    ]
    parts += _pails(context, coat, steps["N"]) if "N" in steps else []
    counted: list[Any] = ["mockup"] if any(row.symbol == "A_m" for row in working.inputs) else []
    apart = next((step for step in working.steps if step.symbol == "N_m"), None)
    if counted and apart is not None:
        counted = [f"mockup ({_count_pails(apart)})"]
    if any(row.symbol == "R" for row in working.inputs):
        counted += [*([" and "] if counted else []), context.display((coat, "reserve")), " reserve"]
    return [*parts, ", ", *counted, " included"] if counted else parts


def _pails(context: DocumentContext, coat: str, count: Step) -> list[Any]:
    return [f", {_count_pails(count)} of ", context.display((coat, "pail"))]


def _count_pails(count: Step) -> str:
    number = round(Fraction(repr(count.value)))
    return f"{number} {'pail' if number == 1 else 'pails'}"


def _viscosity(context: DocumentContext, coat: str) -> list[Any]:
    least, most, cup = (context.display((coat, name)) for name in ("cup_least", "cup_most", "cup"))
    return [least, " to ", most, *([] if cup == "other" else [", ", cup, " cup"])]


def _computed(context: DocumentContext, coat: str, name: str, show: Callable[[Working], list[Any]]) -> list[Any]:
    """What a calculation gives for a coat, or the field it waits for."""
    try:
        working = context.resolve((coat,), name)
    except Absent as absent:
        return [name_missing(context, absent)]
    assert isinstance(working, Working)
    return show(working)


def _is_known(cell: Any) -> bool:
    """Whether a cell holds a value that is not open."""
    parts = cell if isinstance(cell, list) else [cell]
    return any(isinstance(part, DisplayValue) and not part.open for part in parts)
