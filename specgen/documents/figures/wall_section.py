"""The build-up of each wall in section: every layer named, board and sheathing dimensioned and to scale."""

from itertools import groupby

from specgen.documents.context import DocumentContext
from specgen.documents.figures.scales import choose_scale, count_mm, tell_length, tell_scale
from specgen.documents.figures.section_sheet import LEAD, PAGE_WIDTH, SIZE, Sheet, wave, wrap
from specgen.documents.figures.wall_layers import Layer, list_layers
from specgen.documents.marks import list_marks, name_walls
from specgen.model.block import Figure

# Layers that are not to scale, in millimeters on paper.
_DRAWN = {"plain": 9.0, "masonry": 16.0, "film": 0.9, "coat": 1.4, "adhesive": 2.6, "mat": 1.6, "lamina": 2.4}
_DRAWN |= {"sheathing": 6.0}
_APART = 0.5  # white beside a film, as between narrow areas filled in black
_LEFT, _TOP, _ROOM = 3.0, 4.0, 62.0


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """One figure for each build-up; walls that share one share it."""
    told = [(list_layers(context, mark), mark) for mark in list_marks(context, "walls")]
    by_layers: dict[tuple[Layer, ...], list[str]] = {}
    for layers, mark in told:
        if any(layer.kind == "board" for layer in layers):
            by_layers.setdefault(layers, []).append(mark)
    scale = max((_choose_scale(context, layers) for layers in by_layers), default=1)
    return tuple(_draw_wall(context, layers, marks, scale) for layers, marks in by_layers.items())


def _choose_scale(context: DocumentContext, layers: tuple[Layer, ...]) -> int:
    """The largest scale at which a build-up has room beside its words."""
    scaled = [layer.thickness for layer in layers if layer.thickness is not None]
    free = sum(_DRAWN[layer.kind] + _APART for layer in layers if layer.thickness is None)
    return choose_scale(float(sum(map(count_mm, scaled))), _ROOM - free + _LEFT, context.first)


def _draw_wall(context: DocumentContext, layers: tuple[Layer, ...], marks: list[str], scale: int) -> Figure:
    """The figure of one build-up at the scale of all, inside to the left."""
    sheet = Sheet()
    places = _place(layers, scale)
    end = places[-1][1]
    words = max(end + 9, 45)
    wraps = [wrap(layer.words, PAGE_WIDTH - words - 1) for layer in layers]
    rows = [len(lines) * SIZE * LEAD + 2.4 for lines in wraps]
    bottom = _TOP + 4 + sum(rows)
    for layer, (left, right) in zip(layers, places, strict=True):
        _draw_layer(sheet, layer, left, right, bottom)
    sheet.say(_LEFT, _TOP - 1, "Inside")
    sheet.say(max(end, _LEFT + 28), _TOP - 1, "Outside", anchor="end")
    down = _TOP + 4
    for lines, row, (left, right) in zip(wraps, rows, places, strict=True):
        sheet.lead(((left + right) / 2, down), (words - 1, down))
        for number, line in enumerate(lines):
            sheet.say(words, down + SIZE * 0.36 + number * SIZE * LEAD, line)
        down += row
    low = _measure(context, sheet, layers, places, bottom)
    note = f"{tell_scale(scale, context.first)} for {_name_scaled(layers)}; other layers not to scale."
    sheet.say(_LEFT, low + 5.5, note)
    named = name_walls(marks)
    alt = f"Section through {named}, inside to outside: {'; '.join(layer.words for layer in layers)}. {note}"
    return sheet.finish("wall_section", f"Build-up of {named}", alt, low + 7.5)


def _place(layers: tuple[Layer, ...], scale: int) -> list[tuple[float, float]]:
    """Where each layer begins and ends, from left to right."""
    places, x = [], _LEFT
    for layer in layers:
        wide = _DRAWN[layer.kind] if layer.thickness is None else count_mm(layer.thickness) / scale
        x += _APART if layer.kind == "film" else 0
        places.append((x, x + wide))
        x += wide + (_APART if layer.kind == "film" else 0)
    return places


def _draw_layer(sheet: Sheet, layer: Layer, left: float, right: float, bottom: float) -> None:
    """The area of a layer, with the mesh in it and the fasteners through it."""
    if layer.kind == "plain":
        sheet.line("thin", *wave(left, _TOP, bottom))
        for y in (_TOP, bottom):
            sheet.line("outline", (left, y), (right, y))
        return
    begin = wave(left, _TOP, bottom) if left == _LEFT else [(left, _TOP), (left, bottom)]
    sheet.area(layer.kind, [*begin, (right, bottom), (right, _TOP)])
    for n in range(layer.mesh):
        x = left + (right - left) * (n + 1) / (layer.mesh + 1)
        sheet.line("mesh", (x, _TOP), (x, bottom))
    if layer.fastened:
        y = (_TOP + bottom) / 2 + 3
        sheet.line("metal", (right - 0.5, y - 3), (right - 0.5, y + 3))
        sheet.line("metal", (right - 0.5, y), (_LEFT + 4, y))


def _measure(
    context: DocumentContext, sheet: Sheet, layers: tuple[Layer, ...], places: list[tuple[float, float]], bottom: float
) -> float:
    """Dimensions of the layers that are to scale, each on a line of its own; the height where they end."""
    y = bottom + 1.5
    for layer, (left, right) in zip(layers, places, strict=True):
        if layer.thickness is not None:
            y += 5.5
            sheet.measure_across(left, right, y, tell_length(context, layer.thickness), (bottom, bottom))
    return y


def _name_scaled(layers: tuple[Layer, ...]) -> str:
    """`sheathing and board`."""
    named = [name for name, _ in groupby(layer.name.lower() for layer in layers if layer.thickness is not None)]
    return " and ".join(named)
