"""The mockup seen from the front: the place of each detail by its number, and the layers in steps."""

from bisect import bisect_left
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures.scales import choose_scale, count_mm
from specgen.documents.figures.section_sheet import SIZE, Point, Sheet
from specgen.documents.figures.wall_layers import list_layers
from specgen.documents.mockup import find_full_panel, list_mockup_walls, size_finished
from specgen.documents.views.mockup_details import list_places, name_places
from specgen.model.block import Figure
from specgen.model.value_text import value_text
from specgen.quantities.quantity import Quantity

_LEFT, _TOP, _WIDE, _HIGH = 37.0, 10.0, 105.0, 80.0
# The least size of the finished part on paper that holds its numbers; a smaller one is drawn larger, not to scale.
_LEAST_WIDE, _LEAST_HIGH = 36.0, 42.0
_SIGNS = "abcdefghijklmnopqrstuvwxyz"  # of the layers in steps
_COATS = {"Smoothing coat": "smoothing", "Primer": "primer", "Gloss": "gloss"}
_STEP = 4.4  # the least width of a step on paper
# From where to where the first line may stand, in parts of the width, and the middle row, in parts of the height.
_LINE, _ROW = (Fraction(2, 5), Fraction(2, 3)), (Fraction(1, 4), Fraction(1, 2))
# What each number points at and where it stands, in parts of the width and height of the finished part from its upper
# left corner, as if lines of panels stood at the half of the width and at thirds of the height.
_PLACES: dict[str, tuple[Point, Point]] = {
    "full_panel": ((0.18, 0.44), (0.30, 0.52)),
    "joint_crossing": ((0.50, 1 / 3), (0.39, 0.24)),
    "outside_corner": ((0.0, 0.09), (0.13, 0.09)),
    "opening": ((0.77, 0.46), (0.77, 0.52)),
    "head_flashing": ((0.77, 0.39), (0.88, 0.27)),
    "sill_pan": ((0.77, 0.61), (0.88, 0.73)),
    "sealant_joint": ((0.63, 0.56), (0.62, 0.73)),
    "grade_end": ((0.22, 1.0), (0.12, 0.93)),
    "each_mesh_zone": ((0.70, 0.80), (0.80, 0.90)),
    "each_color": ((0.66, 0.20), (0.78, 0.13)),
    "day_stop": ((0.50, 0.87), (0.60, 0.95)),
    "recoat_patch": ((0.14, 0.26), (0.24, 0.18)),
    "test_area": ((0.12, 0.72), (0.24, 0.745)),
}


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """The sketch; none where the size or the details of the mockup are not given."""
    finished, places = size_finished(context), list_places(context)
    if finished is None or not places:
        return ()
    return (_draw_sketch(context, places, finished),)


class _Lines(NamedTuple):
    """Where the aesthetic joints of the finished part stand, in parts of its width and height."""

    upright: Fraction
    upper: Fraction
    lower: Fraction

    def move(self, point: Point) -> Point:
        """A point that is placed as if they stood at the half and at thirds."""
        x, y = point
        return _stretch(x, (0.5,), (self.upright,)), _stretch(y, (1 / 3, 2 / 3), (self.upper, self.lower))


def _stretch(at: float, cuts: tuple[float, ...], places: tuple[Fraction, ...]) -> float:
    """A place between cuts, where these are elsewhere."""
    ends, news = (0.0, *cuts, 1.0), (0.0, *map(float, places), 1.0)
    n = bisect_left(cuts, at)
    return news[n] + (at - ends[n]) / (ends[n + 1] - ends[n]) * (news[n + 1] - news[n])


def _place_lines(context: DocumentContext, finished: tuple[Quantity, Quantity]) -> _Lines:
    """The lines around a full panel of the work at the left of the middle row; where it does not fit, even ones."""
    panel, (width, height) = find_full_panel(context), finished
    upright, row = Fraction(1, 2), Fraction(1, 3)
    if panel is not None and "full_panel" in list_places(context):
        across, up = panel.width / width.amount, panel.height / height.amount
        if _LINE[0] <= across <= _LINE[1] and _ROW[0] <= up <= _ROW[1]:
            upright, row = across, up
    return _Lines(upright, (1 - row) / 2, (1 + row) / 2)


def _draw_sketch(context: DocumentContext, places: dict[str, str], finished: tuple[Quantity, Quantity]) -> Figure:
    sheet = Sheet()
    width = context.project.value(("mockup", "width"))
    wide, high, scale = _size(context, width, finished)
    steps = _list_steps(context) if "build_up_steps" in places else []
    whole = wide * count_mm(width) / count_mm(finished[0])
    whole = max(whole, wide + _STEP * len(steps)) if steps else whole
    lines = _place_lines(context, finished)
    _draw_finished(sheet, places, lines, (wide, high))
    _draw_steps(sheet, places, len(steps), (wide, whole), high)
    apart = context.project.get(("mockup", "destructive_area_apart")) is True
    _number(sheet, places, lines, (wide, whole), high, apart=apart)
    low = _measure(context, sheet, lines, finished, (wide, whole, high))
    key = _list_key(context, steps)
    down = sheet.list_key(key, low + 4)
    note = f"Scale 1:{scale}; places of details are not to scale." if scale else "Not to scale."
    sheet.say(2, down + SIZE + 1, note)
    size = f"{_tell(context, width)} wide and {_tell(context, finished[1])} high"
    alt = (
        f"Front of the mockup, {size}, with {_tell_lines(context, lines, finished)}; the places of its details: "
        f"{'; '.join(map(' '.join, key))}. {note}"
    )
    return sheet.finish("mockup_sketch", "Mockup: places of the details", alt, down + SIZE + 3)


def _measure(
    context: DocumentContext,
    sheet: Sheet,
    lines: _Lines,
    finished: tuple[Quantity, Quantity],
    sizes: tuple[float, float, float],
) -> float:
    """Dimensions from joint to joint, of the finished part and overall; how far down they reach."""
    (wide, whole, high), bottom = sizes, _TOP + sizes[2]
    low = bottom + 7
    for start, end in pairwise((Fraction(0), lines.upright, Fraction(1))):
        ends = (_LEFT + wide * float(start), _LEFT + wide * float(end))
        sheet.measure_across(*ends, low, _tell(context, finished[0] * (end - start)), (bottom, bottom))
    for start, end in pairwise((Fraction(0), lines.upper, lines.lower, Fraction(1))):
        rows = (_TOP + high * float(start), _TOP + high * float(end))
        sheet.measure_down(*rows, _LEFT - 5, _tell(context, finished[1] * (end - start)), (_LEFT, _LEFT))
    width = context.project.value(("mockup", "width"))
    for across, length in {wide: finished[0], whole: width}.items():
        low += 6
        sheet.measure_across(_LEFT, _LEFT + across, low, _tell(context, length), (bottom, bottom))
    sheet.measure_down(_TOP, bottom, _LEFT - 22, _tell(context, finished[1]), (_LEFT, _LEFT))
    return low


def _tell_lines(context: DocumentContext, lines: _Lines, finished: tuple[Quantity, Quantity]) -> str:
    """The joints of the finished part, for those who do not see it."""
    across = _tell(context, finished[0] * lines.upright)
    up = [_tell(context, finished[1] * (1 - at)) for at in (lines.lower, lines.upper)]
    return f"a vertical joint {across} from the left and horizontal ones {' and '.join(up)} up"


def _size(context: DocumentContext, width: Quantity, finished: tuple[Quantity, Quantity]) -> tuple[float, float, int]:
    """Width and height of the finished part on paper, and the scale; 0 where it is not to scale."""
    scale = max(
        choose_scale(count_mm(width), _WIDE, context.first), choose_scale(count_mm(finished[1]), _HIGH, context.first)
    )
    wide, high = (count_mm(side) / scale for side in finished)
    if wide < _LEAST_WIDE or high < _LEAST_HIGH or high > _HIGH or count_mm(width) / scale > _WIDE:
        return 50.0, 56.0, 0
    return wide, high, scale


def _draw_finished(sheet: Sheet, places: dict[str, str], lines: _Lines, size: Point) -> None:
    """The part with every coat: its joints, the opening, the mesh zones, the patch, the test area."""

    def box(kind: str, left: float, top: float, right: float, bottom: float) -> None:
        corners = ((left, top), (right, top), (right, bottom), (left, bottom))
        sheet.line(kind, *(_on_paper(lines, size, corner) for corner in corners), closed=True)

    box("edge", 0, 0, 1, 1)
    joints = (((0.5, 0.0), (0.5, 1.0)), ((0.0, 1 / 3), (1.0, 1 / 3)), ((0.0, 2 / 3), (1.0, 2 / 3)))
    for ends in joints:
        sheet.line("outline", *(_on_paper(lines, size, end) for end in ends))
    if "opening" in places or "sealant_joint" in places:
        box("edge", 0.63, 0.39, 0.91, 0.61)
        box("outline", 0.645, 0.405, 0.895, 0.595)
    if "each_mesh_zone" in places:
        sheet.line("hidden", *(_on_paper(lines, size, end) for end in ((0.0, 0.8), (1.0, 0.8))))
    if "recoat_patch" in places:
        box("hidden", 0.03, 0.025, 0.47, 0.31)


def _on_paper(lines: _Lines, size: Point, point: Point) -> Point:
    """A point of the finished part on paper."""
    x, y = lines.move(point)
    return _LEFT + x * size[0], _TOP + y * size[1]


def _draw_steps(sheet: Sheet, places: dict[str, str], count: int, across: Point, high: float) -> None:
    """The layers beside the finished part, each left in view beside the one that covers it."""
    wide, whole = across
    if whole <= wide:
        return
    corners = ((wide, 0.0), (whole, 0.0), (whole, high), (wide, high))
    sheet.line("edge", *((_LEFT + x, _TOP + y) for x, y in corners), closed=True)
    for n in range(count):
        left, right = (_LEFT + wide + (whole - wide) * part / count for part in (n, n + 1))
        if n:
            sheet.line("outline", (left, _TOP), (left, _TOP + high))
        sheet.say((left + right) / 2, _TOP + high / 2, _SIGNS[count - 1 - n], anchor="middle")


def _number(sheet: Sheet, places: dict[str, str], lines: _Lines, across: Point, high: float, *, apart: bool) -> None:
    """The number of each detail."""
    wide, whole = across
    for detail, number in places.items():
        if detail == "build_up_steps":
            x = _LEFT + (wide + whole) / 2
            sheet.number((x, _TOP + 4), (x + 4, _TOP - 5), number)
        elif detail == "test_area" and apart:
            left = _LEFT + whole + 5
            sheet.line(
                "hidden", *((left + x, _TOP + high - y) for x, y in ((0, 0), (12, 0), (12, 14), (0, 14))), closed=True
            )
            sheet.mark((left + 6, _TOP + high - 7), number)
        elif detail in _PLACES:
            at, place = (_on_paper(lines, (wide, high), point) for point in _PLACES[detail])
            sheet.number(at, place, number)


def _list_steps(context: DocumentContext) -> list[str]:
    """The names of the layers of the wall that the mockup shows first, from the substrate on."""
    walls = list_mockup_walls(context)
    layers = list_layers(context, walls[0]) if walls else ()
    names = [layer.name for layer in layers if layer.name != "Framing"]
    return [step for name in names for step in _list_coats(context, name)]


def _list_coats(context: DocumentContext, name: str) -> list[str]:
    """A layer, or each of its coats where there are several."""
    coats = context.project.get((_COATS[name], "coats")) if name in _COATS else None
    return [f"{name} {coat}" for coat in range(1, coats + 1)] if coats and coats > 1 else [name]


def _list_key(context: DocumentContext, steps: list[str]) -> list[tuple[str, str]]:
    """The numbers of the details with their names; the steps behind that of the stepped build-up."""
    stepped = list_places(context).get("build_up_steps")
    layers = [name if name.isupper() else name[:1].lower() + name[1:] for name in steps]
    key = []
    for entry in name_places(context).split("; "):
        number, name = entry.split(" ", 1)
        told = "; ".join(map(" ".join, zip(_SIGNS, layers, strict=False))) if number == stepped else ""
        key.append((number, f"{name[:1].upper()}{name[1:]}{': ' if told else ''}{told}"))
    return key


def _tell(context: DocumentContext, length: Quantity) -> str:
    """A length of the mockup as the field of its width prints, in one system."""
    return value_text(length, context.project.schema.node(("mockup", "width")).field, context.first, both=False)
