"""Lines that stop at openings: runs are left out where that joins a strip to the panel beside it, and nowhere else.

The walls are small, in feet; what is joined is counted by hand.
"""

from specgen.laying_out.assembling import assemble
from specgen.laying_out.face import Face, Limits, Movement, Opening
from specgen.laying_out.runs import Run
from specgen.laying_out.scoring import Wishes
from specgen.laying_out.stopping import find_left_out

# A line 1 ft from the right end, broken by an opening 6 to 8 ft from the left and 4 to 6 ft up.
OPENING = (Opening("B", 6, 4, 8, 6),)
LOWER, UPPER = Run(True, 7, 0, 4), Run(True, 7, 6, 10)


def test_both_runs_of_a_line_that_cuts_off_two_strips_are_left_out() -> None:
    face = Face("E1", 1, 8, 10, OPENING, Limits(8, 10, 80, 2))
    assert find_left_out(face, (7,), ()) == {LOWER, UPPER}
    through = assemble(face, (7,), (), Wishes(), "through")
    stopped = assemble(face, (7,), (), Wishes(), "stopped", left_out=frozenset({LOWER, UPPER}))
    assert (through.score.slivers, stopped.score.slivers) == (2, 0)
    assert (len(through.panels), len(stopped.panels)) == (3, 1)
    assert (through.score.joint_length, stopped.score.joint_length) == (8, 0)
    assert stopped.panels[0].net_area == 76


def test_a_run_stays_where_the_panel_would_be_past_a_limit() -> None:
    face = Face("E1", 1, 8, 10, OPENING, Limits(7, 10, 80, 2))
    assert find_left_out(face, (7,), ()) == frozenset()


def test_a_run_ends_at_a_movement_joint_too() -> None:
    # Above the joint at 5 ft the panel would have 42 sq ft, past the limit of 40, below it 35.
    face = Face("E1", 1, 7, 11, (), Limits(7, 11, 40, 2), level=(Movement("J1", "floor_line", 5),))
    assert find_left_out(face, (6,), ()) == {Run(True, 6, 0, 5)}
    stopped = assemble(face, (6,), (), Wishes(), "stopped", left_out=frozenset({Run(True, 6, 0, 5)}))
    assert [(j.mark, j.y1, j.y2) for j in stopped.joints if j.x1 == j.x2] == [("E1-V1", 5, 11)]
    assert sorted((p.x, p.y, p.width, p.height) for p in stopped.panels) == [(0, 0, 7, 5), (0, 5, 6, 6), (6, 5, 1, 6)]
