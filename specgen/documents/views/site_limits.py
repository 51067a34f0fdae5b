"""The limits of field conditions in one table: condition, work under way, limit."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.documents.views._heat import SPRAYED, Heat, list_heat, list_sprayed_heat
from specgen.documents.views._materials import list_data_sheets

_COATS = "smoothing, primer, gloss"
_SPRAYED = "primer, gloss"
_WET = f"boards, base coat, {_COATS}"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Every limit of weather and site that this project works by."""
    limit, display = context.limit, context.display
    least = limit("weather.least_coats")
    held = [", during application and ", limit("weather.hold"), " after or until dry, whichever is longer"]
    held_eifs = [*held[:1], limit("weather.hold_eifs"), *held[2:]]
    lines = [
        *_of_barrier(context),
        ("Air and wall temperature", "boards, base coat", ["minimum ", limit("weather.least_eifs"), *held_eifs]),
        ("Air and wall temperature", _COATS, ["minimum ", least, *held]),
        *_of_heat(context),
        *_of_manufacturer(context, "Air and wall temperature until dry", "least_dry_temperature", least),
        *_of_sealant(context),
        ("Frost on the wall", "boards, base coat", ["none within ", limit("weather.after_frost")]),
        *_of_hot_wall(context),
        ("Relative humidity", _WET, ["maximum ", display(("weather", "most_humidity"))]),
        *_of_manufacturer(context, "Relative humidity", "most_humidity", display(("weather", "most_humidity"))),
        ("Wall temperature above dew point", _above_dew_point(context), ["minimum ", limit("weather.above_dew_point")]),
        ("Wind and gusts", _SPRAYED, ["maximum ", display(("weather", "max_spray_wind"))]),
        *_of_sun(context),
        ("Direct sun", _SPRAYED, "none"),
        ("Rain", "all work until dry", f"none present or forecast{_outside_tents(context)}"),
        (
            "Readings",
            "at the wall, in sun and shade",
            ["before each coat; maximum ", limit("weather.readings"), " apart"],
        ),
    ]
    return TableView(("Condition", "During", "Limit"), tuple(lines), (34, 26, 40))


def _above_dew_point(context: DocumentContext) -> str:
    """The work that dew keeps from the wall; of sealant joints, where there are any."""
    return f"{_WET}, sealant" if list_marks(context, "joints") else _WET


def _outside_tents(context: DocumentContext) -> str:
    """That a wall in a tent is spared, where the project plans one."""
    kinds = (context.project.get(("shade", mark, "kind")) for mark in list_marks(context, "shade"))
    return ", unless the wall is tented" if "tent" in kinds else ""


def _of_barrier(context: DocumentContext) -> Iterator[tuple[str, str, Any]]:
    """The least temperature of each barrier, those of one figure together; else its data sheet tells it."""
    figures: dict[str, tuple[DisplayValue, list[str]]] = {}
    for mark in list_marks(context, "walls"):
        at = ("walls", mark, "wrb")
        if context.project.get((*at, "kind")) not in (None, "none"):
            least = context.display((*at, "least_temperature"))
            figures.setdefault(str(least), (least, []))[1].append(mark)
    for least, walls in figures.values():
        told = ["minimum ", least] if least else [f"per its data sheet, {list_data_sheets(context, 'wrb')},"]
        of = f", {', '.join(walls)}" if len(figures) > 1 else ""
        yield "Air and wall temperature", f"WRB{of}", [*told, " until dry"]


def _of_heat(context: DocumentContext) -> Iterator[tuple[str, str, Any]]:
    """The upper temperature of the work before spraying by its figures; what has none, by its instructions."""
    works = list_heat(context)
    of_figure: dict[str, list[Heat]] = {}
    for one in (*works, *list_sprayed_heat(context)):
        if one.most is not None:
            of_figure.setdefault(str(one.most), []).append(one)
    for same in of_figure.values():
        yield "Maximum air and wall temperature", _name(same), ["maximum ", same[0].most, ", until dry"]
    told = [one for one in works if one.most is None]
    if told:
        yield "Maximum temperature", _name(told), _refer(told)


def _of_hot_wall(context: DocumentContext) -> Iterator[tuple[str, str, Any]]:
    """The hottest wall that the trade sprays, for the coats whose instructions are not as strict."""
    most = context.limit("weather.most_surface")
    strict = {one.work for one in list_sprayed_heat(context) if one.most is not None and one.most.raw <= most.raw}
    if rest := [coat for coat in SPRAYED if coat not in strict]:
        yield "Wall temperature", ", ".join(rest), ["maximum ", most]


def _of_sun(context: DocumentContext) -> Iterator[tuple[str, str, Any]]:
    """Direct sun on the work before spraying: none where its material forbids it; where none tells, its papers."""
    works = list_heat(context)
    shaded, open_works = ([one for one in works if one.sun is told] for told in (False, None))
    if shaded:
        yield "Direct sun", _name(shaded), "none during application and until set to touch"
    if open_works:
        yield "Direct sun", _name(open_works), _refer(open_works)


def _name(works: list[Heat]) -> str:
    return ", ".join(one.work for one in works)


def _refer(works: list[Heat]) -> str:
    """Where the figures of a work stand that the project does not give."""
    papers = "; ".join(f"{one.work} {one.instructions}" for one in works)
    return f"per the manufacturers' written instructions: {papers}"


def _of_sealant(context: DocumentContext) -> Iterator[tuple[str, str, Any]]:
    """The temperatures that the widths of the joints are computed for, where they are the same for all."""
    names = ("install_low", "install_high")
    spans = [[context.display(("joints", mark, name)) for name in names] for mark in list_marks(context, "joints")]
    if spans and all(span == spans[0] for span in spans) and not any(value.open for value in spans[0]):
        yield "Joint surface temperature", "sealant", [spans[0][0], " to ", spans[0][1]]


def _of_manufacturer(
    context: DocumentContext, condition: str, name: str, bound: DisplayValue
) -> Iterator[tuple[str, str, Any]]:
    """One row for each sprayed coat whose figure is stricter than that of the project, or one for both if the same."""
    least, given = name.startswith("least"), find_stricter(context, name, bound)
    if len(given) == 2 and given["primer"] == given["gloss"]:
        given = {_SPRAYED: given["gloss"]}
    for coat, figure in given.items():
        yield condition, coat, [f"{'minimum' if least else 'maximum'} ", figure]


def find_stricter(context: DocumentContext, name: str, bound: DisplayValue) -> dict[str, DisplayValue]:
    """The figures of the sprayed coats that are stricter than that of the project, by coat."""
    figures = {coat: context.display((coat, name)) for coat in ("primer", "gloss") if context.project.get((coat, name))}
    return {
        coat: figure
        for coat, figure in figures.items()
        if bound.open or (figure.raw > bound.raw if name.startswith("least") else figure.raw < bound.raw)
    }
