"""What a layout is judged by, the most important first."""

from collections.abc import Iterable
from typing import NamedTuple

from specgen.laying_out.face import Face, Limits
from specgen.laying_out.measuring import Shape
from specgen.laying_out.runs import Run
from specgen.model.layout import LayoutScore


class Wishes(NamedTuple):
    """Where lines are wanted, each with how many features ask for it, and the sides a panel is wished to keep to."""

    upright: tuple[tuple[int, int], ...] = ()  # the place, and how often
    level: tuple[tuple[int, int], ...] = ()
    width: int | None = None  # ticks
    height: int | None = None


def is_over(shape: Shape, limits: Limits) -> bool:
    """Whether a piece is past a panel limit."""
    return shape.width > limits.max_width or shape.height > limits.max_height or shape.area > limits.max_area


def is_past_wish(shape: Shape, wishes: Wishes) -> bool:
    """Whether a piece is wider or higher than the architect wishes."""
    return bool(
        (wishes.width is not None and shape.width > wishes.width)
        or (wishes.height is not None and shape.height > wishes.height)
    )


def score(
    face: Face,
    shapes: list[Shape],
    runs: Iterable[Run],
    lines: tuple[tuple[int, ...], tuple[int, ...]],
    wishes: Wishes,
) -> LayoutScore:
    """The score of pieces, aesthetic joints and lines of each way."""
    upright = {*lines[0], *(joint.at for joint in face.upright)}
    level = {*lines[1], *(joint.at for joint in face.level)}
    areas = [shape.area for shape in shapes]
    return LayoutScore(
        over_limits=sum(is_over(shape, face.limits) for shape in shapes),
        slivers=sum(shape.least < face.limits.least_side for shape in shapes),
        missed=_count_missed(upright, wishes.upright) + _count_missed(level, wishes.level),
        joint_length=face.meters(sum(run.length for run in runs)),
        inequality=face.meters(max(areas) - min(areas)) / face.scale if areas else face.meters(0),
        asymmetry=count_unmirrored(face.width, lines[0], upright),
        past_wish=sum(is_past_wish(shape, wishes) for shape in shapes),
    )


def _count_missed(lines: set[int], wanted: tuple[tuple[int, int], ...]) -> int:
    return sum(times for at, times in wanted if at not in lines)


def count_unmirrored(width: int, lines: Iterable[int], cuts: set[int]) -> int:
    """How many lines have no line or joint at their mirror image about the middle of the face."""
    return sum(width - at not in cuts for at in lines)
