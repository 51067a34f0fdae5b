"""The mockup seen from the front: the place of each detail by its number, and the layers in steps."""

from fractions import Fraction
from itertools import pairwise

from specgen.documents.context import DocumentContext
from specgen.documents.figures.mockup_frame import Frame, make_frame
from specgen.documents.figures.scales import choose_scale, count_mm, tell_scale
from specgen.documents.figures.section_sheet import SIZE, Sheet
from specgen.documents.figures.wall_layers import BASE_COAT, list_layers, list_passes
from specgen.documents.mockup import list_mockup_walls, size_finished
from specgen.documents.views.mockup_details import list_places, name_places
from specgen.model.block import Figure
from specgen.model.value_text import value_text
from specgen.quantities.quantity import Quantity

_LEFT, _TOP, _WIDE, _HIGH = 37.0, 10.0, 105.0, 80.0
# The least size of the finished part on paper that holds its numbers; a smaller one is drawn larger, not to scale.
_LEAST_WIDE, _LEAST_HIGH = 36.0, 42.0
_SIGNS = "abcdefghijklmnopqrstuvwxyz"  # of the layers in steps
_COATS = {"Smoothing coat": "smoothing", "Primer": "primer", "Gloss": "gloss"}
_STEP = 3.2  # the least width of a step on paper


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
    frame = make_frame(context, finished, (_LEFT, _TOP), (wide, whole, high))
    _draw_finished(sheet, places, frame)
    _draw_steps(sheet, len(steps), frame)
    _number(sheet, places, frame)
    low = _measure(context, sheet, frame, finished)
    key = _list_key(context, steps)
    down = sheet.list_key(key, low + 4)
    note = "Not to scale."
    if scale:
        note = f"{tell_scale(scale, context.first)}; places of details are not to scale."
    sheet.say(2, down + SIZE + 1, note)
    size = f"{_tell(context, width)} wide and {_tell(context, finished[1])} high"
    alt = (
        f"Front of the mockup, {size}, with {_tell_lines(context, frame, finished)}; the places of its details: "
        f"{'; '.join(map(' '.join, key))}. {note}"
    )
    return sheet.finish("mockup_sketch", "Mockup: places of the details", alt, down + SIZE + 3)


def _measure(context: DocumentContext, sheet: Sheet, frame: Frame, finished: tuple[Quantity, Quantity]) -> float:
    """Dimensions from joint to joint, of the finished part and overall; how far down they reach."""
    bottom = _TOP + frame.high
    low, end = bottom + 7, frame.across(0)
    for start, stop in pairwise((Fraction(0), frame.upright, Fraction(1))):
        ends = sorted(frame.across(frame.wide * float(part)) for part in (start, stop))
        sheet.measure_across(ends[0], ends[1], low, _tell(context, finished[0] * (stop - start)), (bottom, bottom))
    for start, stop in pairwise((Fraction(0), *frame.levels, Fraction(1))):
        rows = (_TOP + frame.high * float(start), _TOP + frame.high * float(stop))
        sheet.measure_down(*rows, end + frame.side * 5, _tell(context, finished[1] * (stop - start)), (end, end))
    width = context.project.value(("mockup", "width"))
    for across, length in {frame.wide: finished[0], frame.whole: width}.items():
        low += 6
        ends = sorted((end, frame.across(across)))
        sheet.measure_across(ends[0], ends[1], low, _tell(context, length), (bottom, bottom))
    sheet.measure_down(_TOP, bottom, end + frame.side * 22, _tell(context, finished[1]), (end, end))
    return low


def _tell_lines(context: DocumentContext, frame: Frame, finished: tuple[Quantity, Quantity]) -> str:
    """The joints of the finished part, for those who do not see it."""
    across = _tell(context, finished[0] * frame.upright)
    *first, last = [_tell(context, finished[1] * (1 - at)) for at in reversed(frame.levels)]
    side, comma = "right" if frame.mirrored else "left", "," if len(first) > 1 else ""
    return f"a vertical joint {across} from the {side} and horizontal ones {', '.join(first)}{comma} and {last} up"


def _size(context: DocumentContext, width: Quantity, finished: tuple[Quantity, Quantity]) -> tuple[float, float, int]:
    """Width and height of the finished part on paper, and the scale; 0 where it is not to scale."""
    scale = max(
        choose_scale(count_mm(width), _WIDE, context.first), choose_scale(count_mm(finished[1]), _HIGH, context.first)
    )
    wide, high = (count_mm(side) / scale for side in finished)
    if wide < _LEAST_WIDE or high < _LEAST_HIGH or high > _HIGH or count_mm(width) / scale > _WIDE:
        return 50.0, 56.0, 0
    return wide, high, scale


def _draw_finished(sheet: Sheet, places: dict[str, str], frame: Frame) -> None:
    """The part with every coat: its joints, the opening, the mesh zones, the patch, the test area."""
    plan = frame.plan

    def box(kind: str, left: float, top: float, right: float, bottom: float) -> None:
        corners = ((left, top), (right, top), (right, bottom), (left, bottom))
        sheet.line(kind, *map(frame.at, corners), closed=True)

    box("edge", 0, 0, 1, 1)
    has_opening = "opening" in places or "sealant_joint" in places
    left, top, right, bottom = plan.opening
    joints = [((0.5, 0.0), (0.5, 1.0)), *(((0.0, level), (1.0, level)) for level in plan.levels)]
    for start, end in joints:
        sheet.line("outline", frame.at(start), frame.at(end))
    if has_opening:
        box("edge", *plan.opening)
        box("outline", left + 0.015, top + 0.015, right - 0.015, bottom - 0.015)
    if "each_mesh_zone" in places and not frame.edge_on_line:
        sheet.line("hidden", *(frame.at((x, plan.mesh_edge)) for x in (0.0, 1.0)))
    if "recoat_patch" in places:
        box("hidden", *plan.patch)


def _draw_steps(sheet: Sheet, count: int, frame: Frame) -> None:
    """The layers beside the finished part, each left in view beside the one that covers it."""
    wide, whole, high = frame.wide, frame.whole, frame.high
    if whole <= wide:
        return
    corners = ((wide, 0.0), (whole, 0.0), (whole, high), (wide, high))
    sheet.line("edge", *((frame.across(x), _TOP + y) for x, y in corners), closed=True)
    for n in range(count):
        start, end = (frame.across(wide + (whole - wide) * part / count) for part in (n, n + 1))
        if n:
            sheet.line("outline", (start, _TOP), (start, _TOP + high))
        sheet.say((start + end) / 2, _TOP + high / 2, _SIGNS[count - 1 - n], anchor="middle")


def _number(sheet: Sheet, places: dict[str, str], frame: Frame) -> None:
    """The number of each detail."""
    for detail, number in places.items():
        if detail == "build_up_steps":
            x = frame.across((frame.wide + frame.whole) / 2)
            sheet.number((x, _TOP + 4), (x + 4, _TOP - 5), number)
        elif detail == "test_area":
            _draw_test_area(sheet, frame, number)
        elif detail == "each_mesh_zone" and frame.edge_on_line:
            (x, _), place = frame.plan.places[detail]
            sheet.number(frame.at((x, frame.plan.levels[-1])), frame.at((place[0], place[1] - 0.12)), number)
        elif detail in frame.plan.places:
            at, place = map(frame.at, frame.plan.places[detail])
            sheet.number(at, place, number)


def _draw_test_area(sheet: Sheet, frame: Frame, number: str) -> None:
    """The area of the tests that destroy, beside the mockup."""
    bottom = _TOP + frame.high
    near, far = (frame.across(frame.whole + apart) for apart in (5, 17))
    corners = ((near, bottom), (far, bottom), (far, bottom - 14), (near, bottom - 14))
    sheet.line("hidden", *corners, closed=True)
    sheet.mark(((near + far) / 2, bottom - 7), number)


def _list_steps(context: DocumentContext) -> list[str]:
    """The names of the layers of the wall that the mockup shows first, from the substrate on."""
    walls = list_mockup_walls(context)
    layers = list_layers(context, walls[0]) if walls else ()
    names = [layer.name for layer in layers if layer.name != "Framing"]
    return [step for name in names for step in _list_coats(context, walls[0], name)]


def _list_coats(context: DocumentContext, wall: str, name: str) -> list[str]:
    """A layer, or each of its coats or passes where there are several."""
    if name == BASE_COAT:
        return list_passes(context, wall)
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
