"""The narrowest leg is told with what it lies between, and the least shift that avoids it; walls in feet, by hand."""

from pathlib import Path

from specgen import pipeline
from specgen.laying_out.assembling import assemble
from specgen.laying_out.face import Edge, Face, Limits, Movement, Opening
from specgen.laying_out.legs import Shift, find_leg, find_shift
from specgen.laying_out.scoring import Wishes

EXAMPLE = Path(__file__).parents[2] / "project_examples" / "gable-hall" / "project.yaml"


def told(face: Face, upright: tuple[int, ...], level: tuple[int, ...] = (), *, held: bool = False) -> list[object]:
    """The two sides of the narrowest leg, and the shift that avoids it."""
    laid = assemble(face, upright, level, Wishes())
    leg = find_leg(laid, min(laid.panels, key=lambda panel: panel.least_side))
    assert leg is not None
    return [leg.low.name, leg.high.name, find_shift(face, Wishes(), laid, leg, level_held=held)]


def test_a_line_goes_onto_the_jamb_where_no_panel_is_then_too_wide() -> None:
    # The line at 5 leaves 1 ft to the opening; at 6 the panels are 6 and 2 ft wide.
    face = Face("E1", 1, 8, 10, (Opening("A", 6, 3, 8, 6),), Limits(6, 10, 60, 2))
    assert told(face, (5,)) == ["E1-V1", "the left jamb of A", Shift("E1-V1", True, 1)]


def test_the_opening_goes_to_the_line_where_the_line_cannot_go() -> None:
    # A panel is 5 ft wide at most, so that no line of a wall of 10 ft may leave the middle; 3 ft are left beyond A.
    face = Face("E1", 1, 10, 10, (Opening("A", 6, 3, 8, 6),), Limits(5, 10, 50, 2))
    assert told(face, (5,)) == ["E1-V1", "the left jamb of A", Shift("A", True, -1)]


def test_a_level_line_stays_where_it_goes_on_round_a_corner() -> None:
    face = Face("E1", 1, 4, 9, (Opening("A", 0, 4, 4, 7),), Limits(4, 6, 24, 2))
    assert told(face, (), (3,)) == ["E1-H1", "the sill of A", Shift("E1-H1", False, 1)]
    # 3 ft are then left above the opening.
    assert told(face, (), (3,), held=True) == ["E1-H1", "the sill of A", Shift("A", False, -1)]


def test_what_a_joint_or_the_edge_leaves_is_named_too() -> None:
    joint = Movement("J1", "building_expansion", 4)
    face = Face("E1", 1, 9, 4, (Opening("A", 5, 1, 7, 3),), Limits(5, 4, 20, 2), upright=(joint,))
    assert told(face, ())[:2] == ["J1", "the left jamb of A"]
    plain = Face("E1", 1, 9, 4, (), Limits(5, 4, 20, 2), upright=(joint,))
    assert told(plain, (8,))[:2] == ["E1-V1", "the edge of the wall"]


def test_no_shift_is_named_where_each_would_make_another_panel_narrow() -> None:
    # Two openings fill the wall but for 1 ft at either hand of the line.
    openings = (Opening("A", 0, 0, 4, 4), Opening("B", 6, 0, 10, 4))
    face = Face("E1", 1, 10, 4, openings, Limits(5, 4, 20, 2), upright=(Movement("J1", "building_expansion", 5),))
    assert told(face, ()) == ["the right jamb of A", "J1", None]


def test_along_a_rake_no_two_sides_are_named() -> None:
    top = (Edge(0, 8, 0, 4),)
    face = Face("E1", 1, 8, 4, (), Limits(8, 4, 32, 3), top=top)
    laid = assemble(face, (), (), Wishes())
    assert find_leg(laid, laid.panels[0]) is None


def test_the_remark_says_where_the_leg_is_and_what_avoids_it() -> None:
    # The line at 10 ft stands 3 in from the jamb of WD2 at 10 ft 3 in; panels of 5 ft fill the wall of 30 ft.
    resolve = pipeline.make_resolver(pipeline.read(EXAMPLE))
    notes = resolve(("elevations", "E1"), "layouts")[0].notes
    assert notes[0].endswith(
        "the narrowest leg is 3 in, in E1-C3 between E1-V2 and the left jamb of WD2. Least change: shift WD2 3 in to "
        "the left to avoid it."
    )
