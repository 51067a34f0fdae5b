"""Sealant joints in section: width, depth, backer rod, bond faces, and where the gloss stops."""

from typing import Any, NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures.labels import measure, shorten
from specgen.documents.figures.scales import choose_scale, count_mm, tell_length, tell_scale
from specgen.documents.figures.section_sheet import PAGE_WIDTH, SIZE, Point, Sheet, wave
from specgen.documents.joint_flashing import BESIDE_OTHER_WORK, is_flashed
from specgen.documents.marks import list_marks, name_member
from specgen.documents.members import span_marks
from specgen.model.block import Figure
from specgen.model.series import join_series
from specgen.model.value_text import words
from specgen.quantities.quantity import Quantity

_COLUMNS, _ROWS = 3, 3  # of sections in one figure
_PANEL = PAGE_WIDTH / _COLUMNS
_PIECE, _ROOM, _SKIN = 11.0, 14.0, 1.3  # of wall beside a joint, of the joint, and of the lamina on paper
_WORDS, _KEY = 13.0, 7.0  # what the words above a section take, and its numbers below
_HOLLOW = 0.9  # of the tooled face, in the middle of the bead
_WEEP, _DRIP = 1.6, 1.4  # of a flashing: the room that drains above it, and how far it stands out


class Bead(NamedTuple):
    """What is the same in the joints of one section."""

    width: Quantity
    depth: Quantity
    rod: Quantity | None
    rod_kind: str
    tape: bool
    face: str
    sealant: str
    between_eifs: bool
    flashed: bool
    level: bool  # whether it runs along, so that its sides lie below and above it


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """Figures of up to nine sections, one for all joints that are built alike."""
    found: dict[Bead, list[str]] = {}
    for mark in list_marks(context, "joints"):
        bead = _find_bead(context, mark)
        if bead is not None:
            found.setdefault(bead, []).append(mark)
    beads, most = list(found.items()), _COLUMNS * _ROWS
    return tuple(_draw_beads(context, beads[first : first + most]) for first in range(0, len(beads), most))


def _find_bead(context: DocumentContext, mark: str) -> Bead | None:
    """How a joint is built; None where its width or depth is not given."""

    def get(name: str) -> Any:
        return context.project.get(("joints", mark, name))

    width, depth, sealant, face = get("width"), get("depth"), get("sealant"), get("bond_face")
    if width is None or depth is None:
        return None
    kind = get("rod_kind") or ""
    rod = get("rod_diameter") if kind != "none" else None
    between, flashed = get("kind") not in BESIDE_OTHER_WORK, is_flashed(context, ("joints", mark))
    tape, named = bool(get("bond_break_tape")), getattr(sealant, "mark", "")
    return Bead(width, depth, rod, kind, tape, face or "", named, between, flashed, get("runs") == "horizontal")


def _draw_beads(context: DocumentContext, beads: list[tuple[Bead, list[str]]]) -> Figure:
    sheet = Sheet()
    scale = choose_scale(max(count_mm(bead.width) for bead, _ in beads), _ROOM, context.first)
    tall = _WORDS + max(_find_height(bead, scale) for bead, _ in beads) + _KEY
    for number, (bead, marks) in enumerate(beads):
        x, y = number % _COLUMNS * _PANEL + 1, number // _COLUMNS * tall + _WORDS
        _draw_bead(context, sheet, bead, scale, (x, y), first=number == 0)
        _name_bead(context, sheet, bead, marks, (x, y - 9))
    rows = -(-len(beads) // _COLUMNS)
    # Numbers and sides stand below the first section and level ones alone.
    last = beads[(rows - 1) * _COLUMNS :]
    down = rows * tall + 1 - (_KEY - 1 if rows > 1 and not any(bead.level for bead, _ in last) else 0)
    only = [bead for bead, _ in beads]
    down = sheet.list_key(_list_key(context, only), down)
    note = f"{tell_scale(scale, context.first)}; base coat and finish not to scale."
    sheet.say(2, down + SIZE + 1, note)
    named = [mark for _, marks in beads for mark in marks]
    caption = f"Sealant joint{'s' if len(named) > 1 else ''} in section: {span_marks(named)}"
    return sheet.finish("sealant_joint", caption, _describe(context, beads), down + SIZE + 3)


def _draw_bead(context: DocumentContext, sheet: Sheet, bead: Bead, scale: int, corner: Point, *, first: bool) -> None:
    """One section, the face of the wall above; the numbers of the key stand in the first one."""
    wide, deep = count_mm(bead.width) / scale, count_mm(bead.depth) / scale
    rod = count_mm(bead.rod) / scale if bead.rod is not None else 0.0
    x, top = corner
    left, right, bottom = x + _PIECE, x + _PIECE + wide, top + _find_height(bead, scale)
    _draw_wall(sheet, bead, (x, left), top, bottom)
    if bead.flashed:
        _draw_wall(sheet, bead, (right + _PIECE, right + _WEEP), top, bottom)
        sheet.line("metal", (right, bottom), (right, top - _DRIP), (right - 1.1, top - _DRIP - 0.9))
    elif bead.between_eifs:
        _draw_wall(sheet, bead, (right + _PIECE, right), top, bottom)
    else:
        far = [(right, bottom), (right, top), *wave(right + _PIECE, top, bottom)]
        sheet.area("frame", far)
    if rod:
        sheet.circle("rod", ((left + right) / 2, top + _HOLLOW + deep + rod / 2), wide, rod)
    sheet.area("sealant", _shape_bead(left, right, top, deep, rod > 0))
    if bead.tape:
        sheet.line("metal", (left, top + _HOLLOW + deep), (right, top + _HOLLOW + deep))
    sheet.measure_across(left, right, top - 4.8, tell_length(context, bead.width), (top - 0.6, top - 0.6))
    middle, tooled = (left + right) / 2, top + _HOLLOW
    level = right + _PIECE + 3.2
    sheet.measure_down(tooled, tooled + deep, level, tell_length(context, bead.depth), (middle, middle))
    if bead.level:
        for middle, side in (((x + left) / 2, "below"), (right + _PIECE / 2, "above")):
            sheet.say(middle, bottom + SIZE + 0.6, side, anchor="middle")
    if first:
        _number(sheet, bead, (left, right, top, bottom), deep, rod)


def _find_height(bead: Bead, scale: int) -> float:
    """How far a section reaches below the face: the bead, its rod, and some of the return below them."""
    rod = count_mm(bead.rod) if bead.rod is not None else 0.0
    return float(max((count_mm(bead.depth) + max(rod, count_mm(bead.width) / 2)) / scale + 4 + _HOLLOW, 20.0))


def _name_bead(context: DocumentContext, sheet: Sheet, bead: Bead, marks: list[str], at: Point) -> None:
    """The joints of a section above it, and beside them the rod."""
    rod = f"rod Ø {tell_length(context, bead.rod)}" if bead.rod is not None else ""
    named = shorten(span_marks(marks), _PANEL - 5 - measure(rod, SIZE), SIZE, bold=True)
    sheet.say(*at, named, bold=True)
    if rod:
        sheet.say(at[0] + measure(named, SIZE, bold=True) + 2, at[1], rod)


def _draw_wall(sheet: Sheet, bead: Bead, sides: Point, top: float, bottom: float) -> None:
    """The board on one side with base coat on face and return, and the gloss that stops at the edge."""
    far, near = sides
    inward = 1 if near > far else -1
    skin = near - inward * _SKIN
    sheet.area("board", [(skin, bottom), (skin, top + _SKIN), *wave(far, top + _SKIN, bottom)])
    lamina = [(far, top), (near, top), (near, bottom), (skin, bottom), (skin, top + _SKIN), (far, top + _SKIN)]
    sheet.area("lamina", lamina)
    sheet.line("metal", (far, top - 0.6), (near, top - 0.6))
    if bead.face == "gloss":
        sheet.line("metal", (near, top - 0.6), (near, bottom))
    else:
        sheet.line("hidden", (near + inward * 0.5, top - 0.6), (near + inward * 0.5, bottom))


def _shape_bead(left: float, right: float, top: float, deep: float, on_rod: bool) -> list[Point]:
    """The sealant, hollow outside by its tooling and inside by the rod, its depth at the middle."""
    upper, steps = [], 12
    for n in range(steps + 1):
        part = 2 * n / steps - 1
        upper.append((left + (right - left) * n / steps, top + _HOLLOW * (1 - part * part)))
    if not on_rod:
        return [*upper, (right, top + _HOLLOW + deep), (left, top + _HOLLOW + deep)]
    lower = []
    for n in range(steps + 1):
        part = 2 * n / steps - 1
        lower.append((right - (right - left) * n / steps, top + _HOLLOW + deep * (1 + 0.45 * part * part)))
    return [*upper, *lower]


def _number(sheet: Sheet, bead: Bead, edges: tuple[float, float, float, float], deep: float, rod: float) -> None:
    """The numbers of the key in a section."""
    left, right, top, bottom = edges
    middle = (left + right) / 2
    sheet.number((middle, top + deep * 0.5), (left - 5.5, top + 7.0), "1")
    if rod:
        sheet.number((middle, top + _HOLLOW + deep + rod * 0.6), (left - 5.5, top + 13.0), "2")
    elif bead.tape:
        sheet.number((middle, top + _HOLLOW + deep), (left - 5.5, top + 13.0), "2")
    sheet.number((left, top + deep * 0.7), (right + 6.5, top + 7.5), "3")
    if bead.face != "gloss":
        sheet.number((left - 4, top - 0.6), (left - 8, top - 4.6), "4")
    sheet.number((left - _SKIN / 2, bottom - 2), (left - 6, bottom + 3.5), "5")
    sheet.number((right + 2.6, bottom - 4), (right + 7, bottom + 3.5), "6")


def _list_key(context: DocumentContext, beads: list[Bead]) -> list[tuple[str, str]]:
    """What the numbers stand for."""
    sealants = dict.fromkeys(name_member(context, "sealants", bead.sealant) for bead in beads if bead.sealant)
    rods = dict.fromkeys(words(bead.rod_kind) for bead in beads if bead.rod is not None)
    tape = any(bead.tape for bead in beads)
    tinted = context.project.get(("primer", "tinted"))
    faces = dict.fromkeys(
        ("tinted " if bead.face == "primer" and tinted else "") + words(bead.face) for bead in beads if bead.face
    )
    bare = any(bead.face != "gloss" for bead in beads)
    backing = _name_backing([rod for rod in rods if rod], bool(rods), tape)
    other = ["EIFS"] if any(bead.between_eifs and not bead.flashed for bead in beads) else []
    other += ["EIFS drained over a flashing that the sealant bonds to"] if any(bead.flashed for bead in beads) else []
    other += (
        ["Frame or other work; where it stands back, the bead stands back with it"]
        if any(not bead.between_eifs for bead in beads)
        else []
    )
    kept = "" if "gloss" in faces else ", masked, free of gloss"
    key = [
        ("1", f"Sealant{': ' if sealants else ''}{', '.join(sealants)}; bonds to two faces only"),
        ("2", f"{backing}: bond break at the back"),
        ("3", f"Bond faces: {join_series(faces, 'or') or 'as scheduled'}{kept}"),
        ("4", "Gloss: stops at the edge of the return"),
        ("5", "Base coat and mesh, wrapped onto the return"),
        (
            "6",
            "Other side: "
            + ", or ".join(part if part.startswith("EIFS") else part[:1].lower() + part[1:] for part in other),
        ),
    ]
    left_out = {*(() if backing else ("2",)), *(() if bare else ("4",))}
    return [entry for entry in key if entry[0] not in left_out]


def _name_backing(kinds: list[str], rods: bool, tape: bool) -> str:
    """`Backer rod, closed-cell`; `Closed-cell backer rod or bond-breaker tape`; empty where there is neither."""
    if rods and not tape:
        return f"Backer rod, {join_series(kinds, 'or') or 'as scheduled'}"
    told = [f"{kind} backer rod" for kind in kinds] or ["backer rod"] if rods else []
    said = join_series([*told, *(["bond-breaker tape"] if tape else [])], "or")
    return said[:1].upper() + said[1:]


def _describe(context: DocumentContext, beads: list[tuple[Bead, list[str]]]) -> str:
    """Every section in words and numbers, and what the key says."""
    told = []
    for bead, marks in beads:
        rod = f"backer rod {tell_length(context, bead.rod)} in diameter" if bead.rod is not None else "no backer rod"
        size = f"{tell_length(context, bead.width)} wide, {tell_length(context, bead.depth)} deep"
        turned = ", the wall below it at the left" if bead.level else ""
        told.append(f"{span_marks(marks)}: {size}, {rod}{turned}")
    key = ". ".join(text for _, text in _list_key(context, [bead for bead, _ in beads]))
    return f"Sections through sealant joints, face above. {'; '.join(told)}. {key}."
