"""The profile of the aesthetic joint in the board of each wall: width, depth, and the board that stays under it."""

from math import cos, pi, sin
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures.scales import choose_scale, count_mm, tell_length, tell_scale
from specgen.documents.figures.section_sheet import PAGE_WIDTH, Point, Sheet, wave
from specgen.documents.marks import list_marks, name_walls
from specgen.model.absence import Absent
from specgen.model.block import Figure
from specgen.model.value_text import words
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

_LEFT, _TOP, _ROOM = 26.0, 10.0, 52.0
_SIDE = 20.0  # of the board on either side of the joint
_SKIN = 0.9  # of the lamina on paper, not to scale
_WORDS = 112.0


class Profile(NamedTuple):
    """A joint and the board it is cut into."""

    kind: str
    width: Quantity
    depth: Quantity
    board: Quantity
    rasp: Quantity
    groove: Quantity
    left: Quantity


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """One figure for each board that the joint is cut into."""
    found: dict[Profile, list[str]] = {}
    for mark in list_marks(context, "walls"):
        profile = _find_profile(context, mark)
        if profile is not None:
            found.setdefault(profile, []).append(mark)
    return tuple(_draw_profile(context, profile, marks) for profile, marks in found.items())


def _find_profile(context: DocumentContext, wall: str) -> Profile | None:
    """The profile on a wall; None where a figure of it is not known, or the joint cuts through the board."""
    kind, width, depth = (context.project.get(("aesthetic_joint", name)) for name in ("profile", "width", "depth"))
    if kind is None or width is None or depth is None:
        return None
    try:
        working = context.resolve(("walls", wall), "remaining-board")
    except Absent:
        return None
    if not isinstance(working, Working) or working.result <= 0:
        return None
    at = ("walls", wall)
    nothing = Quantity.of(0, "mm")
    grooved = context.project.get((*at, "drainage", "kind")) == "grooved_board"
    groove = context.project.get((*at, "drainage", "groove_depth")) if grooved else nothing
    rasp = context.project.get((*at, "insulation", "rasp_allowance")) or nothing
    board = context.project.value((*at, "insulation", "thickness"))
    return Profile(kind, width, depth, board, rasp, groove, working.quantity)


def _draw_profile(context: DocumentContext, profile: Profile, marks: list[str]) -> Figure:
    """The figure of one profile, the face of the wall above."""
    sheet = Sheet()
    scale = choose_scale(count_mm(profile.board), _ROOM, context.first)
    lengths = (profile.width, profile.depth, profile.board - profile.rasp, profile.groove)
    wide, deep, high, back = (count_mm(length) / scale for length in lengths)
    right, bottom = _LEFT + 2 * _SIDE + wide, _TOP + high
    groove = _cut(profile.kind, _LEFT + _SIDE, wide, deep)
    grooves = _cut_back(back, right, bottom)
    outline = [*wave(_LEFT, _TOP, bottom), *grooves, *reversed(wave(right, _TOP, bottom)), *reversed(groove)]
    sheet.area("board", outline)
    skin = [(x, y - _SKIN) for x, y in groove]
    face = [(_LEFT, _TOP - _SKIN), *skin, (right, _TOP - _SKIN), (right, _TOP), *reversed(groove), (_LEFT, _TOP)]
    sheet.area("lamina", face)
    _dimension(context, sheet, profile, (wide, deep, bottom, bottom - back))
    y = _TOP
    for line in (
        *_list_words(context, profile),
        f"{tell_scale(scale, context.first)}; base coat and finish not to scale",
    ):
        y += sheet.say_lines(_WORDS, y, line, PAGE_WIDTH - _WORDS - 1) + 1.2
    named = name_walls(marks)
    return sheet.finish(
        "joint_profile", f"Aesthetic joint, {named}", _describe(context, profile, named), max(bottom + 1, y)
    )


def _cut(kind: str, x: float, wide: float, deep: float) -> list[Point]:
    """The outline of the joint from left to right, cut down from the face."""
    top, low = _TOP, _TOP + deep
    if kind == "v":
        return [(x, top), (x + wide / 2, low), (x + wide, top)]
    if kind == "rounded":
        turns = [pi - pi * n / 16 for n in range(17)]
        return [(x + wide / 2 + wide / 2 * cos(turn), top + deep * sin(turn)) for turn in turns]
    inset = wide / 4 if kind == "trapezoid" else 0.0
    return [(x, top), (x + inset, low), (x + wide - inset, low), (x + wide, top)]


def _cut_back(groove: float, right: float, bottom: float) -> list[Point]:
    """The drainage grooves in the back of the board, from left to right; none where it has none."""
    if not groove:
        return []
    apart, wide = (right - _LEFT) / 6, (right - _LEFT) / 24
    points: list[Point] = []
    for n in range(1, 6):
        x = _LEFT + n * apart
        points += [(x - wide, bottom), (x - wide, bottom - groove), (x + wide, bottom - groove), (x + wide, bottom)]
    return points


def _dimension(
    context: DocumentContext, sheet: Sheet, profile: Profile, paper: tuple[float, float, float, float]
) -> None:
    """Width above, depth and remaining board at the right, the board at the left."""
    wide, deep, bottom, floor = paper
    start = _LEFT + _SIDE
    right = start + wide + _SIDE
    skin = _TOP - _SKIN
    sheet.measure_across(start, start + wide, _TOP - 5, tell_length(context, profile.width), (skin, skin))
    middle = start + wide / 2
    reach, line = right + 0.5, right + 5
    sheet.measure_down(_TOP, _TOP + deep, line, tell_length(context, profile.depth), (reach, middle))
    sheet.measure_down(_TOP + deep, floor, line, tell_length(context, profile.left), (line, reach))
    board = tell_length(context, profile.board - profile.rasp)
    sheet.measure_down(_TOP, bottom, _LEFT - 5, board, (_LEFT - 0.5, _LEFT - 0.5))


def _list_words(context: DocumentContext, profile: Profile) -> list[str]:
    tolerance = context.display(("aesthetic_joint", "tolerance"))
    least = context.limit("board.left_under_joint").text
    wide, deep = tell_length(context, profile.width), tell_length(context, profile.depth)
    lines = [f"Joint: {words(profile.kind)}, {wide} wide, {deep} deep"]
    lines[0] += "" if tolerance.open else f", tolerance {tolerance.text}"
    rasped = f", less {tell_length(context, profile.rasp)} rasped" if profile.rasp.amount else ""
    lines.append(f"Board: {tell_length(context, profile.board)}{rasped}")
    if profile.groove.amount:
        lines.append(f"Drainage groove at the back: {tell_length(context, profile.groove)} deep")
    lines.append(f"Remaining board: {tell_length(context, profile.left)}; minimum {least}")
    return lines


def _describe(context: DocumentContext, profile: Profile, named: str) -> str:
    return f"Section through the aesthetic joint of {named}, face above. {'. '.join(_list_words(context, profile))}."
