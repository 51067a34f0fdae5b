"""Pieces hold all of the wall and no more, lie apart, and measure what a count of squares says.

What a piece is, is worked out a second time in `by_hand.py`, square by square.
"""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.laying_out.assembling import assemble, name_column
from specgen.laying_out.boxes import measure_box
from specgen.laying_out.cutting import cut_box
from specgen.laying_out.face import Edge, Face, Limits, Opening
from specgen.laying_out.measuring import measure
from specgen.laying_out.scoring import Wishes
from specgen.model.layout import AESTHETIC, ElevationLayout, JointRun, Panel, Point
from tests.laying_out.by_hand import Plan, flood, grid_of, shortest_run
from tests.laying_out.plans import face_of, plans


def lines_of(plan: Plan) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Every fourth place, so that lines meet openings now and then."""
    return tuple(range(4, plan.width, 4)), tuple(range(3, plan.height, 5))


def lay(plan: Plan) -> ElevationLayout:
    return assemble(face_of(plan), *lines_of(plan), Wishes())


def area_of(loop: tuple[Point, ...]) -> Fraction:
    """By the corners in turn; positive where they run counterclockwise."""
    ends = zip(loop, loop[1:] + loop[:1], strict=True)
    return sum((x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in ends), Fraction(0)) / 2


def is_in(point: Point, loop: tuple[Point, ...]) -> bool:
    """Whether a point lies within a loop: a ray to the right crosses it an odd number of times."""
    x, y = point
    ends = zip(loop, loop[1:] + loop[:1], strict=True)
    sides = [(a, b) for a, b in ends if (a[1] > y) != (b[1] > y)]
    return sum(x < a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1]) for a, b in sides) % 2 == 1


def holds(panel: Panel, point: Point) -> bool:
    return is_in(point, panel.outline) and not any(is_in(point, hole) for hole in panel.holes)


@given(plans)
@settings(max_examples=150, deadline=None)
def test_areas_add_up_to_the_elevation_less_its_openings(plan: Plan) -> None:
    wall = plan.width * plan.height - sum((c - a) * (d - b) for a, b, c, d in plan.openings)
    panels = lay(plan).panels
    assert abs(sum(panel.net_area for panel in panels) - wall) <= 1e-6
    assert all(area_of(p.outline) + sum(map(area_of, p.holes)) == p.net_area for p in panels)
    assert all(area_of(p.outline) > 0 and all(area_of(hole) < 0 for hole in p.holes) for p in panels)


@given(plans)
@settings(max_examples=100, deadline=None)
def test_each_square_of_wall_lies_in_one_panel_and_no_opening_in_any(plan: Plan) -> None:
    panels = lay(plan).panels
    for x in range(plan.width):
        for y in range(plan.height):
            middle = (Fraction(2 * x + 1, 2), Fraction(2 * y + 1, 2))
            opened = any(a <= x < c and b <= y < d for a, b, c, d in plan.openings)
            assert sum(holds(panel, middle) for panel in panels) == (not opened)


@given(plans)
@settings(max_examples=150, deadline=None)
def test_panels_are_those_that_squares_flooded_one_by_one_make(plan: Plan) -> None:
    upright, level = lines_of(plan)
    xs, ys = grid_of(plan, upright, level)
    cuts = {*upright, *plan.upright_joints}, {*level, *plan.level_joints}
    by_hand = sorted(
        (
            min(xs[i] for i, _ in piece),
            min(ys[j] for _, j in piece),
            max(xs[i + 1] for i, _ in piece) - min(xs[i] for i, _ in piece),
            max(ys[j + 1] for _, j in piece) - min(ys[j] for _, j in piece),
            shortest_run(piece, xs, ys),
            sum((xs[i + 1] - xs[i]) * (ys[j + 1] - ys[j]) for i, j in piece),
        )
        for piece in flood(plan, xs, ys, *cuts)
    )
    panels = lay(plan).panels
    assert sorted((p.x, p.y, p.width, p.height, p.least_side, p.net_area) for p in panels) == by_hand
    assert len({panel.mark for panel in panels}) == len(panels)


@given(plans)
@settings(max_examples=100, deadline=None)
def test_every_joint_has_a_panel_at_either_hand(plan: Plan) -> None:
    laid = lay(plan)
    for joint in laid.joints:
        inside = 0 < joint.x1 < plan.width if joint.x1 == joint.x2 else 0 < joint.y1 < plan.height
        assert joint.kind != AESTHETIC or inside
        for share in (Fraction(1, 97), Fraction(1, 2), Fraction(96, 97)):
            beside = [sum(holds(panel, point) for panel in laid.panels) for point in at_both_hands(joint, share)]
            assert beside == [1, 1]


def at_both_hands(joint: JointRun, share: Fraction) -> tuple[Point, Point]:
    """Two points beside a joint, a share of its length along it."""
    x, y = joint.x1 + (joint.x2 - joint.x1) * share, joint.y1 + (joint.y2 - joint.y1) * share
    near = Fraction(1, 1000)
    return ((x - near, y), (x + near, y)) if joint.x1 == joint.x2 else ((x, y - near), (x, y + near))


@given(plans)
@settings(max_examples=150, deadline=None)
def test_the_fast_measure_of_a_box_is_that_of_its_cells(plan: Plan) -> None:
    face = face_of(plan)
    cells = cut_box(face, (0, 0, plan.width, plan.height))
    fast = measure_box(plan.width, plan.height, list(plan.openings))
    assert sorted(fast) == sorted(tuple(measure(piece)) for piece in cells)


@given(st.integers(1, 40), st.integers(0, 40), st.integers(1, 40), st.integers(1, 12), st.integers(1, 12))
@settings(max_examples=100, deadline=None)
def test_the_panels_of_a_gable_add_up_too(half: int, eave: int, rise: int, column: int, row: int) -> None:
    top = (Edge(0, half, eave, eave + rise), Edge(half, 2 * half, eave + rise, eave))
    face = Face("E1", 1, 2 * half, eave + rise, (), Limits(5, 5, 25, 2), top=top)
    lines = tuple(range(column, 2 * half, column)), tuple(range(row, eave + rise, row))
    panels = assemble(face, *lines, Wishes()).panels
    assert sum(panel.net_area for panel in panels) == 2 * half * eave + half * rise
    assert all(area_of(panel.outline) == panel.net_area for panel in panels)


def test_openings_that_touch_at_a_corner_are_two_holes() -> None:
    openings = (Opening("A", 2, 2, 4, 4), Opening("B", 4, 4, 6, 6))
    (panel,) = assemble(Face("E1", 1, 8, 8, openings, Limits(9, 9, 81, 1)), (), (), Wishes()).panels
    assert sorted(map(area_of, panel.holes)) == [-4, -4]
    assert panel.net_area == 56


def test_openings_that_touch_along_a_side_are_one_hole() -> None:
    openings = (Opening("A", 2, 2, 4, 4), Opening("B", 4, 2, 6, 4))
    (panel,) = assemble(Face("E1", 1, 8, 8, openings, Limits(9, 9, 81, 1)), (), (), Wishes()).panels
    assert list(map(area_of, panel.holes)) == [-8]


def test_an_opening_as_large_as_its_box_leaves_no_panel() -> None:
    face = Face("E1", 1, 9, 3, (Opening("A", 3, 0, 6, 3),), Limits(5, 5, 25, 2))
    assert [panel.mark for panel in assemble(face, (3, 6), (), Wishes()).panels] == ["E1-A1", "E1-C1"]


def test_columns_are_named_without_letters_that_are_read_as_figures_or_name_lines() -> None:
    # 21 letters: G is the 7th, then K; N, then P; U, then W; behind Z comes AA.
    names = [name_column(number) for number in (0, 6, 7, 10, 11, 16, 17, 20, 21, 42)]
    assert names == ["A", "G", "K", "N", "P", "U", "W", "Z", "AA", "BA"]
