"""How hoods, pipes, roofs below and corners of the wall are drawn, as the water details are; not to scale."""

from specgen.documents.figures.section_sheet import Point, Sheet

Numbers = list[tuple[Point, Point]]


def draw_ledge(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """A ledge of board on the board of the wall: its top slopes out, its underside has a drip groove."""
    x, y = corner
    _draw_backing(sheet, (x, y), 35, barrier)
    sheet.rectangle("board", x + 17.5, y, 13.5, 35)
    sheet.area("board", [(x + 31.6, y + 9), (x + 44, y + 16), (x + 44, y + 23), (x + 31.6, y + 23)])
    sheet.line("thin", (x + 31.3, y + 9), (x + 31.3, y + 23))
    sheet.rectangle("lamina", x + 31, y, 1.3, 8.6)
    sheet.rectangle("lamina", x + 31, y + 24.3, 1.3, 10.7)
    shell = [(x + 31, y + 7.4), (x + 45.3, y + 15.4), (x + 45.3, y + 24.3), (x + 31, y + 24.3)]
    inner = [(x + 31, y + 23), (x + 44, y + 23), (x + 44, y + 16.2), (x + 31, y + 9)]
    sheet.area("lamina", [*shell, *inner])
    sheet.area("plain", [(x + 40, y + 24.4), (x + 40, y + 21.6), (x + 42, y + 21.6), (x + 42, y + 24.4)])
    return [
        ((x + 38, y + 17.5), (x + 46, y + 7)),
        ((x + 41, y + 22.2), (x + 46, y + 31)),
        ((x + 31.3, y + 20), (x + 5, y + 27)),
        ((x + 45, y + 20), (x + 50, y + 17)),
    ]


def draw_penetration(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """A pipe through the wall in its collar, with sealant between the collar and the wrapped edge of the board."""
    x, y = corner
    pipe, sleeve = (y + 15.5, y + 19.5), (y + 13.5, y + 21.5)
    for top, bottom in ((y, sleeve[0]), (sleeve[1], y + 35)):
        sheet.rectangle("sheathing" if barrier else "masonry", x + 10, top, 6, bottom - top)
        near = bottom if top == y else top
        far = top if top == y else bottom
        edge, skin = (near - 3.5, near - 4.8) if top == y else (near + 3.5, near + 4.8)
        sheet.area("board", [(x + 17.5, skin), (x + 31, skin), (x + 31, far), (x + 17.5, far)])
        wrapped = [(x + 17.5, edge), (x + 32.3, edge), (x + 32.3, far), (x + 31, far), (x + 31, skin), (x + 17.5, skin)]
        sheet.area("lamina", wrapped)
        sheet.circle("rod", (x + 25.5, (edge + near) / 2), 4, 4)
        sheet.area(
            "sealant", [(x + 28, edge), (x + 32, edge), (x + 31.2, (edge + near) / 2), (x + 32, near), (x + 28, near)]
        )
    for side, flange in ((sleeve[0], sleeve[0] - 5), (sleeve[1], sleeve[1] + 5)):
        sheet.line("metal", (x + 16.6, flange), (x + 16.6, side), (x + 34, side))
    for side in pipe:
        sheet.line("outline", (x + 6, side), (x + 42, side))
    return [
        ((x + 33, sleeve[0]), (x + 43, y + 7)),
        ((x + 30, y + 23.3), (x + 43, y + 30)),
        ((x + 40, pipe[1]), (x + 49, y + 22)),
    ]


def draw_capped_ledge(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """A ledge of the wall under its metal cap, whose upper leg stands behind the board above."""
    x, y = corner
    _draw_backing(sheet, (x, y), 35, barrier)
    sheet.area("plain", [(x + 16, y + 13.2), (x + 44, y + 19.4), (x + 44, y + 24), (x + 16, y + 24)])
    _draw_edge(sheet, (x, y), edge=y + 10, end=y)
    _draw_edge(sheet, (x, y), edge=y + 25.4, end=y + 35)
    cap = ((x + 16.6, y + 2), (x + 16.6, y + 12.4), (x + 45.4, y + 18.8), (x + 45.4, y + 23))
    sheet.line("metal", *cap, (x + 46.5, y + 24.2))
    return [
        ((x + 36, y + 16.7), (x + 46, y + 8)),
        ((x + 46.1, y + 23.8), (x + 49, y + 31)),
        ((x + 38, y + 21.5), (x + 40, y + 31)),
    ]


def draw_roof_below(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """A roof that meets the wall below the EIFS: flashing behind the board, whose edge stays off the roofing."""
    x, y = corner
    _draw_backing(sheet, (x, y), 35, barrier)
    _draw_edge(sheet, (x, y), edge=y + 20, end=y)
    sheet.line("metal", (x + 16.6, y + 8), (x + 16.6, y + 30.8), (x + 36, y + 30.8))
    for level in (29.6, 32):  # the flashing lies within the roofing
        sheet.line("outline", (x + 17.4, y + level), (x + 48, y + level))
    sheet.line("thin", (x + 38, y + 20), (x + 38, y + 29.6))
    return [
        ((x + 16.6, y + 25), (x + 4, y + 24)),
        ((x + 31.6, y + 17), (x + 44, y + 10)),
        ((x + 38, y + 25), (x + 47, y + 21)),
    ]


def _draw_edge(sheet: Sheet, corner: Point, *, edge: float, end: float) -> None:
    """Board on its adhesive, from `end` to an edge around which its lamina is wrapped onto its back."""
    x, down = corner[0], 1 if edge > end else -1
    inner, back = edge - 1.3 * down, edge - 7 * down
    sheet.area("adhesive", [(x + 17.1, back), (x + 18.2, back), (x + 18.2, end), (x + 17.1, end)])
    sheet.area("board", [(x + 18.2, inner), (x + 31, inner), (x + 31, end), (x + 18.2, end)])
    face = [(x + 32.3, edge), (x + 32.3, end), (x + 31, end), (x + 31, inner)]
    wrap = [(x + 18.2, inner), (x + 18.2, back), (x + 17.2, back), (x + 17.2, edge)]
    sheet.area("lamina", [*face, *wrap])


def draw_corner(sheet: Sheet, corner: Point, barrier: bool) -> Numbers:
    """An outside corner from above: courses of board lapped alternately, base coat and mesh carried around."""
    x, y = corner
    sheet.area(
        "sheathing" if barrier else "masonry",
        [(x + 4, y + 16), (x + 24, y + 16), (x + 24, y + 35), (x + 18, y + 35), (x + 18, y + 22), (x + 4, y + 22)],
    )
    if barrier:
        sheet.line("film", (x + 4, y + 15.4), (x + 24.6, y + 15.4), (x + 24.6, y + 35))
    sheet.rectangle("board", x + 4, y + 5, 33, 9.5)
    sheet.rectangle("board", x + 25.5, y + 14.8, 11.5, 20.2)
    skin = [
        (x + 4, y + 3.7),
        (x + 38.3, y + 3.7),
        (x + 38.3, y + 35),
        (x + 37, y + 35),
        (x + 37, y + 5),
        (x + 4, y + 5),
    ]
    sheet.area("lamina", skin)
    return [
        ((x + 30, y + 14.6), (x + 46, y + 18)),
        ((x + 37.6, y + 8), (x + 46, y + 8)),
    ]


def _draw_backing(sheet: Sheet, corner: Point, high: float, barrier: bool) -> None:
    """What the board is bonded to, with its barrier."""
    x, y = corner
    sheet.rectangle("sheathing" if barrier else "masonry", x + 10, y, 6, high)
    if barrier:
        sheet.line("film", (x + 16.5, y), (x + 16.5, y + high))
