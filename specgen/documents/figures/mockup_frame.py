"""How the finished part of a mockup is parted by its joints, and where its details stand on paper.

Places are written for a part whose vertical joint stands at its half and whose horizontal ones stand at the heights of
its plan; where they stand elsewhere, the places move with them. What turns its corner at the right is drawn mirrored.
"""

from bisect import bisect_left
from fractions import Fraction
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures.section_sheet import Point
from specgen.documents.mockup import find_corner_side, find_full_panel, has_lines_at_corners, has_mesh_edge_on_line
from specgen.documents.views.mockup_details import list_places
from specgen.quantities.quantity import Quantity

# How far over the vertical joint may stand, in parts of the width, and how high the row of the full panel may be, in
# parts of the height.
_LINE, _ROW = (Fraction(2, 5), Fraction(2, 3)), (Fraction(1, 4), Fraction(1, 2))


class Plan(NamedTuple):
    """Where horizontal joints, opening and edge of the heavy mesh stand, and each number with what it points at.

    All in parts of the width and the height of the finished part from its upper left corner.
    """

    levels: tuple[float, ...]
    opening: tuple[float, float, float, float]  # left, top, right, bottom
    mesh_edge: float
    patch: tuple[float, float, float, float]
    places: dict[str, tuple[Point, Point]]


_SHARED: dict[str, tuple[Point, Point]] = {
    "full_panel": ((0.18, 0.44), (0.30, 0.52)),
    "grade_end": ((0.22, 1.0), (0.12, 0.93)),
    "day_stop": ((0.50, 0.87), (0.60, 0.95)),
}
# An opening clear of the joints, as on a wall whose lines do not meet its openings.
_CLEAR = Plan(
    (1 / 3, 2 / 3),
    (0.63, 0.39, 0.91, 0.61),
    0.8,
    (0.03, 0.025, 0.47, 0.31),
    {
        **_SHARED,
        "joint_crossing": ((0.50, 1 / 3), (0.39, 0.24)),
        "outside_corner": ((0.0, 0.09), (0.13, 0.09)),
        "opening": ((0.77, 0.46), (0.77, 0.52)),
        "head_flashing": ((0.77, 0.39), (0.88, 0.27)),
        "sill_pan": ((0.77, 0.61), (0.88, 0.73)),
        "sealant_joint": ((0.63, 0.56), (0.62, 0.73)),
        "each_mesh_zone": ((0.70, 0.80), (0.80, 0.90)),
        "each_color": ((0.66, 0.20), (0.78, 0.13)),
        "recoat_patch": ((0.14, 0.26), (0.24, 0.18)),
    },
)
# One corner of the opening where joints cross, the upper crossing left free.
_ONE_CORNER = Plan(
    _CLEAR.levels,
    (0.5, 0.44, 0.8, 2 / 3),
    0.8,
    _CLEAR.patch,
    {
        **_CLEAR.places,
        "opening": ((0.65, 0.50), (0.65, 0.56)),
        "head_flashing": ((0.72, 0.44), (0.86, 0.38)),
        "sill_pan": ((0.72, 2 / 3), (0.86, 0.74)),
        "sealant_joint": ((0.8, 0.56), (0.92, 0.56)),
    },
)
# The opening as high as its row, joints ending on its corners, and a joint more above it whose crossing is left free.
_CORNERS = Plan(
    (1 / 6, 1 / 3, 2 / 3),
    (0.5, 1 / 3, 0.8, 2 / 3),
    0.8,
    (0.03, 0.02, 0.47, 0.147),
    {
        **_SHARED,
        "joint_crossing": ((0.50, 1 / 6), (0.38, 0.25)),
        "outside_corner": ((0.0, 0.25), (0.13, 0.25)),
        "opening": ((0.65, 0.44), (0.65, 0.52)),
        "head_flashing": ((0.62, 1 / 3), (0.72, 0.25)),
        "sill_pan": ((0.66, 2 / 3), (0.78, 0.75)),
        "sealant_joint": ((0.8, 0.46), (0.91, 0.50)),
        "grade_end": ((0.22, 1.0), (0.12, 0.91)),
        "each_mesh_zone": ((0.24, 0.80), (0.36, 0.90)),
        "each_color": ((0.62, 0.06), (0.78, 0.09)),
        "day_stop": ((0.50, 0.84), (0.62, 0.91)),
        "recoat_patch": ((0.14, 0.06), (0.26, 0.085)),
    },
)


class Frame(NamedTuple):
    """The finished part with what stands beside it, on paper."""

    plan: Plan
    upright: Fraction  # the vertical joint, in parts of the width
    levels: tuple[Fraction, ...]  # the horizontal ones from above, in parts of the height
    edge_on_line: bool  # whether the heavy mesh ends on the lowest of them
    mirrored: bool
    left: float
    top: float
    wide: float
    whole: float  # with the steps beside it
    high: float

    def across(self, x: float) -> float:
        """A place across from that end of the mockup which turns the corner."""
        return self.left + (self.whole - x if self.mirrored else x)

    def at(self, point: Point) -> Point:
        """A place of the plan on paper."""
        x = _stretch(point[0], (0.5,), (self.upright,))
        y = _stretch(point[1], self.plan.levels, self.levels)
        return self.across(x * self.wide), self.top + y * self.high

    @property
    def side(self) -> int:
        """From the mockup to what is written beside its finished part: -1 for the left."""
        return 1 if self.mirrored else -1


def _stretch(at: float, cuts: tuple[float, ...], places: tuple[Fraction, ...]) -> float:
    """A place between cuts, where these are elsewhere."""
    ends, news = (0.0, *cuts, 1.0), (0.0, *map(float, places), 1.0)
    n = bisect_left(cuts, at)
    return news[n] + (at - ends[n]) / (ends[n + 1] - ends[n]) * (news[n + 1] - news[n])


def make_frame(
    context: DocumentContext,
    finished: tuple[Quantity, Quantity],
    corner: Point,
    sizes: tuple[float, float, float],
) -> Frame:
    """The frame with its upper left corner on paper, and the sizes there: finished width, whole width, height."""
    places = list_places(context)
    upright, row = _size_panel(context, finished) if "full_panel" in places else (Fraction(1, 2), Fraction(1, 3))
    plan = _CLEAR
    rest = 1 - row
    if "opening" in places and has_lines_at_corners(context):
        least = context.project.get(("panel_limits", "least_side"))
        plan = _CORNERS if least is not None and finished[1] * (rest / 3) >= least else _ONE_CORNER
    above = (rest / 3, rest * 2 / 3) if plan is _CORNERS else (rest / 2,)
    mirrored = "outside_corner" in places and find_corner_side(context) == "right"
    return Frame(plan, upright, (*above, above[-1] + row), has_mesh_edge_on_line(context), mirrored, *corner, *sizes)


def _size_panel(context: DocumentContext, finished: tuple[Quantity, Quantity]) -> tuple[Fraction, Fraction]:
    """Width and height of a full panel of the work, in parts of both sides; even parts where it does not fit.

    The largest that the limits allow where no lines are given.
    """
    panel, (width, height) = find_full_panel(context), finished
    wide, high = (context.project.get(("panel_limits", f"max_{side}")) for side in ("width", "height"))
    sides = (panel.width, panel.height) if panel else (wide.amount, high.amount) if wide and high else None
    if sides is not None:
        across, up = sides[0] / width.amount, sides[1] / height.amount
        if _LINE[0] <= across <= _LINE[1] and _ROW[0] <= up <= _ROW[1]:
            return across, up
    return Fraction(1, 2), Fraction(1, 3)
