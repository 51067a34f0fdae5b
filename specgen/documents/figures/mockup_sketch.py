"""The mockup seen from the front: the place of each detail by its number, and the layers in steps."""

from specgen.documents.context import DocumentContext
from specgen.documents.figures.scales import choose_scale, count_mm
from specgen.documents.figures.section_sheet import SIZE, Point, Sheet
from specgen.documents.figures.wall_layers import list_layers
from specgen.documents.mockup import list_mockup_walls, size_finished
from specgen.documents.views.mockup_details import list_places, name_places
from specgen.model.block import Figure
from specgen.model.value_text import value_text
from specgen.quantities.quantity import Quantity

_LEFT, _TOP, _WIDE, _HIGH = 24.0, 10.0, 110.0, 80.0
# The least size of the finished part on paper that holds its numbers; a smaller one is drawn larger, not to scale.
_LEAST_WIDE, _LEAST_HIGH = 36.0, 42.0
_SIGNS = "abcdefghijklmnopqrstuvwxyz"  # of the layers in steps
_COATS = {"Smoothing coat": "smoothing", "Primer": "primer", "Gloss": "gloss"}
_STEP = 4.4  # the least width of a step on paper
# What each number points at and where it stands, in parts of the width and height of the finished part from its upper
# left corner; lines of panels stand at the half of the width and at thirds of the height.
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


def _draw_sketch(context: DocumentContext, places: dict[str, str], finished: tuple[Quantity, Quantity]) -> Figure:
    sheet = Sheet()
    width = context.project.value(("mockup", "width"))
    wide, high, scale = _size(context, width, finished)
    steps = _list_steps(context) if "build_up_steps" in places else []
    whole = wide * count_mm(width) / count_mm(finished[0])
    whole = max(whole, wide + _STEP * len(steps)) if steps else whole
    _draw_finished(sheet, places, wide, high)
    _draw_steps(sheet, places, len(steps), (wide, whole), high)
    apart = context.project.get(("mockup", "destructive_area_apart")) is True
    _number(sheet, places, (wide, whole), high, apart=apart)
    bottom = _TOP + high
    if steps:
        sheet.measure_across(_LEFT, _LEFT + wide, bottom + 7, _tell(context, finished[0]), (bottom, bottom))
    low = bottom + (13 if steps else 7)
    sheet.measure_across(_LEFT, _LEFT + whole, low, _tell(context, width), (bottom, bottom))
    sheet.measure_down(_TOP, bottom, _LEFT - 5, _tell(context, finished[1]), (_LEFT, _LEFT))
    key = _list_key(context, steps)
    down = sheet.list_key(key, low + 4)
    note = f"Scale 1:{scale}; places of details and joint lines are not to scale." if scale else "Not to scale."
    sheet.say(2, down + SIZE + 1, note)
    size = f"{_tell(context, width)} wide and {_tell(context, finished[1])} high"
    alt = f"Front of the mockup, {size}, with the places of its details: {'; '.join(map(' '.join, key))}. {note}"
    return sheet.finish("mockup_sketch", "Mockup: places of the details", alt, down + SIZE + 3)


def _size(context: DocumentContext, width: Quantity, finished: tuple[Quantity, Quantity]) -> tuple[float, float, int]:
    """Width and height of the finished part on paper, and the scale; 0 where it is not to scale."""
    scale = max(
        choose_scale(count_mm(width), _WIDE, context.first), choose_scale(count_mm(finished[1]), _HIGH, context.first)
    )
    wide, high = (count_mm(side) / scale for side in finished)
    if wide < _LEAST_WIDE or high < _LEAST_HIGH or high > _HIGH or count_mm(width) / scale > _WIDE:
        return 50.0, 56.0, 0
    return wide, high, scale


def _draw_finished(sheet: Sheet, places: dict[str, str], wide: float, high: float) -> None:
    """The part with every coat: its joints, the opening, the mesh zones, the patch, the test area."""

    def box(kind: str, left: float, top: float, right: float, bottom: float) -> None:
        corners = ((left, top), (right, top), (right, bottom), (left, bottom))
        sheet.line(kind, *((_LEFT + x * wide, _TOP + y * high) for x, y in corners), closed=True)

    box("edge", 0, 0, 1, 1)
    joints = (((0.5, 0.0), (0.5, 1.0)), ((0.0, 1 / 3), (1.0, 1 / 3)), ((0.0, 2 / 3), (1.0, 2 / 3)))
    for (x1, y1), (x2, y2) in joints:
        sheet.line("outline", (_LEFT + x1 * wide, _TOP + y1 * high), (_LEFT + x2 * wide, _TOP + y2 * high))
    if "opening" in places or "sealant_joint" in places:
        box("edge", 0.63, 0.39, 0.91, 0.61)
        box("outline", 0.645, 0.405, 0.895, 0.595)
    if "each_mesh_zone" in places:
        sheet.line("hidden", (_LEFT, _TOP + 0.8 * high), (_LEFT + wide, _TOP + 0.8 * high))
    if "recoat_patch" in places:
        box("hidden", 0.03, 0.025, 0.47, 0.31)


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


def _number(sheet: Sheet, places: dict[str, str], across: Point, high: float, *, apart: bool) -> None:
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
            at, place = (((_LEFT + x * wide), _TOP + y * high) for x, y in _PLACES[detail])
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
