"""How each water detail is drawn from its upper left corner, outside to the right; not to scale.

Each answers what its numbers point at, and where they stand, in the order of their words.
"""

from specgen.documents.figures.section_sheet import Point, Sheet, wave

Numbers = list[tuple[Point, Point]]
_HIGH = 35.0  # of a detail below its title


def draw_sill(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """The sill of an opening: a frame on its pan, board below."""
    x, y = corner
    _draw_wall(sheet, x, y + 24, y + _HIGH, barrier, edge=y + 24)
    _draw_frame(sheet, x, y + 4, y + 19.5, y, y + 4)
    sheet.line(
        "metal", (x + 9, y + 14), (x + 9, y + 20.2), (x + 34.5, y + 22.2), (x + 34.5, y + 26), (x + 35.6, y + 27.2)
    )
    return [
        ((x + 9, y + 16), (x + 3, y + 12)),
        ((x + 35.2, y + 26.8), (x + 46, y + 31)),
        ((x + 26, y + 20.8), (x + 46, y + 12)),
    ]


def draw_threshold(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """A door at the lower edge of the EIFS: its threshold on a pan, no board below."""
    x, y = corner
    sheet.rectangle("sheathing" if barrier else "masonry", x + 10, y + 24, 12, _HIGH - 24)
    _draw_frame(sheet, x, y + 4, y + 19.5, y, y + 4)
    sheet.line(
        "metal", (x + 9, y + 14), (x + 9, y + 20.2), (x + 24.5, y + 21.9), (x + 24.5, y + 28), (x + 25.6, y + 29.2)
    )
    return [
        ((x + 9, y + 16), (x + 3, y + 12)),
        ((x + 24.5, y + 26), (x + 40, y + 29)),
        ((x + 22, y + 20.9), (x + 40, y + 14)),
    ]


def draw_head(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """The head of an opening: board above, a flashing over the frame, sealant between the two."""
    x, y = corner
    _draw_wall(sheet, x, y, y + 20, barrier, edge=y + 20, film=17.1)
    sheet.line("metal", (x + 16.5, y + 6), (x + 16.5, y + 22), (x + 35, y + 24), (x + 35, y + 27), (x + 36.1, y + 28.2))
    _draw_frame(sheet, x, y + 25, _HIGH - 3 + y, y + _HIGH - 3, y + _HIGH)
    sheet.area("sealant", [(x + 17.4, y + 22.1), (x + 20, y + 22.4), (x + 20, y + 25), (x + 17.4, y + 25)])
    return [
        ((x + 16.5, y + 21), (x + 4, y + 27)),
        ((x + 35.7, y + 27.8), (x + 46, y + 31)),
        ((x + 26, y + 21.6), (x + 46, y + 15)),
        ((x + 18.7, y + 23.6), (x + 29, y + 32)),
    ]


def draw_floor_line(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """A level joint at a floor of a drained wall: flashing at its top, sealant below, the barrier looped behind."""
    x, y = corner
    _draw_wall(sheet, x, y, y + 12, barrier, edge=y + 12, film=17.1)
    _draw_wall(sheet, x, y + 22, y + _HIGH, barrier, edge=y + 22)
    for top, bottom in ((12, 15), (18, 22)):
        sheet.rectangle("sheathing" if barrier else "masonry", x + 10, y + top, 6, bottom - top)
    if barrier:
        sheet.line(
            "film", (x + 16.4, y + 13), (x + 16.4, y + 15), (x + 14.6, y + 16.5), (x + 16.4, y + 18), (x + 16.4, y + 22)
        )
    sheet.line(
        "metal", (x + 16.6, y + 3), (x + 16.6, y + 13.6), (x + 35, y + 15.6), (x + 35, y + 18), (x + 36.1, y + 19.2)
    )
    sheet.circle("rod", (x + 25.5, y + 18.4), 4.6, 7.0)
    sheet.area(
        "sealant", [(x + 28, y + 15), (x + 32, y + 15.4), (x + 31.2, y + 18.7), (x + 32, y + 22), (x + 28, y + 22)]
    )
    return [
        ((x + 16.6, y + 8), (x + 4, y + 8)),
        ((x + 35.7, y + 18.8), (x + 46, y + 22)),
        ((x + 26, y + 13.3), (x + 46, y + 10)),
        ((x + 30, y + 20), (x + 46, y + 31)),
        ((x + 14.6, y + 16.5), (x + 4, y + 20)),
    ]


def draw_parapet(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """The top of a wall: a cap over membrane on the wall and on the board, the roof to the left."""
    x, y = corner
    sheet.rectangle("sheathing" if barrier else "masonry", x + 17, y + 9, 10, _HIGH - 9)
    sheet.rectangle("board", x + 28, y + 10.3, 12, _HIGH - 10.3)
    for left, across, high in ((28, 12, 1.3), (40, 1.3, _HIGH - 9)):
        sheet.rectangle("lamina", x + left, y + 9, across, high)
    sheet.line("film", (x + 16.4, y + 16), (x + 16.4, y + 8.4), (x + 27.5, y + 8.4), (x + 27.5, y + 15))
    sheet.line("film", (x + 21, y + 7.6), (x + 42, y + 7.6), (x + 42, y + 9.6))
    sheet.line("outline", (x + 1, y + 31), (x + 16.4, y + 31), (x + 16.4, y + 17))
    cap = (
        (x + 12, y + 14),
        (x + 13, y + 12.8),
        (x + 13, y + 6.6),
        (x + 45, y + 3.4),
        (x + 45, y + 14.4),
        (x + 46.1, y + 15.6),
    )
    sheet.line("metal", *cap)
    return [
        ((x + 24, y + 5.5), (x + 8, y + 2)),
        ((x + 16.4, y + 12), (x + 6, y + 20)),
        ((x + 38, y + 7.6), (x + 49, y + 5)),
        ((x + 45.6, y + 15), (x + 49, y + 23)),
    ]


def draw_roof_end(sheet: Sheet, corner: Point, _: bool) -> Numbers:
    """The end of a roof against a wall, seen toward the wall: the roof falls to the right."""
    x, y = corner

    def along(part: float, above: float = 0.0) -> Point:
        return x + 3 + 33 * part, y + 8 + 20 * part - above

    sheet.line("outline", along(0), along(1), (x + 36, y + 31), (x + 3, y + 31), along(0), closed=True)
    steps: list[Point] = []
    for n in range(6):
        steps += [along(n / 6, 5.5), (along((n + 1) / 6)[0], along(n / 6, 5.5)[1])]
    sheet.line("outline", along(0), *steps, along(1))
    sheet.line("hidden", along(0, 2.2), along(1, 2.2))
    sheet.area("plain", [along(0.93, 0.6), along(1, 5.5), (x + 44, y + 21), (x + 43, y + 27)])
    sheet.line("metal", along(1, 5.5), (x + 44, y + 21), (x + 43, y + 27), along(0.93, 0.6))
    sheet.line("outline", (x + 37, y + 29), (x + 37, y + 34), (x + 47, y + 34), (x + 47, y + 29))
    sheet.line("thin", *wave(x + 50.5, y, y + _HIGH))
    return [
        ((x + 42, y + 23), (x + 45, y + 12)),
        (along(0.42, 4.5), (x + 30, y + 5)),
        (along(0.2, 2.2), (x + 5, y + 25)),
    ]


def draw_lower_edge(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """The lower edge of the EIFS on its starter, above grade."""
    x, y = corner
    sheet.rectangle("sheathing" if barrier else "masonry", x + 10, y, 6, 32)
    if barrier:
        sheet.line("film", (x + 16.5, y), (x + 16.5, y + 24))
    sheet.rectangle("board", x + 17.5, y, 13.5, 20)
    sheet.rectangle("lamina", x + 31, y, 1.3, 20.6)
    sheet.line("metal", (x + 17, y + 12), (x + 17, y + 20.6), (x + 32.3, y + 20.6), (x + 33.4, y + 22))
    sheet.line("outline", (x + 16, y + 32), (x + 44, y + 32))
    sheet.line("thin", (x + 37, y + 22), (x + 37, y + 32))
    return [
        ((x + 24, y + 20.6), (x + 4, y + 25)),
        ((x + 31.6, y + 14), (x + 46, y + 10)),
        ((x + 37, y + 27), (x + 46, y + 25)),
    ]


def _draw_frame(sheet: Sheet, x: float, top: float, bottom: float, start: float, end: float) -> None:
    """The frame of an opening, and the glass or leaf that goes on from `start` to `end`."""
    sheet.rectangle("frame", x + 12, top, 8, bottom - top)
    for side in (15, 17):
        sheet.line("thin", (x + side, start), (x + side, end))


def _draw_wall(
    sheet: Sheet, x: float, top: float, bottom: float, barrier: bool, *, edge: float, film: float = 16.5
) -> None:
    """A wall from `top` to `bottom` whose lamina is wrapped around the board at its edge, which is one of the two."""
    sheet.rectangle("sheathing" if barrier else "masonry", x + 10, top, 6, bottom - top)
    inner = edge + (1.3 if edge == top else -1.3)
    if barrier:
        sheet.line("film", (x + film, top), (x + film, bottom))
    other = bottom if edge == top else top
    sheet.area("board", [(x + 17.5, inner), (x + 31, inner), (x + 31, other), (x + 17.5, other)])
    skin = [(x + 17.5, edge), (x + 32.3, edge), (x + 32.3, other), (x + 31, other), (x + 31, inner), (x + 17.5, inner)]
    sheet.area("lamina", skin)
