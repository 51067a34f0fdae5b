"""How each water detail is drawn from its upper left corner, outside to the right; not to scale.

Each answers what its numbers point at, and where they stand, in the order of their words.
"""

from specgen.documents.figures.section_sheet import Point, Sheet, wave

Numbers = list[tuple[Point, Point]]
_HIGH = 40.0  # of a detail below its title


def draw_sill(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """The sill of an opening: a frame on its pan, board below."""
    x, y = corner
    _draw_wall(sheet, x, y + 24, y + _HIGH, barrier, edge=y + 24)
    sheet.area("frame", [(x + 12, y + 19.5), (x + 20, y + 19.5), (x + 20, y + 4), (x + 12, y + 4)])
    for side in (15, 17):
        sheet.line("thin", (x + side, y), (x + side, y + 4))
    sheet.line(
        "metal", (x + 9, y + 14), (x + 9, y + 20.2), (x + 34.5, y + 22.2), (x + 34.5, y + 26), (x + 35.6, y + 27.2)
    )
    return [
        ((x + 9, y + 16), (x + 3, y + 12)),
        ((x + 35.2, y + 26.8), (x + 46, y + 31)),
        ((x + 26, y + 20.8), (x + 46, y + 12)),
    ]


def draw_head(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """The head of an opening: board above, a flashing over the frame."""
    x, y = corner
    _draw_wall(sheet, x, y, y + 20, barrier, edge=y + 20)
    sheet.line("metal", (x + 16.8, y + 6), (x + 16.8, y + 22), (x + 35, y + 24), (x + 35, y + 27), (x + 36.1, y + 28.2))
    sheet.area("frame", [(x + 12, y + 25), (x + 20, y + 25), (x + 20, y + _HIGH - 3), (x + 12, y + _HIGH - 3)])
    for side in (15, 17):
        sheet.line("thin", (x + side, y + _HIGH - 3), (x + side, y + _HIGH))
    return [
        ((x + 16.8, y + 21), (x + 4, y + 27)),
        ((x + 35.7, y + 27.8), (x + 46, y + 32)),
        ((x + 26, y + 21.6), (x + 46, y + 15)),
    ]


def draw_parapet(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """The top of a wall: a cap over a membrane, the roof to the left."""
    x, y = corner
    sheet.area(
        "sheathing" if barrier else "masonry",
        [(x + 17, y + 9), (x + 27, y + 9), (x + 27, y + _HIGH), (x + 17, y + _HIGH)],
    )
    sheet.rectangle("board", x + 28, y + 9, 12, _HIGH - 9)
    sheet.rectangle("lamina", x + 40, y + 9, 1.3, _HIGH - 9)
    sheet.line("film", (x + 16.4, y + 16), (x + 16.4, y + 8.4), (x + 40.6, y + 7.2), (x + 42.2, y + 12))
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
        ((x + 45.6, y + 15), (x + 56, y + 22)),
    ]


def draw_roof_end(sheet: Sheet, corner: Point, _: bool) -> Numbers:
    """The end of a roof against a wall, seen toward the wall: the roof falls to the right."""
    x, y = corner

    def along(part: float, above: float = 0.0) -> Point:
        return x + 3 + 42 * part, y + 8 + 20 * part - above

    sheet.line("outline", along(0), along(1), (x + 45, y + 31), (x + 3, y + 31), along(0), closed=True)
    steps: list[Point] = []
    for n in range(6):
        steps += [along(n / 6, 5.5), (along((n + 1) / 6)[0], along(n / 6, 5.5)[1])]
    sheet.line("outline", along(0), *steps, along(1))
    sheet.line("hidden", along(0, 2.2), along(1, 2.2))
    sheet.area("plain", [along(0.93, 0.6), along(1, 5.5), (x + 53, y + 21), (x + 52, y + 27)])
    sheet.line("metal", along(1, 5.5), (x + 53, y + 21), (x + 52, y + 27), along(0.93, 0.6))
    sheet.line("outline", (x + 46, y + 29), (x + 46, y + 34), (x + 56, y + 34), (x + 56, y + 29))
    sheet.line("thin", *wave(x + 66, y, y + _HIGH))
    return [
        ((x + 51, y + 23), (x + 60, y + 17)),
        (along(0.42, 4.5), (x + 32, y + 5)),
        (along(0.2, 2.2), (x + 4, y + 24)),
    ]


def _draw_wall(sheet: Sheet, x: float, top: float, bottom: float, barrier: bool, *, edge: float) -> None:
    """A wall from `top` to `bottom` whose lamina is wrapped around the board at its edge, which is one of the two."""
    sheet.rectangle("sheathing" if barrier else "masonry", x + 10, top, 6, bottom - top)
    inner = edge + (1.3 if edge == top else -1.3)
    if barrier:
        sheet.line("film", (x + 16.5, top), (x + 16.5, bottom))
    other = bottom if edge == top else top
    sheet.area("board", [(x + 17.5, inner), (x + 31, inner), (x + 31, other), (x + 17.5, other)])
    skin = [(x + 17.5, edge), (x + 32.3, edge), (x + 32.3, other), (x + 31, other), (x + 31, inner), (x + 17.5, inner)]
    sheet.area("lamina", skin)
