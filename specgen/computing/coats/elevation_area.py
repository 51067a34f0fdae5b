"""Net area of an elevation: width by height, less its openings."""

from specgen.computing.coats._areas import READS
from specgen.computing.face_area import cut_off, list_covering, name_heights
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.field import dotted_field
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Elevation, Opening, WaterDetail
from specgen.model.value_text import words
from specgen.model.working import InputRow, Working
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Provider

SOURCES = (Source(Kind.COMPUTED, "width by height, less width by height of each opening"),)
_Open = tuple[Opening | WaterDetail, str, str]  # a part, what it is, and the field that is its height
NOTES = ("Excludes returns at openings and sides of aesthetic joints.",)


def for_elevation(elevation: Elevation, ask: Ask) -> Working:
    """The net area of an elevation, in sq ft or m²."""
    length, area = ("ft", "ft2") if elevation.project.system == "ip" else ("m", "m2")
    rows = _sides(elevation, "W", "H", "the elevation", length)
    covering = list_covering(elevation)
    openings: list[_Open] = [(one, "opening", "height") for one in elevation.openings]
    openings += [(one, words(one.kind), high) for one in covering for high in name_heights(one)]
    for n, (opening, noun, high) in enumerate(openings, 1):
        rows += _sides(opening, f"w_{n}", f"h_{n}", f"{noun} {opening.mark}", length, high)
    beyond = Quantity(cut_off(elevation), "area", area)
    if beyond.amount:
        rows.append(
            InputRow("A_x", "beyond the outline", beyond.number(area), area, dotted_field(elevation.path, "outline"))
        )
    working = WorkingBuilder(rows)
    working.step("A_w" if openings or beyond.amount else "A", "width by height", "W * H", area)
    if openings:
        working.step(
            "A_o",
            "openings and covered wall" if covering else "openings",
            " + ".join(f"w_{n} * h_{n}" for n in range(1, len(openings) + 1)),
            area,
        )
    if openings or beyond.amount:
        working.step("A", "net area", f"A_w{' - A_x' * bool(beyond.amount)}{' - A_o' * bool(openings)}", area)
    made = working.build("elevation-area", "A", SOURCES, NOTES + _tell_neglected(elevation))
    return made._replace(said=(("Openings, width × height", _tell_sizes(openings, length)),)) if openings else made


def _tell_neglected(elevation: Elevation) -> tuple[str, ...]:
    """The roofs and ledges on an elevation, whose areas the description does not give."""
    project = elevation.project
    marks = project.find_referring(("details",), "elevation", elevation.mark) if project.is_given(("details",)) else ()
    kinds = {mark: project.get(("details", mark, "kind")) for mark in marks}
    covering = {one.mark for one in list_covering(elevation)}
    roofs = [mark for mark, kind in kinds.items() if kind == "roof_below" and mark not in covering]
    ledges = [mark for mark, kind in kinds.items() if kind == "ledge"]
    told = (("Not deducted", roofs), ("Not added", ledges))
    return tuple(f"{said}: {', '.join(found)}." for said, found in told if found)


def _tell_sizes(openings: list[_Open], unit: str) -> str:
    """`A, B: 9 ft × 4 ft; C: 4.5 ft × 8 ft`."""
    marks: dict[str, list[str]] = {}
    for opening, _, high in openings:
        size = " × ".join(
            f"{format_decimal(side.number(unit), 4)}\u00a0{unit}" for side in (opening.width, opening[high])
        )
        marks.setdefault(size, []).append(opening.mark)
    return "; ".join(f"{', '.join(names)}: {size}" for size, names in marks.items())


def _sides(
    view: Elevation | Opening | WaterDetail, wide: str, high: str, of: str, unit: str, up: str = "height"
) -> list[InputRow]:
    """The width of a part and its height, which is that of its field `up`."""
    return [
        InputRow(wide, f"width of {of}", view.width.number(unit), unit, dotted_field(view.path, "width")),
        InputRow(high, f"{up} of {of}", view[up].number(unit), unit, dotted_field(view.path, up)),
    ]


PROVIDER = Provider(
    name="elevation-area",
    title="Net elevation area",
    each=("elevations",),
    compute=for_elevation,
    reads=READS,
    columns=("W", "H", "A_w", "A_o", "A"),
    adds=True,
    order=5,
)
